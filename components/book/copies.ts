import { type BookDoc, parseBook } from '../../src/book/index.js';
import { say } from '../../src/words/index.js';
import { loadStorage } from './keeping.js';
import type { ReadBook } from './source.js';

/** A book as a file. */
export interface CopyFile {
  readonly name: string;
  readonly blob: Blob;
}

export async function copyFile(book: BookDoc): Promise<CopyFile> {
  const { copyName, saveACopy } = await loadStorage();
  return { name: copyName(book.title, new Date()), blob: saveACopy(book) };
}

/** Hands a file to the person as the browser does with downloads. */
export function download({ name, blob }: CopyFile): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  // Some browsers read the address only after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** A book as read from a file, with the state that was saved for merging, if it has one. */
export type ReadCopy = ReadBook & { readonly state?: Uint8Array };

/** Reads a file; where it is no book, everything that is wrong with it. */
export async function readCopy(file: Blob | string): Promise<ReadCopy> {
  const { openACopy } = await loadStorage();
  const opened = await openACopy(file, parseBook);
  if (!opened.ok) return opened;
  const { doc, state } = opened.copy;
  return { ok: true, book: doc, ...(state && { state }) };
}

/** A copy's title, told from those of the books that are kept already: `Hill House (copy)`, `(copy 2)`. */
export function titleBeside(title: string, taken: readonly string[]): string {
  for (let i = 0; ; i++) {
    const one = i === 0 ? title : `${title}${i === 1 ? say` (copy)` : say` (copy ${i})`}`;
    if (!taken.includes(one)) return one;
  }
}
