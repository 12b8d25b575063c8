import type { ColumnDeclaration } from './kinds/column.js';
import { isObject, type PlainObject } from './plain-json.js';
import { takeableColumns } from './takeable.js';
import { type ColumnDoc, type Json, type Raw, SHEET_KINDS, type SheetKind } from './types.js';

/** What an own column may be said to hold; `any` takes whatever is typed. */
export const OWN_TYPES = ['any', 'text', 'number', 'date', 'tick', 'choice'] as const;
export type OwnType = (typeof OWN_TYPES)[number];

/** What stands under a column. `count` counts filled cells. */
export const SUMMARIES = ['sum', 'mean', 'count', 'least', 'most'] as const;
export type Summary = (typeof SUMMARIES)[number];

/** Colours for marking cells. Each has a light and a dark tone in the look. */
export const COLOURS = ['rose', 'amber', 'leaf', 'sky', 'plum', 'stone'] as const;
export type Colour = (typeof COLOURS)[number];

/** When a cell is marked by its column. Dates compare as days, text without case. */
export const CONDITIONS = [
  'above',
  'below',
  'between',
  'is',
  'is not',
  'contains',
  'before',
  'after',
  'within days',
  'blank',
  'filled',
  'double',
] as const;
export type Condition = (typeof CONDITIONS)[number];

/** One rule of a column: cells for which it holds take the colour; the first that holds counts. */
export interface Marking {
  readonly when: Condition;
  readonly colour: Colour;
  /** What is compared with; absent for `blank`, `filled` and `double`. With days, `today` is the day of the figures. */
  readonly value?: Raw;
  /** Upper end of `between`. */
  readonly to?: Raw;
}

/** Whether a rule compares with the day that it is, whichever that will be. */
export const isToday = (value: Raw | undefined): boolean =>
  typeof value === 'string' && /^\s*(?:today|heute)\s*$/i.test(value);

/** A planning column of a kind, shown on a sheet of the person's own. */
export interface TakenColumn {
  readonly kind: SheetKind;
  /** Id of the planning column, as declared by the kind. */
  readonly column: string;
  /** Column of this sheet that names the row: a food, a dish, a planting. */
  readonly by: string;
}

const among = <T extends string>(all: readonly T[], value: unknown): T | undefined =>
  all.find((each) => each === value);

const record = (value: unknown): PlainObject | undefined => (isObject(value) ? value : undefined);

/** Fields of a column as they stand in a file may be of a newer version or made by hand: what is not known counts as not said. */
export const ownTypeOf = (column: ColumnDoc | undefined): OwnType => among(OWN_TYPES, column?.type) ?? 'any';

export const summaryOf = (column: ColumnDoc | undefined): Summary | undefined =>
  among(SUMMARIES, column?.summary);

export const choicesListed = (column: ColumnDoc | undefined): readonly string[] =>
  Array.isArray(column?.choices)
    ? column.choices.filter((each): each is string => typeof each === 'string')
    : [];

export const markingsOf = (column: ColumnDoc | undefined): readonly Marking[] => {
  const listed: readonly Json[] = Array.isArray(column?.marks) ? (column.marks as readonly Json[]) : [];
  return listed.flatMap((each) => {
    const said = record(each);
    const when = among(CONDITIONS, said?.when);
    const colour = among(COLOURS, said?.colour);
    if (!when || !colour) return [];
    const raw = (value: unknown): Raw | undefined =>
      typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean'
        ? value
        : undefined;
    const [value, to] = [raw(said?.value), raw(said?.to)];
    return [{ when, colour, ...(value !== undefined && { value }), ...(to !== undefined && { to }) }];
  });
};

export const takenOf = (column: ColumnDoc | undefined): TakenColumn | undefined => {
  if (column?.plan === undefined) return undefined;
  const said = record(column.plan);
  const kind = among(SHEET_KINDS, said?.kind);
  const { column: id, by } = said ?? {};
  if (!kind || typeof id !== 'string' || typeof by !== 'string') return undefined;
  return takeableColumns(kind).some((each) => each.id === id) ? { kind, column: id, by } : undefined;
};

/** The declaration of the planning column that an own column shows, if it shows one. */
export const takenDeclaration = (column: ColumnDoc | undefined): ColumnDeclaration | undefined => {
  const taken = takenOf(column);
  return taken && takeableColumns(taken.kind).find(({ id }) => id === taken.column);
};

/** Row field that holds the person's note on a cell. */
export const noteField = (column: string): string => `note:${column}`;

/** Row field that holds the colour with which the person marked a cell. */
export const colourField = (column: string): string => `colour:${column}`;
