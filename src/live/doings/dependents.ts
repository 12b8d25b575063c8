import { formulasLeft, type Going } from '../../book/formula/gone.js';
import type { Use } from '../../book/formula/stored.js';
import {
  type Command,
  declarationOf,
  isCellError,
  takenOf,
  titleOfColumn,
  titleOfSheet,
  usesOf,
} from '../../book/index.js';
import { quoted, say } from '../../words/index.js';
import type { BookReading } from '../book-reading.js';
import { usersOf } from './formula-areas.js';
import { formulaLines } from './formula-lines.js';

/** What is about to be removed from a sheet, or the whole sheet. */
export type Removal =
  | { readonly sheet: string; readonly columns: readonly string[] }
  | { readonly sheet: string; readonly rows: readonly string[] }
  | { readonly sheet: string };

/** Formulas of one column that refer to what would go. */
export interface Dependent {
  readonly sheet: string;
  readonly sheetTitle: string;
  readonly column: string;
  readonly columnTitle: string;
  /** Of cells: how many. Of the column's own formula: null. */
  readonly cells: number | null;
  /** A cell to go to; null where the formula fills no row yet. */
  readonly row: string | null;
}

/** What depends on something that would go. */
export interface Dependents {
  /** What would go, in words: `“Price”`, `the sheet “Prices”`, `row 3 (Carrots)`. */
  readonly of: string;
  /** How many formulas would show #REF!. */
  readonly formulas: number;
  readonly broken: readonly Dependent[];
  /** Formulas over several columns that would go on without one of them, so that they give something else. */
  readonly smaller: readonly Dependent[];
  /** Planning columns shown on a sheet of the person's own by the names that would go. */
  readonly taken: readonly Dependent[];
  /** Further formulas that hang on those. */
  readonly further: number;
  /** Some of them stand in columns from which the plan is worked out. */
  readonly feedsPlan: boolean;
}

const goingOf = (removal: Removal): Going =>
  'columns' in removal
    ? { part: 'column', sheet: removal.sheet, ids: new Set(removal.columns) }
    : 'rows' in removal
      ? { part: 'row', sheet: removal.sheet, ids: new Set(removal.rows) }
      : { part: 'sheet', sheet: removal.sheet };

/** The removal that a command does, if it does one. */
export function removalOf(command: Command): Removal | null {
  switch (command.do) {
    case 'remove columns':
      return { sheet: command.sheet, columns: command.columns };
    case 'remove rows':
      return { sheet: command.sheet, rows: command.rows };
    case 'remove sheet':
      return { sheet: command.sheet };
    default:
      return null;
  }
}

/** Ids from one end of a range to the other. */
function span(use: Use, part: 'row' | 'column', live: BookReading): readonly string[] {
  const sheet = live.inside.state.sheets.get(use.sheet)!;
  const order = part === 'row' ? sheet.rowOrder : sheet.columnOrder;
  const [from, to] = [use.from[part], use.to[part]];
  if (from === undefined || to === undefined) return [];
  const [a, b] = [order.indexOf(from), order.indexOf(to)];
  return a < 0 || b < 0 ? [] : order.ids.slice(Math.min(a, b), Math.max(a, b) + 1);
}

/** What becomes of a use when that goes. */
function fate(use: Use, going: Going, live: BookReading): 'stays' | 'breaks' | 'shrinks' {
  if (use.sheet !== going.sheet) return 'stays';
  if (going.part === 'sheet') return 'breaks';
  const spanned = span(use, going.part, live);
  const lost = spanned.filter((id) => going.ids.has(id)).length;
  return lost === 0 ? 'stays' : lost === spanned.length ? 'breaks' : 'shrinks';
}

class Collected {
  readonly #found = new Map<string, Dependent>();
  formulas = 0;

  constructor(readonly live: BookReading) {}

  add(sheet: string, column: string, row: string | null): void {
    this.formulas++;
    const key = `${sheet}/${column}/${row === null}`;
    const before = this.#found.get(key);
    const state = this.live.inside.state.sheets.get(sheet)!;
    this.#found.set(
      key,
      before
        ? { ...before, cells: (before.cells ?? 0) + 1 }
        : {
            sheet,
            sheetTitle: titleOfSheet(state),
            column,
            columnTitle: titleOfColumn(state, column),
            cells: row === null ? null : 1,
            row: row ?? state.rowOrder.ids[0] ?? null,
          },
    );
  }

  get all(): Dependent[] {
    return [...this.#found.values()];
  }
}

