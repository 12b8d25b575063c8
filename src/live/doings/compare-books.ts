import {
  type BookDoc,
  type CellValue,
  type Raw,
  type RowDoc,
  sameJson,
  settingOf,
  titleOfSheet,
} from '../../book/index.js';
import { say } from '../../words/index.js';
import type { BookReading } from '../book-reading.js';
import type { ColumnView } from '../columns.js';
import { rowName } from '../row-name.js';
import { type ColumnDifference, compareColumns } from './compare-columns.js';
import { Sizes, sameValue } from './difference-size.js';

/** A cell that a person fills, and what it holds in one book and the other; null where it is blank. */
export interface EntryDifference {
  readonly column: ColumnView;
  /** A note or a colour on the cell, not the cell itself. */
  readonly about?: 'note' | 'colour';
  /** As typed: formulas as text that begins with `=`. */
  readonly was: Raw | null;
  readonly is: Raw | null;
}

/** A figure that is worked out, in one book and the other. */
export interface FigureDifference {
  readonly column: ColumnView;
  readonly was: CellValue;
  readonly is: CellValue;
  readonly wasUnit: string | undefined;
  readonly isUnit: string | undefined;
  /** How much it is, in what is usual for the column (1: as much as its middle figure; of dates: a month). */
  readonly size: number;
}

export interface RowDifference {
  readonly row: string;
  /** What the row is: its food, lot or date. */
  readonly called: string;
  readonly what: 'added' | 'removed' | 'changed';
  readonly entries: readonly EntryDifference[];
  readonly figures: readonly FigureDifference[];
}

export interface SheetDifference {
  readonly sheet: string;
  readonly title: string;
  readonly what: 'added' | 'removed' | 'changed';
  readonly columns: readonly ColumnDifference[];
  /** Those whose figures differ most come first. */
  readonly rows: readonly RowDifference[];
}

export interface SettingDifference {
  readonly setting: string;
  readonly title: string;
  readonly unit: string | undefined;
  readonly was: Raw | null;
  readonly is: Raw | null;
}

export interface BookComparison {
  /** Titles, where they differ. */
  readonly title: { readonly was: string; readonly is: string } | null;
  readonly settings: readonly SettingDifference[];
  /** Sheets in which something differs; those whose figures differ most come first. */
  readonly sheets: readonly SheetDifference[];
}

const SLICE = 20;

/**
 * Compares two open books, entry by entry and figure by figure. A generator, so that a page can draw between
 * slices: it yields the part done, from 0 to 1, and returns the comparison. Both books should be open for the
 * same day, and with the formula engine where they have formulas of their own.
 */
export function* compareBooks(before: BookReading, after: BookReading): Generator<number, BookComparison> {
  const [was, is] = [before.toJSON(), after.toJSON()];
  const ids = [...new Set([...after.sheets(), ...before.sheets()].map(({ id }) => id))];
  const all = ids.reduce((sum, id) => sum + Math.max(rows(was, id).size, rows(is, id).size), 1);
  let done = 0;
  const sheets: SheetDifference[] = [];
  for (const sheet of ids) {
    const slices = compareSheet(sheet, [before, was], [after, is]);
    for (;;) {
      const step = slices.next();
      if (step.done) {
        if (step.value) sheets.push(step.value);
        break;
      }
      done += step.value;
      yield Math.min(done / all, 1);
    }
  }
  const weight = ({ rows: of }: SheetDifference) => (of[0] ? weightOf(of[0]) : 0);
  return {
    title: was.title === is.title ? null : { was: was.title, is: is.title },
    settings: settings(was, is),
    sheets: sheets.sort((a, b) => weight(b) - weight(a)),
  };
}

type Opened = readonly [BookReading, BookDoc];
const rows = (doc: BookDoc, sheet: string): ReadonlyMap<string, RowDoc> =>
  new Map(Object.entries(doc.sheets[sheet]?.rows ?? {}));
const titleOf = ({ sheets }: BookDoc, sheet: string): string | undefined =>
  sheets[sheet] && titleOfSheet(sheets[sheet]);

