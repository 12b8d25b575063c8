import { phrase } from '../../words/index.js';

/** What a column of a sheet kind holds, and so how a typed entry is read and shown. */
export type ColumnType = 'text' | 'number' | 'date' | 'month-day' | 'tick' | 'choice' | 'any';

/** Where the known values of a cell come from. `foods`, `lots` and `places` are of the book itself. */
export type ChoiceSource =
  | 'foods'
  | 'lots'
  | 'places'
  | 'draws'
  | 'containers'
  | 'measures'
  | 'ways'
  | 'purposes'
  | 'sources'
  | 'crops'
  | 'starts'
  | 'mouths'
  | 'plantings'
  | 'figures'
  | 'supplies'
  | 'dishes'
  | 'meals'
  | 'line sources';

/**
 * A column that belongs to a sheet kind, declared once: the grid, the help, the readers and the docs take
 * it from here.
 */
export interface ColumnDeclaration {
  readonly id: string;
  readonly title: string;
  /** `kept`: the person fills it in. `planning`: computed, never overwritten. */
  readonly role: 'kept' | 'planning';
  readonly type: ColumnType;
  readonly unit?: string;
  /** What it means, in a sentence. */
  readonly help: string;
  readonly choices?: ChoiceSource;
  /** True where values outside the choices are fine too (a place, a new food). */
  readonly open?: boolean;
  /** Least value of a number. */
  readonly min?: number;
  /** Hidden until the person shows it. */
  readonly hidden?: boolean;
  /** Digits after the point that are shown, at most. */
  readonly decimals?: number;
  /** Usual width in pixels. */
  readonly width?: number;
  /** For a figure with a range: the columns that hold its ends. */
  readonly range?: readonly [low: string, high: string];
}

export interface KindDeclaration {
  readonly kind: string;
  readonly title: string;
  /** What the sheet is for, in a sentence. */
  readonly help: string;
  /** What an empty sheet says: the first step to take. */
  readonly empty: string;
  /** What one row is called. */
  readonly row: string;
  readonly columns: readonly ColumnDeclaration[];
}

type PlanningPart = Omit<ColumnDeclaration, 'id' | 'role'>;

/** Planning columns from a record that must name every figure of `F`, in the order shown. */
export const planningColumns = <F>(parts: { readonly [K in keyof F]-?: PlanningPart }): ColumnDeclaration[] =>
  (Object.entries(parts) as [string, PlanningPart][]).map(([id, part]) => ({
    id,
    role: 'planning',
    ...part,
    title: phrase(part.title),
    help: phrase(part.help),
  }));

/** A kept column. */
export const kept = (
  id: string,
  title: string,
  type: ColumnType,
  help: string,
  more: Partial<ColumnDeclaration> = {},
): ColumnDeclaration => ({
  id,
  title: phrase(title),
  role: 'kept',
  type,
  help: phrase(help),
  ...more,
});
