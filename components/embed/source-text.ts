import { adopted } from './draw-table.js';
import { contentOf, languageOf, scriptOf, tableOf } from './page-content.js';
import { saidIn, say, spoken } from './said.js';
import { NO_OWN_BOOK } from './words.js';

/** Where the data of an embedded sheet comes from. */
export interface SourceHost extends HTMLElement {
  readonly book: unknown;
  readonly src: string | null;
  readonly source: string | null;
  readonly which: string | null;
  readonly database: string | null;
}

/** The data of an element, and where it is from. */
export interface Source {
  /** JSON text; null where the page gives none. */
  readonly text: string | null;
  /** Title of the reader's own book, where it is theirs. */
  readonly ownTitle?: string;
  /** Why the reader's own book is not shown, where the page asks for it. */
  readonly ownMissing?: string;
}

/** Why there is no data, in words for whoever keeps the page, or for its reader. */
export class SourceError extends Error {
  constructor(
    words: string,
    /** The reader keeps no book here yet. */
    readonly noOwnBook = false,
  ) {
    super(words);
  }
}

export const isOwn = (host: SourceHost): boolean => host.source === 'own' && host.book === null;

/** Name of the sheet where the page's own table is the data. */
export const PLAIN_SHEET = 'table';

/** Whether all that the page gives is a table: then that is the data, too. */
export const isPlain = (host: SourceHost): boolean =>
  host.book === null &&
  host.src === null &&
  !isOwn(host) &&
  scriptOf(host) === null &&
  tableOf(host) !== null;

/** What differs where the data differs; nothing that works figures out is loaded for it. */
export const keyOf = async (host: SourceHost): Promise<string | null> =>
  isPlain(host) ? contentOf(host) : (await sourceOf(host)).text;

/** What the page itself gives: by property, inside the element, as the file that `src` names, or its table. */
async function pageText(host: SourceHost): Promise<string | null> {
  if (host.book !== null) return typeof host.book === 'string' ? host.book : JSON.stringify(host.book);
  const script = scriptOf(host);
  if (script) return script.textContent;
  if (host.src === null) {
    const table = adopted(host).querySelector('table');
    if (!table) return null;
    const { tableBookText } = await import('./table-book.js');
    return tableBookText(table, { sheet: PLAIN_SHEET, tag: saidIn(), written: languageOf(host) });
  }
  const url = new URL(host.src, document.baseURI);
  if (url.origin !== new URL(document.baseURI).origin)
    throw new SourceError(
      say`The figures would come from another site (${url.host}): put the file on this one.`,
    );
  const answer = await fetch(url, { credentials: 'same-origin' }).catch(() => null);
  if (!answer?.ok)
    throw new SourceError(
      say`There are no figures at ${url.pathname}: check the address, or the connection.`,
    );
  return answer.text();
}

/**
 * The data of an element. Where it asks for the reader's own book and there is none, what the page gives in its
 * place, if it gives anything.
 */
export async function sourceOf(host: SourceHost): Promise<Source> {
  if (!isOwn(host)) return { text: await pageText(host) };
  const { ownBookText } = await import('./own-book-text.js');
  const own = await ownBookText(host.database, host.which);
  if (own.ok) return { text: own.text, ownTitle: own.title };
  const text = await pageText(host);
  const why = own.problem ?? spoken(NO_OWN_BOOK);
  if (text === null) throw new SourceError(why, own.problem === undefined);
  return { text, ownMissing: why };
}

/** The script inside, where it is the data of the element. */
export const dataScriptOf = (host: SourceHost): HTMLScriptElement | null =>
  host.book !== null || isOwn(host) ? null : scriptOf(host);
