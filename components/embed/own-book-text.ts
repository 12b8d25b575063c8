/** The reader's own book as an embedded sheet's data; loaded only where a page asks for it. */
import { parseBook } from '../../src/book/index.js';
import type { Problem } from '../../src/problem.js';
import { spoken } from '../../src/words/index.js';
import { loadStorage } from '../book/keeping.js';

export type OwnBookText =
  | { readonly ok: true; readonly text: string; readonly title: string }
  /** Without a problem there is no such book. */
  | { readonly ok: false; readonly problem?: string };

/**
 * The book that the reader keeps in this browser on this site: the one edited last, or the one whose key or
 * title `which` names. It is only read.
 *
 * @param database name of the database that keeps the books; that of `<croft-book keep>` unless given.
 */
export async function ownBookText(database: string | null, which: string | null): Promise<OwnBookText> {
  const { openKeep, readKeptCopy } = await loadStorage();
  const name = database || undefined;
  const keep = await openKeep(name);
  if (!keep.ok) return { ok: false, problem: wordsOf(keep.problem) };
  const books = await keep.value.list();
  await keep.value.close();
  const found = which ? books.find(({ id, title }) => id === which || title === which) : books[0];
  if (!found) return { ok: false };
  const read = await readKeptCopy(name, found.id, parseBook);
  if (!read.ok) return { ok: false, problem: wordsOf(read.problem) };
  return { ok: true, text: JSON.stringify(read.value.doc, inOrder), title: found.title };
}

const wordsOf = ({ message, mend }: Problem): string => `${spoken(message)} ${spoken(mend)}`.trim();

/** Keys in one order, so that the same book is the same text whenever it is read. */
function inOrder(_key: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}
