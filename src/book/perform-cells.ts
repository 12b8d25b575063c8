import { ok, type Problem, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { change, gone, type Performed, type Workbench } from './bench.js';
import { declaredIn, entryTypeIn, takenIn } from './column-in.js';
import { type Command, MAX_CELLS_AT_ONCE, type Typed } from './commands.js';
import { dateOrder } from './date-order.js';
import { readEntry } from './entry.js';
import { choiceMeant } from './fixed-choices.js';
import { isFormula, toStored } from './formula/references.js';
import type { ColumnType } from './kinds/index.js';
import type { SheetState } from './state.js';
import { titleOfColumn } from './state-layout.js';
import type { Change, Raw } from './types.js';

const MAX_TEXT = 20_000;
const MAX_TITLE = 200;
const MAX_NESTING = 60;

/** A refusal of text that is longer than a cell or a setting holds. */
export const textTooLong = (typed: Typed) =>
  typeof typed === 'string' && typed.length > MAX_TEXT
    ? refuse(
        'text-too-long',
        say`That text has ${typed.length} characters; ${MAX_TEXT} is the most.`,
        say`Shorten it, or split it over several cells.`,
      )
    : undefined;

/** A refusal of a title with which the book, once saved, could not be opened again. */
export const titleTooLong = (title: string) =>
  title.length > MAX_TITLE
    ? refuse(
        'title-too-long',
        say`That title has ${title.length} characters; ${MAX_TITLE} is the most.`,
        say`Choose a shorter title, and keep the rest in a cell.`,
      )
    : undefined;

/** Deepest nesting of brackets outside text literals. */
function nesting(formula: string): number {
  let depth = 0;
  let deepest = 0;
  for (const [part] of formula.matchAll(/"(?:[^"]|"")*"|[()]/g)) {
    if (part === '(') deepest = Math.max(deepest, ++depth);
    else if (part === ')') depth--;
  }
  return deepest;
}

/** A typed value as the cell stores it; undefined blanks it. */
export function storedEntry(
  typed: Typed,
  type: ColumnType,
  sheet: string,
  bench: Workbench,
): Result<Raw | undefined> {
  const long = textTooLong(typed);
  if (long) return long;
  if (typeof typed === 'string') {
    const trimmed = typed.trimStart();
    if (isFormula(trimmed)) {
      if (nesting(trimmed) > MAX_NESTING) {
        return refuse(
          'nested-too-deep',
          say`That formula has more than ${MAX_NESTING} brackets inside one another.`,
          say`Work out the inner part in a column of its own and refer to it.`,
        );
      }
      const stored = toStored(trimmed, sheet, bench.layout);
      // With references by id it is longer than as typed.
      return stored.length <= MAX_TEXT
        ? ok(stored)
        : refuse(
            'formula-too-long',
            say`That formula refers to more cells than one cell can hold the names of.`,
            say`Use a range, as in SUM(A1:A99), or work out parts of it in cells of their own.`,
          );
    }
  }
  return ok(readEntry(typed, type, dateOrder(bench)));
}

/** Why a planning cell cannot be written, in the words shown to the person. */
export function computed(sheet: SheetState, column: string, row?: string): Problem {
  const title = titleOfColumn(sheet, column);
  const own = takenIn(sheet, column) !== undefined;
  return {
    code: 'planning-column',
    message: own
      ? say`“${title}” is worked out from the book, so it cannot be typed over, pasted over or filled by a formula.`
      : say`“${title}” is worked out from the book, so it cannot be typed over, pasted over or removed.`,
    mend: own
      ? say`Change what it is worked out from (its working shows that), or take it off the sheet.`
      : say`Change what it is worked out from (its working shows that), or add a column of your own beside it.`,
    where: { sheet: sheet.id, column, ...(row !== undefined && { row }) },
  };
}

/** Changes for typed cells. Planning cells among them are left out, with a note; a refusal where there is nothing else. */
export function cellChanges(
  command: Extract<Command, { do: 'set cells' }>,
  bench: Workbench,
): Result<Performed> {
  const { state } = bench;
  const sheet = state.sheets.get(command.sheet);
  if (!sheet) return gone('sheet', { sheet: command.sheet });
  if (command.cells.length > MAX_CELLS_AT_ONCE) {
    return refuse(
      'too-many-cells',
      say`That is ${command.cells.length} cells at once; ${MAX_CELLS_AT_ONCE} is the most.`,
      say`Paste it in parts.`,
    );
  }
  const changes: Change[] = [];
  const notes: Problem[] = [];
  const refused = new Set<string>();
  for (const { row, column, typed } of command.cells) {
    const declaration = declaredIn(sheet, column);
    if (declaration?.role === 'planning') {
      if (!refused.has(column)) notes.push(computed(sheet, column, row));
      refused.add(column);
      continue;
    }
    if (!sheet.rows.has(row)) return gone('row', { sheet: sheet.id, row });
    if (!declaration && !sheet.columns.has(column)) return gone('column', { sheet: sheet.id, column });
    const entry = storedEntry(choiceMeant(typed, declaration), entryTypeIn(sheet, column), sheet.id, bench);
    if (!entry.ok)
      return { ok: false, problem: { ...entry.problem, where: { sheet: sheet.id, row, column } } };
    changes.push(...change(state, ['sheets', sheet.id, 'rows', row, 'cells', column], entry.value));
  }
  if (notes[0] && command.cells.every(({ column }) => refused.has(column)))
    return { ok: false, problem: notes[0] };
  return ok({ changes, notes });
}
