import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CellValue } from '../../src/book/index.js';
import { readMetadata } from '../../src/tables/csvw-read.js';
import { csvwMetadata } from '../../src/tables/csvw-write.js';
import { asMeant, harmless } from '../../src/tables/harmless.js';
import { StoredCells, tableOut } from '../../src/tables/out-table.js';
import { atOnce } from '../../src/tables/slices.js';
import { writeWorkbook } from '../../src/tables/workbook-write.js';
import { writeDelimited } from '../../src/tables/write-delimited.js';
import { bring, bytesOf, newLive, tableFrom } from '../unit/tables-support.js';

const numRuns = Number(process.env.CROFTSHEET_RUNS ?? 60);

const awkward = fc.constantFrom(
  '"',
  "'",
  ',',
  ';',
  '\t',
  '|',
  '\n',
  '\r',
  '\r\n',
  '=',
  '+',
  '-',
  '@',
  ' ',
  'é',
  '🫛',
  '_x0041_',
  '0',
  '1,5',
  '<b>',
  '&',
  '\u200f',
);
/** Text that a cell can hold: not blank alone, which a cell keeps as nothing. */
const text = fc
  .array(fc.oneof(awkward, fc.string({ unit: 'grapheme', maxLength: 4 })), { minLength: 1, maxLength: 6 })
  .map((parts) => parts.join('').replaceAll('\0', ''))
  .filter((each) => each.trim() !== '');
const number = fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e15, max: 1e15 }).map((n) => n + 0);
const day = fc
  .integer({ min: Date.UTC(1900, 2, 1) / 864e5, max: Date.UTC(2200, 0, 1) / 864e5 })
  .map((n) => new Date(n * 864e5).toISOString().slice(0, 10));
const blank = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: null, freq: 5 });
const row = fc.tuple(text, blank(number), blank(day), blank(fc.boolean()), blank(text));
const rows = fc.array(row, { minLength: 1, maxLength: 12 });

const COLUMNS = [
  { id: 'cname', title: 'Name', as: { type: 'text' } },
  { id: 'camount', title: '=Amount', as: { type: 'number' } },
  { id: 'con', title: 'On, "the" day', as: { type: 'date' } },
  { id: 'cdone', title: 'Done', as: { type: 'tick' } },
  { id: 'cnote', title: "'-Note", as: { type: 'text' } },
] as const;

/** As typed: text that begins with an apostrophe or `=` needs one before it to stay text. */
const typed = (value: string | number | boolean | null) =>
  typeof value === 'string' && (value.startsWith("'") || value.trimStart().startsWith('='))
    ? `'${value}`
    : value;

function sheetWith(values: readonly (readonly (string | number | boolean | null)[])[]) {
  const live = newLive();
  const done = live.apply({
    do: 'add sheet',
    sheet: 'sprop',
    title: 'Any',
    columns: COLUMNS,
    rows: values.map((cells, i) => ({
      id: `r${i}`,
      cells: Object.fromEntries(COLUMNS.map(({ id }, c) => [id, typed(cells[c]!)])),
    })),
  });
  expect(done.ok).toBe(true);
  return live;
}

const values = (live: ReturnType<typeof newLive>, sheet: string): CellValue[][] =>
  live.rowIds(sheet).map((id) => live.columns(sheet).map((column) => live.value(sheet, id, column.id)));

describe('taken out and brought in again, everything is as it was', () => {
  it.each([',', '\t'] as const)('separated by %j, with its description', async (separator) => {
    await fc.assert(
      fc.asyncProperty(rows, fc.boolean(), async (made, mark) => {
        const live = sheetWith(made);
        const table = atOnce(tableOut(live, 'sprop', false));
        const file = bytesOf(writeDelimited(table, { separator, mark }));
        const metadata = readMetadata(csvwMetadata(table, 'any.csv', separator), 'any.csv');
        if (!metadata.ok) throw new Error(metadata.problem.message);
        const source = await tableFrom(file, 'any.csv', {}, metadata.value);
        const { live: other, sheet, plan } = await bring(source, { metadata: metadata.value });
        expect(plan.columns.map(({ heading }) => heading)).toEqual(COLUMNS.map(({ title }) => title));
        expect(values(other, sheet)).toEqual(values(live, 'sprop'));
      }),
      { numRuns },
    );
  });

  it('in a workbook', async () => {
    await fc.assert(
      fc.asyncProperty(rows, async (made) => {
        const live = sheetWith(made);
        const { bytes } = await writeWorkbook(
          [atOnce(tableOut(live, 'sprop', false))],
          new StoredCells(live),
          'Any',
        );
        // Types come from the sheet that it goes into, as where somebody brings it back.
        const again = sheetWith([]);
        const { sheet } = await bring(await tableFrom(bytes, 'any.xlsx'), {
          live: again,
          place: { sheet: 'sprop' },
          header: true,
        });
        expect(values(again, sheet)).toEqual(values(live, 'sprop'));
      }),
      { numRuns: Math.ceil(numRuns / 3) },
    );
  });
});

it('text made harmless never begins as a formula does, and comes back as it was', () => {
  fc.assert(
    fc.property(text, (each) => {
      expect(harmless(each)).not.toMatch(/^[=+\-@\t\r]/);
      expect(asMeant(harmless(each))).toBe(each);
    }),
    { numRuns: numRuns * 10 },
  );
});

it('any text at all is read or refused, and nothing that stands in it is lost', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.oneof(awkward, fc.string({ maxLength: 5 })), { maxLength: 60 }),
      async (parts) => {
        const whole = parts.join('').replaceAll('\0', '');
        let table: Awaited<ReturnType<typeof tableFrom>>;
        try {
          table = await tableFrom(whole, 'any.csv');
        } catch (error) {
          expect((error as Error).message).toMatch(/^(file-empty|not-a-table)$/);
          return;
        }
        const letters = (of: string) => of.replace(/[^\p{L}\p{N}]/gu, '');
        const read = table.rows.flatMap(({ cells }) => cells.map(String)).join('');
        expect(letters(read)).toBe(letters(whole));
        const { shown } = await bring(table, { header: false });
        expect(shown.length).toBe(table.rows.length);
      },
    ),
    { numRuns: numRuns * 3 },
  );
});
