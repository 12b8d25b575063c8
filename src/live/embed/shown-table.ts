import type { ColumnType } from '../../book/index.js';
import { toIsoDay } from '../../planning/dates.js';
import { AUTHORITY, cautionsOf } from '../cautions-of.js';
import type { ColumnView } from '../columns.js';
import type { LiveBook } from '../live-book.js';
import { shownCell, unitOfColumn, unitWord } from '../shown.js';

/** So many cautions stand in sight, the others one step away. */
export const CAUTIONS_IN_SIGHT = 3;

/** A cell of a table for reading: its text alone, or with what stands beside it. */
export type EmbedCell =
  | string
  | {
      readonly text: string;
      /** The word for its unit, where that is not the column's. */
      readonly unit?: string;
      /** Low and high of a figure with a range. */
      readonly range?: string;
      /** A date as machines read it. */
      readonly iso?: string;
    };

/** A column of a table for reading. */
export interface EmbedColumn {
  readonly id: string;
  readonly title: string;
  /** The word for its unit, unless the title says it. */
  readonly unit?: string;
  readonly role: ColumnView['role'];
  readonly type: ColumnType;
  /** Whether a reader may try numbers of their own in it. */
  readonly open?: true;
}

/** One sheet as a reader sees it, with nothing left to work out: plain data. */
export interface ShownTable {
  readonly sheet: string;
  readonly title: string;
  /** The day that the figures are for, as an ISO date. */
  readonly day: string;
  readonly columns: readonly EmbedColumn[];
  readonly rows: readonly { readonly id: string; readonly cells: readonly EmbedCell[] }[];
  /** Food-safety words that bear on the foods shown; the first few are to be in sight. */
  readonly cautions: readonly string[];
}

export interface TableOptions {
  /** What stands over the table; the sheet's title unless given. */
  readonly title?: string;
  /** Ids of the columns, in the order to show them; all that are not hidden unless given. */
  readonly columns?: readonly string[];
  /** Ids of the rows to show; all unless given. */
  readonly rows?: readonly string[];
  /** Ids of the columns in which readers may try their own; planning columns never are. */
  readonly open?: readonly string[];
}

/** A cell as readers see it. */
export function embedCell(live: LiveBook, sheet: string, row: string, column: ColumnView): EmbedCell {
  const { text, unit, range, iso } = shownCell(live, sheet, row, column, false);
  if (!unit && range === undefined && iso === undefined) return text;
  return { text, ...(unit && { unit }), ...(range && { range }), ...(iso && { iso }) };
}

function columnOf(view: ColumnView, open: readonly string[]): EmbedColumn {
  const { id, title, role, type } = view;
  const unit = unitWord(unitOfColumn(view), 2);
  const said = unit === '' || title.toLowerCase().includes(unit.toLowerCase());
  return {
    id,
    title,
    role,
    type,
    ...(!said && { unit }),
    ...(canOpen(view) && open.includes(id) && { open: true as const }),
  };
}

/** Whether readers may be let into a column: what is worked out stays shut. */
export const canOpen = ({ role, taken }: ColumnView): boolean => role !== 'planning' && taken === undefined;

/** Food-safety words that bear on what a sheet shows, most urgent first. */
export function cautionTexts(live: LiveBook, sheet: string): readonly string[] {
  const kind = live.sheets().find(({ id }) => id === sheet)?.kind ?? 'own';
  const cautions = cautionsOf(live, sheet, kind);
  const texts = cautions.map(({ text }) => text);
  if (texts.length > 0 && !cautions.some(({ id }) => id === 'tested-process'))
    texts.splice(CAUTIONS_IN_SIGHT - 1, 0, AUTHORITY);
  return texts;
}

/** One sheet of an open book as a table for reading. */
export function shownTable(
  live: LiveBook,
  sheet: string,
  { title, columns: wanted, rows, open = [] }: TableOptions = {},
): ShownTable {
  live.workOut();
  const found = live.sheets().find(({ id }) => id === sheet) ?? { title: '' };
  const all = live.columns(sheet);
  const columns = wanted
    ? wanted.flatMap((id) => all.find((column) => column.id === id) ?? [])
    : all.filter(({ hidden }) => !hidden);
  const shown = rows ? live.rowIds(sheet).filter((id) => rows.includes(id)) : live.rowIds(sheet);
  return {
    sheet,
    title: title || found.title,
    day: toIsoDay(live.household.asOf),
    columns: columns.map((column) => columnOf(column, open)),
    rows: shown.map((id) => ({ id, cells: columns.map((column) => embedCell(live, sheet, id, column)) })),
    cautions: cautionTexts(live, sheet),
  };
}