function* compareSheet(
  sheet: string,
  [before, was]: Opened,
  [after, is]: Opened,
): Generator<number, SheetDifference | undefined> {
  const [old, now] = [rows(was, sheet), rows(is, sheet)];
  const [wasTitle, isTitle] = [titleOf(was, sheet), titleOf(is, sheet)];
  const columns = [...after.columns(sheet)];
  for (const each of before.columns(sheet)) if (!columns.some(({ id }) => id === each.id)) columns.push(each);
  const sizes = new Sizes();
  const found: RowDifference[] = [];
  const ids = [...new Set([...now.keys(), ...old.keys()])];
  for (const [i, row] of ids.entries()) {
    if (i % SLICE === SLICE - 1) yield SLICE;
    const [left, right] = [old.get(row), now.get(row)];
    const entries = entriesOf(columns, [before, left], [after, right], sheet, row);
    const figures: FigureDifference[] = [];
    if (left && right)
      for (const column of columns) {
        if (column.role !== 'planning' && column.formula === undefined) continue;
        const [a, b] = [before.value(sheet, row, column.id), after.value(sheet, row, column.id)];
        sizes.note(column.id, a, b);
        if (sameValue(a, b)) continue;
        const [wasUnit, isUnit] = [before.unit(sheet, row, column.id), after.unit(sheet, row, column.id)];
        figures.push({ column, was: a, is: b, wasUnit, isUnit, size: 0 });
      }
    if (left && right && entries.length === 0 && figures.length === 0) continue;
    const what = !left ? 'added' : !right ? 'removed' : 'changed';
    found.push({ row, called: rowName(right ? after : before, sheet, row), what, entries, figures });
  }
  const changed = compareColumns(before.columns(sheet), after.columns(sheet));
  const what = wasTitle === undefined ? 'added' : isTitle === undefined ? 'removed' : 'changed';
  if (found.length + changed.length === 0 && wasTitle === isTitle) return undefined;
  const sized = found.map((each) => ({
    ...each,
    figures: each.figures
      .map((figure) => ({ ...figure, size: sizes.of(figure.column.id, figure.was, figure.is) }))
      .sort((a, b) => b.size - a.size),
  }));
  return {
    sheet,
    title: isTitle ?? wasTitle ?? '',
    what,
    columns:
      wasTitle !== undefined && isTitle !== undefined && wasTitle !== isTitle
        ? [{ title: isTitle, what: 'changed', words: say`the sheet was called “${wasTitle}”` }, ...changed]
        : changed,
    rows: sized.sort((a, b) => weightOf(b) - weightOf(a)),
  };
}

const weightOf = ({ figures }: RowDifference): number => figures[0]?.size ?? 0;

function entriesOf(
  columns: readonly ColumnView[],
  [before, left]: readonly [BookReading, RowDoc | undefined],
  [after, right]: readonly [BookReading, RowDoc | undefined],
  sheet: string,
  row: string,
): EntryDifference[] {
  const found: EntryDifference[] = [];
  for (const column of columns) {
    const { id } = column;
    if (column.role !== 'planning' && own(left, id) !== own(right, id))
      found.push({
        column,
        was: left ? before.typed(sheet, row, id) : null,
        is: right ? after.typed(sheet, row, id) : null,
      });
    for (const about of ['note', 'colour'] as const) {
      const [a, b] = [left?.[`${about}:${id}`], right?.[`${about}:${id}`]];
      if (!sameJson(a, b)) found.push({ column, about, was: (a as Raw) ?? null, is: (b as Raw) ?? null });
    }
  }
  return found;
}

const own = (row: RowDoc | undefined, column: string): Raw | undefined =>
  row && Object.hasOwn(row.cells, column) ? row.cells[column] : undefined;

function settings(was: BookDoc, is: BookDoc): SettingDifference[] {
  const ids = [...new Set([...Object.keys(was.settings), ...Object.keys(is.settings)])];
  return ids.flatMap((setting) => {
    const [a, b] = [was.settings[setting] ?? null, is.settings[setting] ?? null];
    if (a === b) return [];
    const declared = settingOf(setting);
    return [{ setting, title: declared?.title ?? setting, unit: declared?.unit, was: a, is: b }];
  });
}
