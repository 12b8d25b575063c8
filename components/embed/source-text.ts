/** The data of an element: what its script child holds, or the file that `src` names. */
export async function sourceText(host: HTMLElement): Promise<string | null> {
  const script = scriptOf(host);
  if (script) return script.textContent;
  const src = host.getAttribute('src');
  if (src === null) return null;
  const url = new URL(src, document.baseURI);
  if (url.origin !== new URL(document.baseURI).origin)
    throw new SourceError(
      `The figures would come from another site (${url.host}): put the file on this one.`,
    );
  const answer = await fetch(url, { credentials: 'same-origin' }).catch(() => null);
  if (!answer?.ok)
    throw new SourceError(`There are no figures at ${url.pathname}: check the address, or the connection.`);
  return answer.text();
}

/** Why there is no data, in words for whoever keeps the page. */
export class SourceError extends Error {}

export const scriptOf = (host: HTMLElement): HTMLScriptElement | null =>
  host.querySelector(':scope > script[type="application/json"]');
