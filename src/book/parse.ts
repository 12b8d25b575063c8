import type { Problem } from '../problem.js';
import { phrase, say, spoken } from '../words/index.js';
import type { z } from '../zod.js';
import { MAX_COLUMNS, MAX_ROWS } from './commands.js';
import { complete } from './complete.js';
import { isFormula, toStored } from './formula/references.js';
import { migrated } from './migrations.js';
import { bookSchema } from './schema.js';
import { schemaWords } from './schema-words.js';
import { BookState } from './state.js';
import { StateLayout } from './state-layout.js';
import { BOOK_FORMAT, BOOK_VERSION, type BookDoc, type RowDoc, type SheetDoc } from './types.js';

/** A readable book, or every reason why it is none (at most 50). */
export type Parsed =
  | { readonly ok: true; readonly book: BookDoc }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const MOST_PROBLEMS = 50;

const one = (code: string, message: string, mend: string, path = ''): Parsed => ({
  ok: false,
  problems: [{ code, message, mend, ...(path && { where: { path } }) }],
});

const parsedText = (text: string): { value: unknown } | Parsed => {
  try {
    return { value: JSON.parse(text) };
  } catch (error) {
    const cut = /end of JSON|Unexpected end|Unterminated/i.test(String(error));
    return cut
      ? one(
          'truncated',
          say`The file stops in the middle.`,
          say`It was not copied whole: copy it again, or open an older copy.`,
        )
      : one(
          'not-json',
          say`The file is not a book: it is some other kind of file.`,
          say`Choose a file that was saved with “Save a copy”.`,
        );
  }
};

const MENDS: Partial<Record<z.core.$ZodIssue['code'], string>> = {
  invalid_type: phrase('Put a value of that type there, or remove the part.'),
  invalid_value: phrase('Use one of the values named.'),
  too_big: phrase('Shorten it.'),
  too_small: phrase('Write something there.'),
  invalid_key: phrase('Rename the key.'),
  custom: phrase('Correct it, or open an older copy.'),
};

const inWords = (issue: z.core.$ZodIssue): Problem => {
  const path = issue.path.map(String).join('.');
  const inner = issue.code === 'invalid_key' ? (issue.issues[0]?.message ?? issue.message) : issue.message;
  return {
    code: `file-${issue.code.replaceAll('_', '-')}`,
    message: `${path || say`The book`}: ${schemaWords(inner)}.`,
    mend: spoken(MENDS[issue.code] ?? phrase('Correct that part of the file, or open an older copy.')),
    where: { path },
  };
};

/** Keys that would reach an object's prototype are refused outright, wherever they are. */
function poisoned(value: unknown, path: string, depth = 0): string | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  if (depth > 60) return path;
  for (const key of Object.keys(value)) {
    const here = path === '' ? key : `${path}.${key}`;
    if (key === '__proto__') return here;
    const inside = poisoned((value as Record<string, unknown>)[key], here, depth + 1);
    if (inside !== undefined) return inside;
  }
  return undefined;
}

/** Sheets larger than can be worked with. */
function oversized(book: BookDoc): Problem[] {
  return Object.entries(book.sheets).flatMap(([id, sheet]) => {
    const rows = Object.keys(sheet.rows).length;
    const columns = Object.keys(sheet.columns).length;
    if (rows <= MAX_ROWS && columns <= MAX_COLUMNS) return [];
    return [
      {
        code: 'sheet-too-large',
        message: say`sheets.${id}: ${rows} rows and ${columns} columns; at most ${MAX_ROWS} and ${MAX_COLUMNS} can be opened.`,
        mend: say`Split the sheet before opening.`,
        where: { path: `sheets.${id}` },
      },
    ];
  });
}

/**
 * References written by position, as in a book made by hand, become references by id. A book that says that
 * this was done is left as it is: a position in it named nothing when it was typed.
 */
function bound(book: BookDoc): BookDoc {
  if (book.references === 'by id') return book;
  const state = new BookState(book);
  const layout = new StateLayout(state);
  const sheets: Record<string, SheetDoc> = {};
  for (const [sheetId, sheet] of Object.entries(book.sheets)) {
    const rows: Record<string, RowDoc> = {};
    for (const [rowId, row] of Object.entries(sheet.rows)) {
      rows[rowId] = row;
      for (const [columnId, raw] of Object.entries(row.cells)) {
        if (!isFormula(raw)) continue;
        const stored = toStored(raw, sheetId, layout);
        if (stored === raw) continue;
        rows[rowId] = { ...rows[rowId]!, cells: { ...rows[rowId]!.cells, [columnId]: stored } };
      }
    }
    sheets[sheetId] = { ...sheet, rows };
  }
  return { ...book, references: 'by id', sheets };
}

/**
 * Reads a book from JSON text or from plain data. Older versions are brought up to date; fields that this
 * version does not know are kept. Never throws: what is wrong comes back as problems with their paths.
 */
export function parseBook(json: unknown): Parsed {
  let value = json;
  if (typeof json === 'string') {
    const text = parsedText(json.replace(/^\uFEFF/, ''));
    if ('ok' in text) return text;
    value = text.value;
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return one('not-a-book', say`That is not a book.`, say`Choose a file that was saved with “Save a copy”.`);
  }
  const data = value as Readonly<Record<string, unknown>>;
  if (data.format !== BOOK_FORMAT) {
    return one(
      'not-a-book',
      say`The file does not say that it is a book (its “format” should be “${BOOK_FORMAT}”).`,
      say`Choose a file that was saved with “Save a copy”.`,
      'format',
    );
  }
  if (!Number.isInteger(data.version) || Number(data.version) < 0) {
    return one(
      'no-version',
      say`The book does not say its version.`,
      say`Write "version": ${BOOK_VERSION} in it.`,
      'version',
    );
  }
  if (Number(data.version) > BOOK_VERSION) {
    return one(
      'newer-version',
      say`The book is of version ${Number(data.version)}; this page reads up to ${BOOK_VERSION}.`,
      say`Open it with a newer copy of this page. Nothing of it was changed.`,
      'version',
    );
  }
  const bad = poisoned(data, '');
  if (bad !== undefined)
    return one(
      'hostile-key',
      say`${bad}: a book has no such part.`,
      say`Remove that part from the file.`,
      bad,
    );
  const checked = bookSchema.safeParse(migrated(data));
  if (!checked.success)
    return { ok: false, problems: checked.error.issues.slice(0, MOST_PROBLEMS).map(inWords) };
  const book = checked.data as BookDoc;
  const large = oversized(book);
  return large.length > 0 ? { ok: false, problems: large } : { ok: true, book: bound(complete(book)) };
}
