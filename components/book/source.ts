import { type BookDoc, blankBook, parseBook } from '../../src/book/index.js';
import type { Problem } from '../../src/problem.js';
import { say } from '../../src/words/index.js';

/** A book as read, or every reason why it could not be. */
export type ReadBook =
  | { readonly ok: true; readonly book: BookDoc }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const failed = (code: string, message: string, mend: string): ReadBook => ({
  ok: false,
  problems: [{ code, message, mend }],
});

/** Fetches a book from the page's own site; other sites are refused before anything is asked of them. */
async function fetchBook(src: string, base: string): Promise<ReadBook> {
  let url: URL;
  try {
    url = new URL(src, base);
  } catch {
    return failed(
      'bad-address',
      say`“${src}” is not an address.`,
      say`Write where the book file lies, as in data/book.json.`,
    );
  }
  if (url.origin !== new URL(base).origin) {
    return failed(
      'other-site',
      say`The book would come from another site (${url.host}).`,
      say`Put the file on the same site as the page.`,
    );
  }
  let text: string;
  try {
    const answer = await fetch(url, { credentials: 'same-origin' });
    if (!answer.ok) {
      return failed(
        'not-found',
        say`There is no book at ${url.pathname} (the site answered ${answer.status}).`,
        say`Check the address, or whether the file was put on the site.`,
      );
    }
    text = await answer.text();
  } catch {
    return failed(
      'not-reached',
      say`The book at ${url.pathname} could not be fetched.`,
      say`Check the connection, then load the page again.`,
    );
  }
  return parseBook(text);
}

/** The book in a `<script type="application/json">` inside the element, if there is one. */
function inlineBook(element: HTMLElement): ReadBook | undefined {
  const script = element.querySelector(':scope > script[type="application/json"]');
  return script ? parseBook(script.textContent ?? '') : undefined;
}

/** Thrown inside storage's `start` only, to come out of `open` again as the problems that it carries. */
export class SourceFailure extends Error {
  constructor(readonly problems: readonly Problem[]) {
    super(problems[0]?.message ?? 'no book');
  }
}

/** What an element says about where its book comes from. */
export interface Source extends HTMLElement {
  readonly book: unknown;
  readonly src: string | null;
  readonly sourceKey: string;
}

/** The book that an element starts with: its property, its address, what stands inside it, or a blank one. */
export async function readSource(from: Source): Promise<ReadBook> {
  if (from.book !== null) return parseBook(from.book);
  if (from.src !== null) return fetchBook(from.src, document.baseURI);
  return inlineBook(from) ?? { ok: true, book: blankBook(say`Our book`) };
}

/** The same for a book to be kept under a key; a key that no source stands for must be kept already. */
export async function startOf(from: Source, key: string): Promise<BookDoc> {
  if (key !== from.sourceKey) {
    throw new SourceFailure([
      {
        code: 'book-not-here',
        message: say`That book is not kept in this browser.`,
        mend: say`Choose another, or open a copy of it from a file.`,
      },
    ]);
  }
  const read = await readSource(from);
  if (!read.ok) throw new SourceFailure(read.problems);
  return read.book;
}
