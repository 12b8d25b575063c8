import { expect } from 'vitest';
import { blankBook } from '../../src/book/index.js';
import { type LiveBook, openBook } from '../../src/live/live-book.js';
import { bringIn } from '../../src/tables/bring-in.js';
import type { Metadata } from '../../src/tables/csvw-read.js';
import { guessHeader } from '../../src/tables/guess.js';
import { firstChoices, openFile, openText, readText, type TextChoices } from '../../src/tables/open-file.js';
import { type ImportPlan, planFor } from '../../src/tables/plan.js';
import { type SettledImport, settleImport } from '../../src/tables/settle.js';
import { atOnce } from '../../src/tables/slices.js';
import type { SourceTable } from '../../src/tables/types.js';
import { readWorksheet } from '../../src/tables/workbook-read.js';

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

export const newLive = (): LiveBook => openBook(blankBook('Tamarack Bench', 'bbench'));

/** A table out of a file, as the dialog opens it. */
export async function tableFrom(
  file: Uint8Array | string,
  name = 'beans.csv',
  choices: Partial<TextChoices> = {},
  metadata?: Metadata,
): Promise<SourceTable> {
  const opened = await openFile(typeof file === 'string' ? bytesOf(file) : file, name);
  if (!opened.ok) throw new Error(opened.problem.code);
  if (opened.value.form === 'workbook') {
    const read = await readWorksheet(opened.value.workbook, 0);
    if (!read.ok) throw new Error(read.problem.code);
    return read.value;
  }
  const read = await readText(opened.value, { ...firstChoices(opened.value, metadata), ...choices });
  if (!read?.ok) throw new Error(read?.problem.code ?? 'stopped');
  return read.value;
}

/** The same for text that was pasted. */
export async function tablePasted(text: string): Promise<SourceTable> {
  const opened = openText(text);
  if (!opened.ok) throw new Error(opened.problem.code);
  const read = await readText(opened.value, firstChoices(opened.value));
  if (!read?.ok) throw new Error(read?.problem.code ?? 'stopped');
  return read.value;
}

export interface Imported {
  readonly live: LiveBook;
  readonly plan: ImportPlan;
  readonly settled: SettledImport;
  readonly sheet: string;
  /** What the cells show, row by row, in the order of the file's columns that were taken. */
  readonly shown: unknown[][];
}

/** Brings a table in by its guessed plan, into a new sheet unless another place is given. */
export async function bring(
  table: SourceTable,
  {
    live = newLive(),
    place = { newSheet: 'Brought in' },
    metadata,
    header,
  }: { live?: LiveBook; place?: ImportPlan['place']; metadata?: Metadata; header?: boolean } = {},
): Promise<Imported> {
  const plan = planFor(live, table, header ?? metadata?.header ?? guessHeader(table.rows), place, {
    metadata: metadata?.columns,
  });
  const settled = atOnce(settleImport(table, plan));
  const done = await bringIn(live, plan, settled, `import of ${table.name}`);
  expect(done?.ok, done?.ok === false ? done.problem.message : '').toBe(true);
  const sheet = done?.ok ? done.value.sheet : '';
  const shown = settled.rows.map(({ id }) =>
    [...settled.columnIds.values()].map((column) => live.value(sheet, id, column)),
  );
  return { live, plan, settled, sheet, shown };
}

export const codes = (settled: { readonly problems: readonly { readonly code: string }[] }): string[] =>
  settled.problems.map(({ code }) => code);
