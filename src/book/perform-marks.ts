import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { change, gone, type Performed, type Workbench } from './bench.js';
import { noteTooLong } from './column-look.js';
import { type Command, MAX_CELLS_AT_ONCE } from './commands.js';
import { UNTURNED, unturnedField } from './measured-formulas.js';
import { COLOURS, colourField, noteField } from './own-column.js';
import type { Change } from './types.js';

type MarkCommand = Extract<Command, { do: 'mark cells' | 'group rows' }>;

/** How cells and rows are looked at: colours, notes, groups. Nothing of it is read by the plan. */
export function markChanges(command: MarkCommand, { state }: Workbench): Result<Performed> {
  const sheet = state.sheets.get(command.sheet);
  if (!sheet) return gone('sheet', { sheet: command.sheet });
  const columnGone = (column: string) =>
    sheet.columnOrder.has(column) ? undefined : gone('column', { sheet: sheet.id, column });
  if (command.do === 'group rows') {
    if (command.by !== null) {
      const missing = columnGone(command.by);
      if (missing) return missing;
    }
    return ok({ changes: change(state, ['sheets', sheet.id, 'group'], command.by ?? undefined), notes: [] });
  }
  const { cells, colour } = command;
  const note = command.note?.trim();
  if (cells.length > MAX_CELLS_AT_ONCE) {
    return refuse(
      'too-many-cells',
      say`That is ${cells.length} cells at once; ${MAX_CELLS_AT_ONCE} is the most.`,
      say`Mark them in parts.`,
    );
  }
  if (colour && !COLOURS.includes(colour)) {
    return refuse(
      'no-such-colour',
      say`There is no colour “${String(colour).slice(0, 40)}”.`,
      say`Choose one of: ${COLOURS.join(', ')}.`,
    );
  }
  const long = noteTooLong(note ?? '');
  if (long) return long;
  const changes: Change[] = [];
  for (const { row, column } of cells) {
    if (!sheet.rows.has(row)) return gone('row', { sheet: sheet.id, row });
    const missing = columnGone(column);
    if (missing) return missing;
    const at = ['sheets', sheet.id, 'rows', row];
    if (colour !== undefined)
      changes.push(...change(state, [...at, colourField(column)], colour ?? undefined));
    if (command.note !== undefined)
      changes.push(...change(state, [...at, noteField(column)], note || undefined));
    if (command.lookedAt) {
      changes.push(...change(state, [...at, unturnedField(column)], undefined));
      if (!changes.some(({ path }) => path[4] === UNTURNED))
        changes.push(...change(state, ['sheets', sheet.id, 'columns', column, UNTURNED], undefined));
    }
  }
  return ok({ changes, notes: [] });
}