function words(removal: Removal, live: BookReading): string {
  const sheet = live.inside.state.sheets.get(removal.sheet);
  if (!sheet) return '';
  const few = (ids: readonly string[], all: string, name: (id: string) => string): string =>
    ids.length <= 3 ? ids.map(name).join(', ') : all;
  if ('columns' in removal) {
    const { columns } = removal;
    return few(columns, say`${columns.length} columns`, (id) => quoted(titleOfColumn(sheet, id)));
  }
  if ('rows' in removal) {
    const { rows } = removal;
    return few(rows, say`${rows.length} rows`, (id) => say`row ${sheet.rowOrder.indexOf(id) + 1}`);
  }
  return say`the sheet “${titleOfSheet(sheet)}”`;
}

const feedsPlan = (live: BookReading, sheet: string, column: string): boolean => {
  const kind = live.inside.state.sheets.get(sheet)?.kind;
  return kind !== undefined && declarationOf(kind, column)?.role === 'kept';
};

/**
 * What refers to columns, rows or a sheet that would go, and so would break; null where nothing does. Rows
 * inside of a range or of a whole column break nothing, and neither does what goes along with them.
 */
export function dependentsOf(live: BookReading, removal: Removal): Dependents | null {
  const { state } = live.inside;
  const going = goingOf(removal);
  if (!state.sheets.has(removal.sheet)) return null;
  const broken = new Collected(live);
  const smaller = new Collected(live);
  for (const { home, row, column, stored } of formulasLeft(state, going)) {
    if (home.id !== going.sheet && !stored.includes(`${going.sheet}.`)) continue;
    const fates = usesOf(stored, home.id).map((use) => fate(use, going, live));
    if (fates.includes('breaks')) broken.add(home.id, column, row);
    else if (going.part === 'column' && fates.includes('shrinks')) smaller.add(home.id, column, row);
  }
  const taken = new Collected(live);
  if (going.part === 'column') {
    for (const [id, column] of state.sheets.get(going.sheet)!.columns) {
      const by = takenOf(column)?.by;
      if (by !== undefined && going.ids.has(by) && !going.ids.has(id)) taken.add(going.sheet, id, null);
    }
  }
  const direct = [...broken.all, ...smaller.all, ...taken.all];
  if (direct.length === 0) return null;
  const further = furtherOf(direct, live, going);
  return {
    of: words(removal, live),
    formulas: broken.formulas,
    broken: broken.all,
    smaller: smaller.all,
    taken: taken.all,
    further: further.length,
    feedsPlan: [...direct, ...further].some(({ sheet, column }) => feedsPlan(live, sheet, column)),
  };
}

/** Formulas that use those, and so on, but for those and what goes itself. */
function furtherOf(direct: readonly { sheet: string; column: string }[], live: BookReading, going: Going) {
  const lines = formulaLines(live);
  const users = usersOf(lines, live);
  const nodeOf = ({ sheet, column }: { sheet: string; column: string }): string => `${sheet}/${column}`;
  const first = new Set(direct.map(nodeOf));
  const seen = new Set(lines.filter((line) => first.has(nodeOf(line))));
  const ahead = [...seen];
  const goes = ({ sheet, column }: { sheet: string; column: string }): boolean =>
    sheet === going.sheet && (going.part === 'sheet' || (going.part === 'column' && going.ids.has(column)));
  const further = [];
  for (let line = ahead.pop(); line !== undefined; line = ahead.pop()) {
    for (const user of users.get(line.key) ?? []) {
      if (seen.has(user) || goes(user)) continue;
      seen.add(user);
      ahead.push(user);
      further.push(user);
    }
  }
  return further;
}

/** Figures of one planning column that a removal would change. */
export interface ChangedFigures {
  readonly sheetTitle: string;
  readonly columnTitle: string;
  /** Rows that would show nothing, or an error, where they show a figure now. */
  readonly lost: number;
  /** Rows that would show another figure. */
  readonly other: number;
}

/**
 * Planning figures that are others in `after` than in `before`: the same book with a removal tried on it.
 * Rows that are only in one of the two do not count.
 */
export function changedFigures(before: BookReading, after: BookReading): ChangedFigures[] {
  const found: ChangedFigures[] = [];
  for (const { id: sheet, title: sheetTitle } of before.sheets()) {
    const there = new Set(after.rowIds(sheet));
    const rows = before.rowIds(sheet).filter((row) => there.has(row));
    for (const { id: column, title: columnTitle, role } of before.columns(sheet)) {
      if (role !== 'planning') continue;
      let [lost, other] = [0, 0];
      for (const row of rows) {
        const [was, is] = [before.value(sheet, row, column), after.value(sheet, row, column)];
        if (was === null || isCellError(was) || was === is) continue;
        if (is === null || isCellError(is)) lost++;
        else other++;
      }
      if (lost + other > 0) found.push({ sheetTitle, columnTitle, lost, other });
    }
  }
  return found;
}
