import {
  type CellAddress,
  type ColumnType,
  isCellError,
  type Raw,
  SETTINGS,
  type SettingDeclaration,
} from '../book/index.js';
import type { BookReading } from './book-reading.js';
import type { ColumnView } from './columns.js';
import { rowName } from './row-name.js';

/** Where a value stands that can be varied: among the household's settings, or in a cell that the person fills. */
export type VariedAt = { readonly setting: string } | CellAddress;

/** What kinds of value can be varied; words cannot. */
export type VariedType = Extract<ColumnType, 'number' | 'date' | 'month-day' | 'tick' | 'choice'>;

/** A value of the book that can be tried otherwise on a copy. */
export interface Varied {
  /** The same for the same place: `cushion`, or `foods / f01 / own_use`. */
  readonly key: string;
  readonly at: VariedAt;
  /** What it is called, as in `Cushion` or `Tomatoes, canned: Own use a week`. */
  readonly label: string;
  readonly help: string;
  readonly type: VariedType;
  /** Id of a unit or container, or a word; '' for none. */
  readonly unit: string;
  /** As the book has it; null when blank. Of a formula: what it gives. */
  readonly present: Raw | null;
  /** What the plan counts on while the value is blank: the usual one, or the figure that it replaces. */
  readonly instead: Raw | null;
  /** The cell holds a formula, which a number put into the book would replace. */
  readonly isFormula: boolean;
  /** Of a choice. */
  readonly options: readonly string[];
  readonly min: number | undefined;
  readonly max: number | undefined;
  readonly decimals: number | undefined;
}

const VARIED_TYPES: readonly string[] = ['number', 'date', 'month-day', 'tick', 'choice'];

/** Kept columns and the planning column whose figure counts while they are blank. */
const STANDS_IN: Readonly<Record<string, string>> = {
  'foods/own_use': 'use_per_week',
  'foods/own_target': 'to_put_up',
  'beds/own_yield': 'yield',
  'beds/plants': 'plants_wanted',
};

/** Settings that are facts of the house or of the person rather than of a plan are not varied by chance. */
const NOT_VARIED: ReadonlySet<string> = new Set(['measures']);

/** The household's settings that can be varied. */
export const variedSettings = (): readonly SettingDeclaration[] =>
  SETTINGS.filter(({ id, type }) => !NOT_VARIED.has(id) && VARIED_TYPES.includes(type));

export function settingVaried(live: BookReading, setting: SettingDeclaration): Varied {
  const { id, title, help, type, unit = '', options = [], usual, min, max } = setting;
  return {
    key: id,
    at: { setting: id },
    label: title,
    help,
    type: type as VariedType,
    unit,
    present: live.setting(id) ?? null,
    instead: usual ?? null,
    isFormula: false,
    options,
    min,
    max,
    decimals: undefined,
  };
}

/** True of a column whose cells can be varied: filled by the person, and no words. */
export const canVary = ({ role, type, taken, listed, declaration }: ColumnView): boolean =>
  role !== 'planning' &&
  taken === undefined &&
  VARIED_TYPES.includes(type) &&
  // Names of foods, crops and the like say what a row is, not how much of it.
  (type !== 'choice' || listed.length > 0 || declaration?.choices === 'containers');

export function cellVaried(live: BookReading, sheet: string, row: string, column: ColumnView): Varied {
  const { id, title, help, type, declaration } = column;
  const value = live.value(sheet, row, id);
  const kind = live.sheets().find((each) => each.id === sheet)?.kind;
  const figure = STANDS_IN[`${kind}/${id}`];
  const instead = figure === undefined ? null : live.value(sheet, row, figure);
  return {
    key: `${sheet} / ${row} / ${id}`,
    at: { sheet, row, column: id },
    label: `${rowName(live, sheet, row)}: ${title}`,
    help,
    type: type as VariedType,
    unit: unitOf(live, sheet, row, column, figure) ?? '',
    present: value === '' || (value !== null && isCellError(value)) ? null : value,
    instead: typeof instead === 'number' ? instead : kind === 'week' ? ofMeal(live, id) : null,
    isFormula: live.isFormula(sheet, row, id),
    options:
      type === 'choice' ? (live.choices(sheet, row, id) ?? []).map((choice) => String(choice.value)) : [],
    min: declaration?.min,
    max: undefined,
    decimals: declaration?.decimals,
  };
}

/** Kept amounts of Foods and of lots are in containers that the row names. */
function unitOf(
  live: BookReading,
  sheet: string,
  row: string,
  { id, unit, measure }: ColumnView,
  figure: string | undefined,
): string | undefined {
  if (unit ?? measure) return unit ?? measure;
  const kind = live.sheets().find((each) => each.id === sheet)?.kind;
  if (kind === 'foods' && ['own_use', 'fresh_use', 'own_target', 'carry'].includes(id))
    return live.unit(sheet, row, 'on_hand');
  if (kind === 'shelf' && id === 'count')
    return live.unit(sheet, row, 'left') ?? text(live, sheet, row, 'container');
  if (kind === 'beds' && id === 'plants') return 'plants';
  return figure && live.unit(sheet, row, figure);
}

const text = (live: BookReading, sheet: string, row: string, column: string): string | undefined => {
  const value = live.value(sheet, row, column);
  return typeof value === 'string' && value !== '' ? value : undefined;
};

/** A meal is for the whole table, in the amounts of its dish. */
const ofMeal = (live: BookReading, column: string): number | null =>
  column === 'shares' ? shares(live) : column === 'times' ? 1 : null;

const shares = (live: BookReading): number | null => {
  const people = live.sheets().find(({ kind }) => kind === 'household')?.id;
  if (people === undefined) return null;
  const all = live.rowIds(people).map((row) => live.value(people, row, 'share'));
  return all.reduce<number>((sum, each) => sum + (typeof each === 'number' ? each : 0), 0);
};
