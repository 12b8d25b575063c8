import { ok, type Problem, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { change, gone, inverse, type Performed, type Workbench } from './bench.js';
import { declaredIn, entryTypeIn } from './column-in.js';
import { type Command, json, MAX_ROWS, type NewRow } from './commands.js';
import { choiceMeant } from './fixed-choices.js';
import { mendedRanges } from './formula/mend-ranges.js';
import { isUsableId } from './ids.js';
import { placing } from './order.js';
import { computed, storedEntry } from './perform-cells.js';
import type { SheetState } from './state.js';
import type { Change, Raw } from './types.js';

type RowCommand = Extract<Command, { do: 'insert rows' | 'remove rows' | 'move rows' }>;

export function rowChanges(command: RowCommand, bench: Workbench): Result<Performed> {
  const sheet = bench.state.sheets.get(command.sheet);
  if (!sheet) return gone('sheet', { sheet: command.sheet });
  if (command.do === 'insert rows') return inserted(command, sheet, bench);
  const missing = command.rows.find((row) => !sheet.rows.has(row));
  if (missing !== undefined) return gone('row', { sheet: sheet.id, row: missing });
  return command.do === 'remove rows' ? removed(command.rows, sheet, bench) : moved(command, sheet, bench);
}

function inserted(
  command: Extract<Command, { do: 'insert rows' }>,
  sheet: SheetState,
  bench: Workbench,
): Result<Performed> {
  if (sheet.rows.size + command.rows.length > MAX_ROWS) {
    return refuse(
      'too-many-rows',
      say`A sheet holds ${MAX_ROWS} rows.`,
      say`Start another sheet, or remove rows that are done with.`,
      { sheet: sheet.id },
    );
  }
  const ids = new Set(command.rows.map(({ id }) => id));
  const bad = command.rows.find(({ id }) => !isUsableId(id) || sheet.rows.has(id));
  if (bad || ids.size < command.rows.length) {
    return refuse(
      'bad-row-id',
      bad
        ? say`“${bad.id}” cannot be the id of a new row.`
        : say`“An id given twice” cannot be the id of a new row.`,
      say`Use letters and digits, a letter first, and no id that the sheet has already.`,
      { sheet: sheet.id },
    );
  }
  const { keys, others } = placing(sheet.rowOrder, command.before, command.rows.length);
  const blank = [
    ...others.flatMap(([id, key]) => orderChange(bench, sheet, id, key)),
    ...command.rows.map(({ id }, i): Change => rowChange(sheet, id, keys[i]!, {})),
  ];
  // Formulas among the new rows may refer to one another, so the rows must stand before their cells are read.
  bench.state.apply(blank);
  let filled: ReturnType<typeof cellsOfNewRows>;
  try {
    filled = cellsOfNewRows(command.rows, sheet, bench);
  } finally {
    bench.state.apply(inverse(blank));
  }
  if (!filled.ok) return filled;
  const changes = [
    ...others.flatMap(([id, key]) => orderChange(bench, sheet, id, key)),
    ...command.rows.map(({ id }, i) => rowChange(sheet, id, keys[i]!, filled.value.cells[i]!)),
  ];
  return ok({ changes, notes: filled.value.notes });
}

const rowChange = (sheet: SheetState, id: string, order: string, cells: Record<string, Raw>): Change => ({
  path: ['sheets', sheet.id, 'rows', id],
  to: json({ order, cells }),
  was: undefined,
});

const orderChange = ({ state }: Workbench, sheet: SheetState, id: string, key: string): Change[] =>
  change(state, ['sheets', sheet.id, 'rows', id, 'order'], key);

function cellsOfNewRows(
  rows: readonly NewRow[],
  sheet: SheetState,
  bench: Workbench,
): Result<{ cells: Record<string, Raw>[]; notes: Problem[] }> {
  const notes: Problem[] = [];
  const all: Record<string, Raw>[] = [];
  for (const row of rows) {
    const cells: Record<string, Raw> = {};
    for (const [column, typed] of Object.entries(row.cells ?? {})) {
      const declaration = declaredIn(sheet, column);
      if (declaration?.role === 'planning') {
        if (typed !== null && typed !== '') notes.push(computed(sheet, column, row.id));
        continue;
      }
      if (!declaration && !sheet.columns.has(column)) return gone('column', { sheet: sheet.id, column });
      const entry = storedEntry(choiceMeant(typed, declaration), entryTypeIn(sheet, column), sheet.id, bench);
      if (!entry.ok) {
        return { ok: false, problem: { ...entry.problem, where: { sheet: sheet.id, row: row.id, column } } };
      }
      if (entry.value !== undefined) cells[column] = entry.value;
    }
    all.push(cells);
  }
  return ok({ cells: all, notes });
}

function removed(rows: readonly string[], sheet: SheetState, bench: Workbench): Result<Performed> {
  const changes = mendedRanges(sheet.id, 'row', rows, bench);
  const going = new Set(rows);
  // A formula inside a row that goes need not be mended first.
  const outside = changes.filter(
    ({ path }) => !(path[1] === sheet.id && path[2] === 'rows' && going.has(path[3]!)),
  );
  for (const row of going)
    outside.push({ path: ['sheets', sheet.id, 'rows', row], to: undefined, was: json(sheet.rows.get(row)!) });
  return ok({ changes: outside, notes: [] });
}

function moved(
  command: Extract<Command, { do: 'move rows' }>,
  sheet: SheetState,
  bench: Workbench,
): Result<Performed> {
  const rows = [...new Set(command.rows)].sort(
    (a, b) => sheet.rowOrder.indexOf(a) - sheet.rowOrder.indexOf(b),
  );
  const moving = new Set(rows);
  let before = command.before;
  // 'Before a row that itself moves' means before the next one that stays.
  while (before !== null && moving.has(before))
    before = sheet.rowOrder.ids[sheet.rowOrder.indexOf(before) + 1] ?? null;
  const { keys, others } = placing(sheet.rowOrder, before, rows.length, moving);
  const placed = [...others, ...rows.map((row, i) => [row, keys[i]!] as const)];
  return ok({ changes: placed.flatMap(([row, key]) => orderChange(bench, sheet, row, key)), notes: [] });
}
