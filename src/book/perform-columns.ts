import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { change, gone, type Performed, type Workbench } from './bench.js';
import { takenIn } from './column-in.js';
import { lookField, OWN_FIELDS } from './column-look.js';
import { type Command, json, MAX_COLUMNS } from './commands.js';
import { mendedRanges } from './formula/mend-ranges.js';
import { isFormula } from './formula/references.js';
import { isUsableId } from './ids.js';
import { declarationOf } from './kinds/index.js';
import { placing } from './order.js';
import { colourField, noteField, type TakenColumn } from './own-column.js';
import { computed, storedEntry, titleTooLong } from './perform-cells.js';
import { readAnew } from './read-anew.js';
import type { SheetState } from './state.js';
import { titleOfColumn } from './state-layout.js';
import type { Change, Json } from './types.js';

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
  bench: Workbench,
): Result<Performed> {
  if (!isUsableId(command.column) || has(sheet, command.column)) {
    return refuse(
      'bad-column-id',
      say`“${command.column}” cannot be the id of a new column.`,
      say`Use letters and digits, a letter first, and no id that the sheet has already.`,
      { sheet: sheet.id },
    );
  }
  if (sheet.columnOrder.ids.length >= MAX_COLUMNS) {
    return refuse(
      'too-many-columns',
      say`A sheet holds ${MAX_COLUMNS} columns.`,
      say`Start another sheet for the rest.`,
      { sheet: sheet.id },
    );
  }
  const title = command.title.trim() || say`New column`;
  const long = titleTooLong(title);
  if (long) return long;
  const formula = columnFormula(command.formula, sheet, bench);
  if (!formula.ok) return formula;
  const { keys, others } = placing(sheet.columnOrder, command.before, 1);
  const column = {
    own: true,
    title,
    order: keys[0]!,
    ...(formula.value !== undefined && { formula: formula.value }),
  };
  return ok({
    changes: [
      ...others.flatMap(([id, key]) =>
        change(bench.state, ['sheets', sheet.id, 'columns', id, 'order'], key),
      ),
      { path: ['sheets', sheet.id, 'columns', command.column], to: json(column), was: undefined },
    ],
    notes: [],
  });
}

/** A column's formula as it is stored; undefined when it is none. */
function columnFormula(typed: unknown, sheet: SheetState, bench: Workbench): Result<string | undefined> {
  const trimmed = typeof typed === 'string' ? typed.trimStart() : typed;
  if (!isFormula(trimmed)) return ok(undefined);
  const stored = storedEntry(trimmed, 'any', sheet.id, bench);
  return stored.ok ? ok(String(stored.value)) : stored;
}

function removed(columns: readonly string[], sheet: SheetState, bench: Workbench): Result<Performed> {
  for (const column of columns) {
    const declaration = declarationOf(sheet.kind, column);
    if (declaration?.role === 'planning') return { ok: false, problem: computed(sheet, column) };
    if (declaration) {
      return refuse(
        'kept-column',
        say`“${titleOfColumn(sheet, column)}” belongs to this sheet: the plan reads it.`,
        say`Hide it if you do not want to see it.`,
        { sheet: sheet.id, column },
      );
    }
    if (!has(sheet, column)) return gone('column', { sheet: sheet.id, column });
  }
  const changes: Change[] = mendedRanges(sheet.id, 'column', columns, bench);
  for (const column of new Set(columns)) {
    for (const [rowId, row] of sheet.rows) {
      for (const field of [noteField(column), colourField(column)])
        changes.push(...change(bench.state, ['sheets', sheet.id, 'rows', rowId, field], undefined));
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
  const { keys, others } = placing(sheet.columnOrder, before, columns.length, moving);
  const placed = [...others, ...columns.map((column, i) => [column, keys[i]!] as const)];
  return ok({
    changes: placed.flatMap(([column, key]) =>
      change(state, ['sheets', sheet.id, 'columns', column, 'order'], key),
    ),
    notes: [],
  });
}

const notOwn = (sheet: SheetState, column: string): Result<never> =>
  refuse(
    'not-own-column',
    say`“${titleOfColumn(sheet, column)}” belongs to this sheet: it takes no formula for the whole column, and what it holds is settled.`,
    say`Add a column of your own for it.`,
    { sheet: sheet.id, column },
  );

/** A refusal where a planning column would stand in the column that is to name its rows, or those of another. */
function namesItself(sheet: SheetState, column: string, plan: Json): Result<never> | undefined {
  const { by } = plan as unknown as TakenColumn;
  const named =
    by === column ? column : [...sheet.columns.keys()].find((id) => takenIn(sheet, id)?.by === column);
  if (named === undefined) return undefined;
  return refuse(
    'names-rows',
    by === column
      ? say`“${titleOfColumn(sheet, column)}” cannot both name the rows and show their figures.`
      : say`“${titleOfColumn(sheet, column)}” names the rows for “${titleOfColumn(sheet, named)}”.`,
    say`Add a column for the figures.`,
    { sheet: sheet.id, column },
  );
}

function described(
  command: Extract<Command, { do: 'describe column' }>,
  sheet: SheetState,
  bench: Workbench,
): Result<Performed> {
  const { state } = bench;
  if (!has(sheet, command.column)) return gone('column', { sheet: sheet.id, column: command.column });
  const declaration = declarationOf(sheet.kind, command.column);
  const isOwn = !declaration;
  const changes: Change[] = [];
  for (const [field, value] of Object.entries(command.as)) {
    // A column that its kind hides is shown only where `false` is stored outright.
    const shown = field === 'hidden' && value === false && declaration?.hidden === true;
    let to: Json | undefined = shown ? value : undefined;
    if (!shown && value !== null && value !== '' && value !== false) {
      if (!isOwn && OWN_FIELDS.has(field)) return notOwn(sheet, command.column);
      const read = lookField(field, value, sheet, bench);
      if (!read.ok) return read;
      to = read.value;
    }
    if (field === 'formula') {
      if (!isOwn) return notOwn(sheet, command.column);
      if (to !== undefined && takenIn(sheet, command.column))
        return { ok: false, problem: computed(sheet, command.column) };
      const formula = columnFormula(to, sheet, bench);
      if (!formula.ok) return formula;
      to = formula.value;
    }
    if (field === 'width' && to !== undefined) {
      const width = Math.round(Number(to));
      to = Number.isNaN(width) ? undefined : Math.min(1200, Math.max(30, width));
    }
    if (field === 'title') {
      const long = titleTooLong(String(to ?? ''));
      if (long) return long;
      if (isOwn && to === undefined) to = 'Column';
    }
    if (field === 'plan' && to !== undefined) {
      const naming = namesItself(sheet, command.column, to);
      if (naming) return naming;
    }
    changes.push(...change(state, ['sheets', sheet.id, 'columns', command.column, field], to));
    if (field === 'type' && isOwn && changes.length > 0)
      changes.push(...readAnew(sheet, command.column, command.as.type ?? 'any', bench));
  }
  return ok({ changes, notes: [] });
}
