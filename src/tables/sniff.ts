import { ok, type Result, refuse } from '../problem.js';
import { phrase, say, spoken } from '../words/index.js';
import { detectEncoding } from './encoding.js';
import { MOST_BYTES } from './limits.js';

/** What a file is, by its first bytes and not by its name. */
export type FileForm = 'text' | 'workbook' | 'book' | 'metadata';

const starts = (bytes: Uint8Array, ...signs: number[]): boolean =>
  signs.every((sign, i) => bytes[i] === sign);

const latin = (bytes: Uint8Array, most: number): string =>
  String.fromCharCode(...bytes.subarray(0, Math.min(bytes.length, most)));

/** Kinds of file that are no table, known by how they begin. */
const OTHERS: readonly (readonly [signs: readonly number[], what: string, mend: string])[] = [
  [
    [0x25, 0x50, 0x44, 0x46],
    phrase('a PDF'),
    phrase('Copy the table out of it and paste it here, or save it as CSV where it was made.'),
  ],
  [[0x89, 0x50, 0x4e, 0x47], phrase('a picture (PNG)'), phrase('Choose the file with the table itself.')],
  [[0xff, 0xd8, 0xff], phrase('a picture (JPEG)'), phrase('Choose the file with the table itself.')],
  [[0x47, 0x49, 0x46, 0x38], phrase('a picture (GIF)'), phrase('Choose the file with the table itself.')],
  [[0x1f, 0x8b], phrase('a compressed file (gzip)'), phrase('Unpack it first.')],
  [
    [0x7b, 0x5c, 0x72, 0x74, 0x66],
    phrase('a text document (RTF)'),
    phrase('Copy the table out of it and paste it here.'),
  ],
];

/** The two kinds of file that share one outer form: old workbooks, and new ones that are locked. */
function oldForm(bytes: Uint8Array): Result<FileForm> {
  const inside = latin(bytes.subarray(0, 1 << 16), 1 << 16).replaceAll('\0', '');
  // Names in its directory are UTF-16; without the blank bytes they read as plain text.
  const tail = latin(bytes.subarray(Math.max(0, bytes.length - (1 << 16))), 1 << 16).replaceAll('\0', '');
  if (/EncryptedPackage/.test(inside + tail)) {
    return refuse(
      'locked-workbook',
      say`This workbook is locked with a password.`,
      say`Open it where it was made, save it without the password, and bring in that copy.`,
    );
  }
  return refuse(
    'old-workbook',
    say`This is a workbook in the old binary form (.xls), which cannot be read here.`,
    say`Open it where it was made and save it as .xlsx or CSV.`,
  );
}

/** Says what a file is, or why no table can come of it. */
export function formOf(bytes: Uint8Array): Result<FileForm> {
  if (bytes.length === 0) return refuse('file-empty', say`This file is empty.`, say`Choose another file.`);
  if (bytes.length > MOST_BYTES) {
    return refuse(
      'file-too-large',
      say`This file is larger than ${MOST_BYTES / 1024 / 1024} MB; no sheet holds that much.`,
      say`Split it, and bring in each part.`,
    );
  }
  if (starts(bytes, 0x50, 0x4b, 0x03, 0x04) || starts(bytes, 0x50, 0x4b, 0x05, 0x06)) return ok('workbook');
  if (starts(bytes, 0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1)) return oldForm(bytes);
  for (const [signs, what, mend] of OTHERS) {
    if (starts(bytes, ...signs))
      return refuse('not-a-table', say`This file is ${what}, not a table.`, spoken(mend));
  }
  const isWide = detectEncoding(bytes).encoding.startsWith('utf-16');
  const head = latin(bytes, 4096).replace(/^\xef\xbb\xbf/, '');
  if (!isWide && looksBinary(head)) {
    return refuse(
      'not-a-table',
      say`This file is not text: its bytes make no letters.`,
      say`Choose a file of separated values (CSV, TSV) or a workbook (.xlsx).`,
    );
  }
  return ok(formOfText(head) ?? 'text');
}

/** Books and metadata are JSON; anything else is left to be read as a table. */
export function formOfText(head: string): FileForm | null {
  const text = head.trimStart();
  if (!text.startsWith('{')) return null;
  if (/"format"\s*:\s*"croftsheet-book"/.test(text)) return 'book';
  return /"@context"\s*:[^{]*"http:\/\/www\.w3\.org\/ns\/csvw"/.test(text) ? 'metadata' : null;
}

/** Control characters that no text has: all but tab, line ends, page end and escape; NULs count where there are many. */
function looksBinary(head: string): boolean {
  let controls = 0;
  let nulls = 0;
  for (let i = 0; i < head.length; i++) {
    const code = head.charCodeAt(i);
    if (code === 0) nulls++;
    else if (code < 32 && code !== 9 && code !== 10 && code !== 12 && code !== 13 && code !== 27) controls++;
  }
  return controls > Math.max(4, head.length / 50) || nulls > Math.max(16, head.length / 10);
}

/** A page of the web saved with the name of a table. */
export const isMarkup = (text: string): boolean =>
  /^\s*(?:<!doctype html|<html|<table|<\?xml)/i.test(text.slice(0, 500));

export const markupRefused = refuse(
  'not-a-table',
  phrase('This file is a page or a document in markup, not separated values.'),
  phrase('Open it, copy the table, and paste it here.'),
);

/** A file's name without folder and ending, as a title. */
export function nameOfFile(file: string): string {
  const name = file.replace(/^.*[/\\]/, '').replace(/\.[^.]{1,12}$/, '');
  return name.normalize('NFC').trim() || say`Table`;
}
