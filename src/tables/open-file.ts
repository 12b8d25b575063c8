import { ok, type Result, refuse } from '../problem.js';
import { phrase, say } from '../words/index.js';
import type { Metadata } from './csvw-read.js';
import { decode, detectEncoding, type Encoding, type FoundEncoding } from './encoding.js';
import { readDelimited } from './read-delimited.js';
import { detectSeparator, type Separator } from './separator.js';
import { inSlices, type SliceOptions } from './slices.js';
import { formOf, formOfText, isMarkup, markupRefused, nameOfFile } from './sniff.js';
import type { SourceTable } from './types.js';
import { openWorkbook, type WorkbookFile } from './workbook-read.js';

/** A file as it was opened, before its table is read. */
export type OpenedFile =
  | {
      readonly form: 'text';
      readonly name: string;
      readonly bytes: Uint8Array;
      readonly found: FoundEncoding;
    }
  | { readonly form: 'pasted'; readonly name: string; readonly text: string }
  | { readonly form: 'workbook'; readonly name: string; readonly workbook: WorkbookFile };

/** How a file of text is read; the person can change both. */
export interface TextChoices {
  readonly encoding: Encoding;
  readonly separator: Separator;
}

const isABook = refuse(
  'is-a-book',
  phrase('This file is a whole book, not one table.'),
  phrase('Open it as a copy: it then stands beside this book, and nothing is written over.'),
);

const metadataAlone = refuse(
  'metadata-alone',
  phrase('This file only describes a table; the table itself lies in a file beside it.'),
  phrase('Choose both files together.'),
);

/** Opens a file far enough to know what it is. */
export async function openFile(bytes: Uint8Array, file: string): Promise<Result<OpenedFile>> {
  const form = formOf(bytes);
  if (!form.ok) return form;
  const name = nameOfFile(file);
  if (form.value === 'book') return isABook;
  if (form.value === 'metadata') return metadataAlone;
  if (form.value === 'workbook') {
    const workbook = await openWorkbook(bytes);
    return workbook.ok ? ok({ form: 'workbook', name, workbook: workbook.value }) : workbook;
  }
  return ok({ form: 'text', name, bytes, found: detectEncoding(bytes) });
}

/** Text that was pasted, as an opened file. */
export function openText(text: string): Result<OpenedFile> {
  if (text.trim() === '')
    return refuse('file-empty', say`Nothing was pasted.`, say`Copy a table, then paste it here.`);
  const form = formOfText(text.slice(0, 4096));
  if (form === 'book') return isABook;
  return ok({ form: 'pasted', name: say`Pasted table`, text });
}

/** The choices with which a file of text is first read. */
export function firstChoices(opened: OpenedFile, metadata?: Metadata): TextChoices {
  const encoding = metadata?.encoding ?? (opened.form === 'text' ? opened.found.encoding : 'utf-8');
  return { encoding, separator: metadata?.separator ?? detectSeparator(textOf(opened, encoding, 400_000)) };
}

function textOf(opened: OpenedFile, encoding: Encoding, most = Number.POSITIVE_INFINITY): string {
  if (opened.form === 'pasted') return opened.text.slice(0, most);
  if (opened.form === 'text') return decode(opened.bytes.subarray(0, most), encoding);
  return '';
}

/** Reads a file of text, a slice at a time; null where it was stopped. */
export async function readText(
  opened: OpenedFile,
  { encoding, separator }: TextChoices,
  options: SliceOptions = {},
): Promise<Result<SourceTable> | null> {
  const text = textOf(opened, encoding);
  if (isMarkup(text)) return markupRefused;
  const table = await inSlices(readDelimited(text, separator, opened.name), options);
  if (table === null) return null;
  if (table.rows.length === 0) {
    return refuse(
      'file-empty',
      say`There is no row in this file with anything in it.`,
      say`Choose another file.`,
    );
  }
  return ok(table);
}
