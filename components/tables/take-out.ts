import type { LiveBook } from '../../src/live/live-book.js';
import { csvwMetadata } from '../../src/tables/csvw-write.js';
import { type OutTable, StoredCells, tableOut } from '../../src/tables/out-table.js';
import { inSlices, type SliceOptions } from '../../src/tables/slices.js';
import { writeWorkbook } from '../../src/tables/workbook-write.js';
import { fileName, writeDelimited } from '../../src/tables/write-delimited.js';
import { say } from '../../src/words/index.js';
import type { CopyFile } from '../book/copies.js';

export type Form = 'csv' | 'tsv' | 'workbook';

/** What the person chose to take out, and how. */
export interface TakeOutChoices {
  /** Id of a sheet, or null for all of them (in a workbook). */
  readonly sheet: string | null;
  readonly form: Form;
  readonly planning: boolean;
  /** A mark at the beginning by which some programs know UTF-8. */
  readonly mark: boolean;
}

export interface TakenOut {
  readonly files: readonly (CopyFile & { readonly what: string })[];
  readonly rows: number;
  /** What went out otherwise than it stands in the book, in sentences. */
  readonly says: readonly string[];
}

const WORKBOOK = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

/** Makes the files; null where it was stopped. Changes nothing. */
export async function takeOut(
  live: LiveBook,
  { sheet, form, planning, mark }: TakeOutChoices,
  { signal, onProgress }: SliceOptions = {},
): Promise<TakenOut | null> {
  const ids = sheet === null ? live.sheets().map(({ id }) => id) : [sheet];
  const tables: OutTable[] = [];
  for (const [at, id] of ids.entries()) {
    const table = await inSlices(tableOut(live, id, planning), {
      signal,
      onProgress: (share) => onProgress?.((at + share) / ids.length),
    });
    if (table === null) return null;
    tables.push(table);
  }
  const rows = tables.reduce((sum, table) => sum + table.rows.length, 0);
  if (form === 'workbook') return { rows, ...(await asWorkbook(live, tables, sheet, planning)) };
  const [table] = tables as [OutTable];
  const separator = form === 'csv' ? ',' : '\t';
  const name = `${fileName(table.title)}.${form}`;
  const text = writeDelimited(table, { separator, mark });
  const type = form === 'csv' ? 'text/csv' : 'text/tab-separated-values';
  return {
    rows,
    says: [],
    files: [
      { name, what: say`The table`, blob: new Blob([text], { type: `${type};charset=utf-8` }) },
      {
        name: `${name}-metadata.json`,
        what: say`What its columns hold, for programs that can read it`,
        blob: new Blob([csvwMetadata(table, name, separator)], { type: 'application/csvm+json' }),
      },
    ],
  };
}

async function asWorkbook(
  live: LiveBook,
  tables: readonly OutTable[],
  sheet: string | null,
  planning: boolean,
) {
  const title = sheet === null ? live.title : tables[0]!.title;
  const out = await writeWorkbook(tables, new StoredCells(live), title);
  const says = [
    ...(out.formulas > 0
      ? [
          out.formulas === 1
            ? say`1 formula goes on being worked out there.`
            : say`${out.formulas} formulas go on being worked out there.`,
        ]
      : []),
    ...out.asValues.map(({ sheet: where, column, cells }) =>
      cells === 1
        ? say`“${column}” of ${where}: 1 formula went as what it comes to, since workbooks do not have its functions or what it refers to is not taken along.`
        : say`“${column}” of ${where}: ${cells} formulas went as what they come to, since workbooks do not have its functions or what it refers to is not taken along.`,
    ),
    ...(planning
      ? [say`Planning columns went as what they show now: a workbook does not work them out.`]
      : []),
  ];
  const file = {
    name: `${fileName(title)}.xlsx`,
    what: say`The workbook`,
    blob: new Blob([out.bytes as Uint8Array<ArrayBuffer>], { type: WORKBOOK }),
  };
  return { files: [file], says };
}
