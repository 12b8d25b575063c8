import { ok, type Problem, type Result } from '../problem.js';
import { inverse, type Performed, type Workbench } from './bench.js';
import type { Command } from './commands.js';
import { cellChanges } from './perform-cells.js';
import { columnChanges } from './perform-columns.js';
import { markChanges } from './perform-marks.js';
import { rowChanges } from './perform-rows.js';
import { sheetChanges } from './perform-sheets.js';
import { takenOver } from './perform-take-over.js';
import type { Change } from './types.js';

/** Must names be worked out anew after these? */
const touchesColumns = (changes: readonly Change[]): boolean =>
  changes.some(({ path }) => path[0] === 'sheets' && (path.length < 4 || path[2] === 'columns'));

function one(command: Exclude<Command, { do: 'all' }>, bench: Workbench): Result<Performed> {
  switch (command.do) {
    case 'set cells':
      return cellChanges(command, bench);
    case 'insert rows':
    case 'remove rows':
    case 'move rows':
      return rowChanges(command, bench);
    case 'add column':
    case 'remove columns':
    case 'move columns':
    case 'describe column':
      return columnChanges(command, bench);
    case 'mark cells':
    case 'group rows':
      return markChanges(command, bench);
    case 'take over':
      return takenOver(command, bench);
    default:
      return sheetChanges(command, bench);
  }
}

/** Applies changes to the state, keeping the layout's names true. */
export function put(changes: readonly Change[], { state, layout }: Workbench): void {
  state.apply(changes);
  if (touchesColumns(changes)) layout.forgetNames();
}

/** A command that is several in one, as those; undefined where it is one. */
function partsOf(command: Command): readonly Command[] | undefined {
  if (command.do === 'all') return command.of;
  if (command.do === 'add column' && command.as) {
    const { as, ...bare } = command;
    return [bare, { do: 'describe column', sheet: command.sheet, column: command.column, as }];
  }
  if (command.do === 'add sheet' && (command.columns || command.rows)) {
    const { columns = [], rows = [], ...bare } = command;
    const { sheet } = command;
    const whole = columns.map(({ id, title, as: { formula, plan, ...as } = {} }) => ({
      id,
      add: { do: 'add column', sheet, column: id, before: null, title, as } as const,
      // What names other columns and rows is said once all of them stand.
      later: { ...(formula && { formula }), ...(plan && { plan }) },
    }));
    return [
      bare,
      ...whole.map(({ add }): Command => add),
      ...(rows.length > 0 ? [{ do: 'insert rows', sheet, before: null, rows } as const] : []),
      ...whole.flatMap(({ id, later: as }): Command[] =>
        Object.keys(as).length > 0 ? [{ do: 'describe column', sheet, column: id, as }] : [],
      ),
    ];
  }
  return undefined;
}

/**
 * Performs a command on the state: all of it or, on a refusal, none of it. The answer lists every change
 * made, so that history can take it back and storage can pass it on.
 */
export function perform(command: Command, bench: Workbench): Result<Performed> {
  const parts = partsOf(command);
  if (command.do !== 'all' && !parts) {
    const done = one(command, bench);
    if (done.ok) put(done.value.changes, bench);
    return done;
  }
  let changes: readonly Change[] = [];
  const notes: Problem[] = [];
  let all = false;
  try {
    for (const part of parts ?? []) {
      const done = perform(part, bench);
      if (!done.ok) return done;
      changes = [...changes, ...done.value.changes];
      notes.push(...done.value.notes);
    }
    all = true;
    return ok({ changes, notes });
  } finally {
    // Refused, or broken off by something unforeseen.
    if (!all) put(inverse(changes), bench);
  }
}
