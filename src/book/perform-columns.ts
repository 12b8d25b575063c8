import { ok, type Result, refuse } from '../problem.js';
import { change, gone, type Performed, type Workbench } from './bench.js';
import { type Command, json, MAX_COLUMNS } from './commands.js';
import { mendedRanges } from './formula/mend-ranges.js';
import { isFormula, toStored } from './formula/references.js';
import { isUsableId } from './ids.js';
import { declarationOf } from './kinds/index.js';
import { keysBefore } from './order.js';
import { computed } from './perform-cells.js';
import type { SheetState } from './state.js';
import { titleOfColumn } from './state-layout.js';
import type { Change } from './types.js';

type ColumnCommand = Extract<
  Command,
  { do: 'add column' | 'remove columns' | 'move columns' | 'describe column' }
>;

const has = (sheet: SheetState, column: string) => sheet.columnOrder.has(column);

export function columnChanges(command: ColumnCommand, bench: Workbench): Result<Performed> {
  const sheet = bench.state.sheets.get(command.sheet);
  if (!sheet) return gone('sheet', { sheet: command.sheet });
  switch (command.do) {
    case 'add column':
      return added(command, sheet, bench);
    case 'remove columns':
      return removed(command.columns, sheet, bench);
    case 'move columns':
      return moved(command, sheet, bench);
    case 'describe column':
      return described(command, sheet, bench);
  }
}

function added(
  command: Extract<Command, { do: 'add column' }>,
  sheet: SheetState,
  { layout }: Workbench,
): Result<Performed> {
  if (!isUsableId(command.column) || has(sheet, command.column)) {
    return refuse(
      'bad-column-id',
      `“${command.column}” cannot be the id of a new column.`,
      'Use letters and digits, a letter first, and no id that the sheet has already.',
      { sheet: sheet.id },
    );
  }
  if (sheet.columnOrder.ids.length >= MAX_COLUMNS) {
    return refuse(
      'too-many-columns',
      `A sheet holds ${MAX_COLUMNS} columns.`,
      'Start another sheet for the rest.',
      { sheet: sheet.id },
    );
  }
  const [order] = keysBefore(sheet.columnOrder, command.before, 1);
  const title = command.title.trim() || 'New column';
  const column = {
    own: true,
    title,
    order: order!,
    ...(isFormula(command.formula) && { formula: toStored(command.formula, sheet.id, layout) }),
  };
  return ok({
    changes: [{ path: ['sheets', sheet.id, 'columns', command.column], to: json(column), was: undefined }],
    notes: [],
  });
}

function removed(columns: readonly string[], sheet: SheetState, bench: Workbench): Result<Performed> {
  for (const column of columns) {
    const declaration = declarationOf(sheet.kind, column);
    if (declaration?.role === 'planning') return { ok: false, problem: computed(sheet, column) };
    if (declaration) {
      return refuse(
        'kept-column',
        `“${titleOfColumn(sheet, column)}” belongs to this sheet: the plan reads it.`,
        'Hide it if you do not want to see it.',
        { sheet: sheet.id, column },
      );
    }
    if (!has(sheet, column)) return gone('column', { sheet: sheet.id, column });
  }
  const changes: Change[] = mendedRanges(sheet.id, 'column', columns, bench);
  for (const column of new Set(columns)) {
    for (const [rowId, row] of sheet.rows) {
      if (Object.hasOwn(row.cells, column))
        changes.push(...change(bench.state, ['sheets', sheet.id, 'rows', rowId, 'cells', column], undefined));
    }
    changes.push({
      path: ['sheets', sheet.id, 'columns', column],
      to: undefined,
      was: json(sheet.columns.get(column)!),
    });
  }
  return ok({ changes: withoutDoubles(changes), notes: [] });
}

/** A cell that is both mended and removed is only removed, from what it was at first. */
function withoutDoubles(changes: readonly Change[]): Change[] {
  const byPath = new Map<string, Change>();
  for (const each of changes) byPath.set(each.path.join('/'), each);
  return [...byPath.values()];
}

function moved(
  command: Extract<Command, { do: 'move columns' }>,
  sheet: SheetState,
  { state }: Workbench,
): Result<Performed> {
  const missing = command.columns.find((column) => !has(sheet, column));
  if (missing !== undefined) return gone('column', { sheet: sheet.id, column: missing });
  const columns = [...new Set(command.columns)].sort(
    (a, b) => sheet.columnOrder.indexOf(a) - sheet.columnOrder.indexOf(b),
  );
  const moving = new Set(columns);
  let { before } = command;
  while (before !== null && moving.has(before))
    before = sheet.columnOrder.ids[sheet.columnOrder.indexOf(before) + 1] ?? null;
  const keys = keysBefore(sheet.columnOrder, before, columns.length);
  return ok({
    changes: columns.flatMap((column, i) =>
      change(state, ['sheets', sheet.id, 'columns', column, 'order'], keys[i]),
    ),
    notes: [],
  });
}

function described(
  command: Extract<Command, { do: 'describe column' }>,
  sheet: SheetState,
  { state, layout }: Workbench,
): Result<Performed> {
  if (!has(sheet, command.column)) return gone('column', { sheet: sheet.id, column: command.column });
  const declaration = declarationOf(sheet.kind, command.column);
  const isOwn = !declaration;
  const changes: Change[] = [];
  for (const [field, value] of Object.entries(command.as)) {
    // A column that its kind hides is shown only where `false` is stored outright.
    const shown = field === 'hidden' && value === false && declaration?.hidden === true;
    let to = shown ? value : value === null || value === '' || value === false ? undefined : value;
    if (field === 'formula') {
      if (!isOwn) {
        return refuse(
          'not-own-column',
          `“${titleOfColumn(sheet, command.column)}” belongs to this sheet and takes no formula for the whole column.`,
          'Add a column of your own for it.',
          { sheet: sheet.id, column: command.column },
        );
      }
      to = isFormula(to) ? toStored(to, sheet.id, layout) : undefined;
    }
    if (field === 'width' && to !== undefined) to = Math.min(1200, Math.max(30, Math.round(Number(to))));
    if (field === 'title' && isOwn && to === undefined) to = 'Column';
    changes.push(...change(state, ['sheets', sheet.id, 'columns', command.column, field], to));
  }
  return ok({ changes, notes: [] });
}
