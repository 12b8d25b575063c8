import { type BookDoc, parseBook } from '../../src/book/index.js';
import type { Problem } from '../../src/problem.js';

/** A book as read, or every reason why it could not be. */
export type ReadBook =
  | { readonly ok: true; readonly book: BookDoc }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const failed = (code: string, message: string, mend: string): ReadBook => ({
  ok: false,
  problems: [{ code, message, mend }],
});

/** Fetches a book from the page's own site; other sites are refused before anything is asked of them. */
export async function fetchBook(src: string, base: string): Promise<ReadBook> {
  let url: URL;
  try {
    url = new URL(src, base);
  } catch {
    return failed(
      'bad-address',
      `“${src}” is not an address.`,
      'Write where the book file lies, as in data/book.json.',
    );
  }
  if (url.origin !== new URL(base).origin) {
    return failed(
      'other-site',
      `The book would come from another site (${url.host}).`,
      'Put the file on the same site as the page.',
    );
  }
  let text: string;
  try {
    const answer = await fetch(url, { credentials: 'same-origin' });
    if (!answer.ok) {
      return failed(
        'not-found',
        `There is no book at ${url.pathname} (the site answered ${answer.status}).`,
        'Check the address, or whether the file was put on the site.',
      );
    }
    text = await answer.text();
  } catch {
    return failed(
      'not-reached',
      `The book at ${url.pathname} could not be fetched.`,
      'Check the connection, then load the page again.',
    );
  }
  return parseBook(text);
}

/** The book in a `<script type="application/json">` inside the element, if there is one. */
export function inlineBook(element: HTMLElement): ReadBook | undefined {
  const script = element.querySelector(':scope > script[type="application/json"]');
  return script ? parseBook(script.textContent ?? '') : undefined;
}

/** Thrown inside storage's `start` only, to come out of `open` again as the problems that it carries. */
export class SourceFailure extends Error {
  constructor(readonly problems: readonly Problem[]) {
    super(problems[0]?.message ?? 'no book');
  }
}
