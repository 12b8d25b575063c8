import type { LiveBook } from '../../src/live/live-book.js';

/**
 * Formulas worked out by ids, knowing nothing of the book's own way: sheets as lists of ids, formulas as
 * terms. What the property tests of references compare with.
 */
export type Part = 'row' | 'column';

export interface Corner {
  readonly row: string;
  readonly column: string;
}

/** One thing that a formula adds up. `from` and `to` say which; of a cell or a column only `from` counts. */
export interface Term {
  readonly kind: 'cell' | 'range' | 'whole column' | 'by name' | 'own row';
  /** Undefined: the formula's own sheet. */
  readonly sheet: string | undefined;
  readonly from: Corner;
  readonly to: Corner;
}

interface SheetModel {
  readonly rows: readonly string[];
  readonly columns: readonly string[];
  readonly cells: { readonly [place: string]: number | readonly Term[] };
  /** Formulas of whole columns, which fill what is blank. */
  readonly fills: { readonly [column: string]: readonly Term[] };
}

export type Model = { readonly [sheet: string]: SheetModel };

export function modelOf(live: LiveBook, sheets: readonly string[]): Model {
  return Object.fromEntries(
    sheets.map((id) => {
      const rows = [...live.rowIds(id)];
      const columns = live.columns(id).map((column) => column.id);
      const cells: Record<string, number> = {};
      for (const row of rows) {
        for (const column of columns) {
          const value = live.value(id, row, column);
          if (typeof value === 'number') cells[`${row}/${column}`] = value;
        }
      }
      return [id, { rows, columns, cells, fills: {} }];
    }),
  );
}

/** The formula in the form in which it is stored: all its terms added up, each times its number from 1 on. */
export function stored(terms: readonly Term[]): string {
  const each = terms.map(({ kind, sheet, from, to }, i) => {
    const s = sheet === undefined ? '' : `${sheet}.`;
    const text = {
      cell: `[${s}${from.column}@${from.row}]`,
      range: `SUM([${s}${from.column}@${from.row}]:[${s}${to.column}@${to.row}])`,
      'whole column': `SUM([${s}${from.column}@]:[${s}${from.column}@])`,
      'by name': `SUM([${s}${from.column}])`,
      'own row': `[${from.column}]`,
    }[kind];
    return `${text}*${i + 1}`;
  });
  return `=${each.join('+')}`;
}

const listOf = (sheet: SheetModel, part: Part) => (part === 'row' ? sheet.rows : sheet.columns);
const withList = (sheet: SheetModel, part: Part, list: readonly string[]): SheetModel =>
  part === 'row' ? { ...sheet, rows: list } : { ...sheet, columns: list };

/** The model after things are put (new ones) or moved before another, or to the end. */
export function moved(
  model: Model,
  id: string,
  part: Part,
  ids: readonly string[],
  before: string | null,
): Model {
  const sheet = model[id]!;
  const others = listOf(sheet, part).filter((each) => !ids.includes(each));
  const place = before === null ? others.length : others.indexOf(before);
  return {
    ...model,
    [id]: withList(sheet, part, [...others.slice(0, place), ...ids, ...others.slice(place)]),
  };
}

/** The model after things go: their cells go, and ranges that ended on one end on the nearest inside that stays. */
export function removed(model: Model, id: string, part: Part, ids: readonly string[]): Model {
  const list = listOf(model[id]!, part);
  const shrunk = (term: Term, home: string): Term => {
    if (term.kind !== 'range' || (term.sheet ?? home) !== id) return term;
    const [a, b] = [list.indexOf(term.from[part]), list.indexOf(term.to[part])];
    if (a < 0 || b < 0) return term;
    const step = a <= b ? 1 : -1;
    const inside: string[] = [];
    for (let i = a; i !== b + step; i += step) if (!ids.includes(list[i]!)) inside.push(list[i]!);
    if (inside.length === 0) return term;
    return {
      ...term,
      from: { ...term.from, [part]: inside[0]! },
      to: { ...term.to, [part]: inside.at(-1)! },
    };
  };
  const next: Record<string, SheetModel> = {};
  for (const [home, sheet] of Object.entries(model)) {
    const cells: Record<string, number | readonly Term[]> = {};
    for (const [place, content] of Object.entries(sheet.cells)) {
      const [row, column] = place.split('/') as [string, string];
      if (home === id && ids.includes(part === 'row' ? row : column)) continue;
      cells[place] = typeof content === 'number' ? content : content.map((term) => shrunk(term, home));
    }
    const fills: Record<string, readonly Term[]> = {};
    for (const [column, terms] of Object.entries(sheet.fills)) {
      if (home === id && part === 'column' && ids.includes(column)) continue;
      fills[column] = terms.map((term) => shrunk(term, home));
    }
    next[home] = { ...sheet, cells, fills };
  }
  next[id] = withList(
    next[id]!,
    part,
    list.filter((each) => !ids.includes(each)),
  );
  return next;
}

const contentOf = ({ cells, fills }: SheetModel, row: string, column: string) =>
  cells[`${row}/${column}`] ?? fills[column] ?? 0;

export const formulaCells = (model: Model): { sheet: string; row: string; column: string }[] =>
  Object.entries(model).flatMap(([sheet, of]) =>
    of.rows.flatMap((row) =>
      of.columns
        .filter((column) => typeof contentOf(of, row, column) !== 'number')
        .map((column) => ({ sheet, row, column })),
    ),
  );

/** What a cell comes to: a number, `#REF!`, or 'in a ring' where it depends on itself. */
export function worked(
  model: Model,
  sheet: string,
  row: string,
  column: string,
  above: readonly string[] = [],
): number | '#REF!' | 'in a ring' {
  const key = `${sheet}/${row}/${column}`;
  if (above.includes(key)) return 'in a ring';
  const content = contentOf(model[sheet]!, row, column);
  if (typeof content === 'number') return content;
  let sum = 0;
  let broken = false;
  let ring = false;
  for (const [i, term] of content.entries()) {
    for (const place of placesOf(term, model, sheet, row)) {
      const value = place === null ? '#REF!' : worked(model, place[0], place[1], place[2], [...above, key]);
      if (value === 'in a ring') ring = true;
      else if (value === '#REF!') broken = true;
      else sum += value * (i + 1);
    }
  }
  return ring ? 'in a ring' : broken ? '#REF!' : sum;
}

type Place = readonly [sheet: string, row: string, column: string];

function placesOf(
  { kind, sheet, from, to }: Term,
  model: Model,
  home: string,
  row: string,
): (Place | null)[] {
  const id = sheet ?? home;
  const { rows, columns } = model[id]!;
  if (!columns.includes(from.column)) return [null];
  if (kind === 'own row') return [[id, row, from.column]];
  if (kind === 'whole column' || kind === 'by name') return rows.map((each) => [id, each, from.column]);
  if (!rows.includes(from.row)) return [null];
  if (kind === 'cell') return [[id, from.row, from.column]];
  if (!columns.includes(to.column) || !rows.includes(to.row)) return [null];
  const between = (list: readonly string[], a: string, b: string) => {
    const [low, high] = [list.indexOf(a), list.indexOf(b)].sort((x, y) => x - y) as [number, number];
    return list.slice(low, high + 1);
  };
  return between(rows, from.row, to.row).flatMap((r) =>
    between(columns, from.column, to.column).map((c): Place => [id, r, c]),
  );
}
