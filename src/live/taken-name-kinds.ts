import { type CellValue, isCellError, KINDS, type NamedKind } from '../book/index.js';
import { wordsOf } from '../facts/names.js';
import { cropKey } from '../planning/garden/index.js';
import { WAYS_KEPT } from '../planning/types.js';
import { inEnglish } from '../words/index.js';
import { foodKey } from './food-key.js';
import { withWay } from './food-with-way.js';
import { lotLabel } from './notes.js';
import { KindNames, type NamedRow } from './taken-names.js';

type Cell = (column: string) => CellValue;
type Name = Omit<NamedRow, 'row' | 'order'>;

/** What one row of a kind is called; undefined where it has no name yet. */
type Namer = (row: string, text: (column: string) => string, cell: Cell) => Name | undefined;

const idKey = (id: string): string => `id:${id.trim()}`;
const joined = (...parts: readonly string[]): string => parts.filter((part) => part !== '').join(', ');
/** A way that there is not is none, as for the planners. */
const lineOf = (food: string, way: string): string =>
  `${foodKey(food)}|${WAYS_KEPT.find((each) => each === way.toLowerCase()) ?? ''}`;

const lineAsked = (text: string): string[] => {
  const split = withWay(text);
  return [foodKey(text), ...(split ? [lineOf(split.food, split.way)] : [])];
};

const called = (short: string, full: string, keys: readonly string[]): Name | undefined =>
  short === '' ? undefined : { short, full, keys };

const NAMERS: { readonly [K in NamedKind]: Namer } = {
  foods: (_row, text) => {
    const [food, way] = [text('food'), text('way')];
    const name = called(food, joined(food, way), [lineOf(food, way), foodKey(food)]);
    return name && WAYS_KEPT.some((each) => each === way) ? { ...name, way } : name;
  },
  shelf: (row, text, cell) => {
    const [food, way] = [text('food'), text('way')];
    // What a cell says is kept, so it is the same in every language.
    const label = inEnglish(() => lotLabel(cell, row));
    return called(food, label, [idKey(row), wordsOf(label), lineOf(food, way), foodKey(food)]);
  },
  dishes: (_row, text) => called(text('dish'), text('dish'), [foodKey(text('dish'))]),
  beds: (row, text) => {
    const [crop, variety, sown] = [text('crop'), text('variety'), text('sown_on')];
    const full = joined(crop, variety, sown);
    const keys = [idKey(row), wordsOf(full), wordsOf(joined(crop, variety)), `crop:${cropKey(crop) ?? ''}`];
    return called(crop, full, keys);
  },
  supplies: (_row, text) => {
    const [item, used] = [text('item'), text('used_for')];
    return called(item, joined(item, used), [foodKey(joined(item, used)), foodKey(item)]);
  },
  household: (_row, text) => called(text('name'), text('name'), [wordsOf(text('name'))]),
};

/** The forms in which a text may call a row; those that say least of which one is meant come first only where that is enough. */
const ASKED: { readonly [K in NamedKind]: (text: string) => readonly string[] } = {
  foods: lineAsked,
  shelf: (text) => [idKey(text), wordsOf(text), ...lineAsked(text)],
  dishes: (text) => [foodKey(text)],
  beds: (text) => [idKey(text), wordsOf(text), `crop:${cropKey(text) ?? ''}`],
  supplies: (text) => [foodKey(text)],
  household: (text) => [wordsOf(text)],
};

/** What a row of a kind is called; undefined where it has no name yet. */
export function namedRow(kind: NamedKind, row: string, order: string, cell: Cell): NamedRow | undefined {
  const text = (column: string): string => {
    const value = cell(column);
    return value === null || isCellError(value) ? '' : String(value).trim();
  };
  const name = NAMERS[kind](row, text, cell);
  return name && { row, order, ...name };
}

/** The forms in which a text may call a row of a kind. */
export const askedBy = (kind: NamedKind, text: string): readonly string[] => ASKED[kind](text);

/** The names of a kind's rows, given in their order. */
export function namesFrom(
  kind: NamedKind,
  title: string | undefined,
  inOrder: readonly NamedRow[],
  asked: (text: string) => readonly string[],
): KindNames {
  const first = new Map<string, NamedRow>();
  if (isOncePer(kind))
    for (const named of inOrder) if (!first.has(named.keys[0]!)) first.set(named.keys[0]!, named);
  const rows = isOncePer(kind) ? [...first.values()] : inOrder;
  return new KindNames(title ?? KINDS[kind].title, kind === 'foods' ? planned(rows) : rows, asked);
}

/** Of rows for one food line, and of the rows of a dish, the first counts. */
const isOncePer = (kind: NamedKind): boolean => kind === 'foods' || kind === 'dishes';

/** Foods rows without a way kept are planned for nothing: such a row is named only where its food has no other. */
function planned(rows: readonly NamedRow[]): NamedRow[] {
  const withWays = new Set(rows.filter(({ keys }) => !keys[0]!.endsWith('|')).map(({ keys }) => keys[1]!));
  return rows.filter(({ keys }) => !keys[0]!.endsWith('|') || !withWays.has(keys[1]!));
}
