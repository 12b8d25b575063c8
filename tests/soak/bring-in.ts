import type { Command } from '../../src/book/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { importCommands } from '../../src/tables/bring-in.js';
import { planFor } from '../../src/tables/plan.js';
import { settleImport } from '../../src/tables/settle.js';
import type { SourceCell, SourceTable } from '../../src/tables/types.js';
import type { Edit } from './edits.js';

type BringIn = Extract<Edit, { edit: 'bring in' }>;

/** A table as read from a file, brought in by the first plan that is made for it. */
export function bringIn(
  live: LiveBook,
  { sheet, from, cells }: BringIn,
  most: { readonly rows: number; readonly sheets: number },
): Command | undefined {
  const sheets = live.sheets();
  const into = sheet === null ? undefined : sheets[sheet % sheets.length]!.id;
  if (into === undefined ? sheets.length >= most.sheets : live.rowIds(into).length + cells.length > most.rows)
    return undefined;
  const width = Math.max(...cells.map((line) => line.length));
  const titles = into === undefined ? [] : live.columns(into).map(({ title }) => title);
  const headings = Array.from(
    { length: width },
    (_, i) => titles[(from + i) % (titles.length || 1)] ?? `Heading ${i}`,
  );
  const rows = [headings, ...cells].map((line, i) => ({
    line: i + 1,
    cells: Array.from({ length: width }, (_, j): SourceCell => line[j] ?? null),
  }));
  const table: SourceTable = { name: 'Brought in', rows, problems: [], notes: [] };
  const place = into === undefined ? { newSheet: `Brought in ${sheets.length}` } : { sheet: into };
  const plan = planFor(live, table, true, place);
  const settling = settleImport(table, plan);
  for (let step = settling.next(); ; step = settling.next())
    if (step.done) return { do: 'all', of: importCommands(plan, step.value).commands };
}
