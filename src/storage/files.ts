import { formatISO } from 'date-fns';
import { fromBase64, toBase64 } from 'lib0/buffer';
import type { BookDoc, Json } from '../book/types.js';
import type { Problem } from '../problem.js';
import { say } from '../words/index.js';
import type { BookCopy } from './merging.js';
import type { ParseBook } from './opening.js';
import { entriesOf, isObject, put } from './plain.js';
import { REPLICA_FIELD } from './replica.js';

/** Files larger than this are refused, and so is a state that unpacks to more. */
const MOST_BYTES = 64 * 1024 * 1024;

const FIRST = ['format', 'version', 'id', 'title', 'kind', 'order'];
const LAST = ['settings', 'sheets', 'columns', 'rows', 'cells', REPLICA_FIELD];
const rank = (key: string): number => {
  const first = FIRST.indexOf(key);
  return first >= 0 ? first : FIRST.length + LAST.indexOf(key) + 1;
};
const orderOf = (value: Json): string =>
  isObject(value) && typeof value.order === 'string' ? value.order : '';

/** The same value with keys in reading order: what a thing is first, its items by their order keys last. */
function inOrder(value: Json): Json {
  if (!isObject(value)) return value;
  const sorted: Record<string, Json> = {};
  const entries = entriesOf(value).sort(([a, left], [b, right]) => {
    const [x, y] = [orderOf(left), orderOf(right)];
    return rank(a) - rank(b) || (x < y ? -1 : x > y ? 1 : 0);
  });
  for (const [key, item] of entries) put(sorted, key, inOrder(item));
  return sorted;
}

/** The book as the text of a file: the same book gives the same text. */
export const copyText = (book: BookDoc): string => `${JSON.stringify(inOrder(book as Json), null, 2)}\n`;

/** A copy of the book as a file, to keep or to give away: it holds what the book shows, and no history. */
export const saveACopy = (book: BookDoc): Blob => new Blob([copyText(book)], { type: 'application/json' });

/**
 * A copy that can be edited elsewhere and merged again without guessing: the state goes with it. The state
 * still holds removed rows.
 */
export async function saveForMerging(book: BookDoc, state: Uint8Array): Promise<Blob> {
  const packed = await through(new CompressionStream('gzip'), state);
  return saveACopy({ ...book, [REPLICA_FIELD]: toBase64(packed) });
}

/** A file name from the book's title and the date (local), as in `our-shelf-2026-02-01.croft.json`. */
export function copyName(title: string, on: Date): string {
  const name = title
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${name || 'book'}-${formatISO(on, { representation: 'date' })}.croft.json`;
}

/** A book from a file, or every reason why there is none. */
export type OpenedCopy =
  | { readonly ok: true; readonly copy: BookCopy }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const none = (code: string, message: string, mend: string): OpenedCopy => ({
  ok: false,
  problems: [{ code, message, mend }],
});

/** Reads a file that was saved as a copy. Its state, when it has one that can be read, comes along. */
export async function openACopy(file: Blob | string, parseBook: ParseBook): Promise<OpenedCopy> {
  const tooLarge = typeof file === 'string' ? file.length > MOST_BYTES : file.size > MOST_BYTES;
  if (tooLarge)
    return none(
      'file-too-large',
      say`This file is larger than 64 MB; no saved book is.`,
      say`Choose another file.`,
    );
  const text = (typeof file === 'string' ? file : await file.text()).replace(/^\uFEFF/, '').trim();
  if (text === '') return none('file-empty', say`This file is empty.`, say`Choose another file.`);
  if (isCutOff(text))
    return none(
      'truncated',
      say`This file stops in the middle: the end of the book is missing.`,
      say`Copy or download the file again, or open an older copy.`,
    );
  let json: unknown = text;
  let state: Uint8Array | undefined;
  try {
    json = JSON.parse(text);
    if (isObject(json)) {
      const { [REPLICA_FIELD]: packed, ...book } = json;
      json = book;
      state = typeof packed === 'string' ? await unpacked(packed) : undefined;
    }
  } catch {
    // Left as text: `parseBook` says why it is none.
  }
  const parsed = parseBook(json);
  return parsed.ok ? { ok: true, copy: { doc: parsed.book, ...(state && { state }) } } : parsed;
}

/** Whether a text that begins as an object ends before it is closed. */
function isCutOff(text: string): boolean {
  if (!text.startsWith('{')) return false;
  let depth = 0;
  // Strings, closed or broken off, and brackets outside them.
  for (const [token] of text.matchAll(/"(?:[^"\\]|\\.)*("|$|\\$)|[{}[\]]/gs)) {
    if (token === '{' || token === '[') depth++;
    else if (token === '}' || token === ']') depth--;
  }
  return depth > 0;
}

async function unpacked(packed: string): Promise<Uint8Array | undefined> {
  try {
    return await through(new DecompressionStream('gzip'), fromBase64(packed));
  } catch {
    return undefined;
  }
}

async function through(
  stream: CompressionStream | DecompressionStream,
  bytes: Uint8Array,
): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  let size = 0;
  const reader = new Blob([bytes as Uint8Array<ArrayBuffer>]).stream().pipeThrough(stream).getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.length;
    if (size > MOST_BYTES) {
      await reader.cancel();
      throw new RangeError('too large when unpacked');
    }
    parts.push(value);
  }
  const whole = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
