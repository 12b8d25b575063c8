import { type CellValue, isCellError, KINDS, type NamedKind, type SheetState } from '../book/index.js';
import { wordsOf } from '../facts/names.js';
import { cropKey } from '../planning/garden/index.js';
import { WAYS_KEPT } from '../planning/types.js';
import { foodKey } from './food-key.js';
import { lotLabel } from './notes.js';
import { KindNames, type NamedRow, withWay } from './taken-names.js';

type Cell = (row: string, column: string) => CellValue;

/** What one row of a kind is called; undefined where it has no name yet. */
type Namer = (row: string, text: (column: string) => string, cell: Cell) => NamedRow | undefined;

const idKey = (id: string): string => `id:${id.trim()}`;
const joined = (...parts: readonly string[]): string => parts.filter((part) => part !== '').join(', ');
/** A way that there is not is none, as for the planners. */
const lineOf = (food: string, way: string): string =>
  `${foodKey(food)}|${WAYS_KEPT.find((each) => each === way.toLowerCase()) ?? ''}`;

const lineAsked = (text: string): string[] => {
  const split = withWay(text);
  return [foodKey(text), ...(split ? [lineOf(split.food, split.way)] : [])];
};

const labelled = (row: string, short: string, full: string, keys: readonly string[]): NamedRow | undefined =>
  short === '' ? undefined : { row, short, full, keys };

const NAMERS: { readonly [K in NamedKind]: Namer } = {
  foods: (row, text) => {
    const [food, way] = [text('food'), text('way')];
    return labelled(row, food, joined(food, way), [lineOf(food, way), foodKey(food)]);
  },
  shelf: (row, text, cell) => {
    const [food, way] = [text('food'), text('way')];
    const label = lotLabel((column) => cell(row, column), row);
    return labelled(row, food, label, [idKey(row), wordsOf(label), lineOf(food, way), foodKey(food)]);
  },
  dishes: (row, text) => labelled(row, text('dish'), text('dish'), [foodKey(text('dish'))]),
  beds: (row, text) => {
    const [crop, variety, sown] = [text('crop'), text('variety'), text('sown_on')];
    const full = joined(crop, variety, sown);
    const keys = [idKey(row), wordsOf(full), wordsOf(joined(crop, variety)), `crop:${cropKey(crop) ?? ''}`];
    return labelled(row, crop, full, keys);
  },
  supplies: (row, text) => {
    const [item, used] = [text('item'), text('used_for')];
    return labelled(row, item, joined(item, used), [foodKey(joined(item, used)), foodKey(item)]);
  },
  household: (row, text) => labelled(row, text('name'), text('name'), [wordsOf(text('name'))]),
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

/** The names of a kind's rows as the book stands. `sheet` is the one of that kind that counts. */
export function namesOf(kind: NamedKind, sheet: SheetState | undefined, cell: Cell): KindNames {
  const rows: NamedRow[] = [];
  const taken = new Set<string>();
  for (const row of sheet?.rowOrder.ids ?? []) {
    const text = (column: string): string => {
      const value = cell(row, column);
      return value === null || isCellError(value) ? '' : String(value).trim();
    };
    const named = NAMERS[kind](row, text, cell);
    if (!named || (isOncePer(kind) && taken.has(named.keys[0]!))) continue;
    taken.add(named.keys[0]!);
    rows.push(named);
  }
  return new KindNames(
    kind,
    sheet?.title ?? KINDS[kind].title,
    kind === 'foods' ? planned(rows) : rows,
    ASKED[kind],
  );
}

/** Of rows for one food line, and of the rows of a dish, the first counts. */
const isOncePer = (kind: NamedKind): boolean => kind === 'foods' || kind === 'dishes';

/** Foods rows without a way kept are planned for nothing: such a row is named only where its food has no other. */
function planned(rows: readonly NamedRow[]): NamedRow[] {
  const withWays = new Set(rows.filter(({ keys }) => !keys[0]!.endsWith('|')).map(({ keys }) => keys[1]!));
  return rows.filter(({ keys }) => !keys[0]!.endsWith('|') || !withWays.has(keys[1]!));
}
