import { type CellValue, type Colour, isCellError } from '../book/index.js';
import { fromIsoDay } from '../planning/dates.js';
import type { Problem } from '../problem.js';
import { containerWithId, roundSig, unitWithId } from '../units/index.js';
import { dateFormat, numberFormat, say, spoken } from '../words/index.js';
import { textShown } from './choice-words.js';
import type { ColumnView } from './columns.js';
import type { LiveBook } from './live-book.js';

/** A cell as words for a reader. */
export interface ShownCell {
  readonly text: string;
  /** Only where it differs from the column's own unit. */
  readonly unit: string;
  readonly kind: 'blank' | 'number' | 'date' | 'tick' | 'text' | 'error' | 'pending';
  /** Machine-readable date. */
  readonly iso?: string;
  /** Low and high of a figure with a range. */
  readonly range?: string;
  readonly problem?: Problem;
  /** Of a planning figure: `quiet` where there is nothing of it, `strong` where it asks for doing something. */
  readonly weight?: 'quiet' | 'strong';
  /** The colour that marks it. */
  readonly colour?: Colour;
  /** The person's note on it. */
  readonly note?: string;
}

/** Planning figures that ask for doing something unless they are 0. */
const ALARMING: ReadonlySet<string> = new Set(['at_risk']);

/** A day that there is: 2026-02-30 is shown as it was typed. */
const isIsoDay = (text: string): boolean => /^\d{4}-\d{2}-\d{2}$/.test(text) && fromIsoDay(text).ok;

export function shownNumber(value: number, decimals = 3): string {
  const format = numberFormat({ maximumFractionDigits: decimals });
  const text = format.format(roundSig(value));
  return text === '-0' ? '0' : text.replace('-', '−');
}

/** With just so many digits after the point, as the person chose for a column. */
export function fixedNumber(value: number, decimals: number): string {
  const format = numberFormat({
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  });
  return format
    .format(value + 0)
    .replace(/^-(?=[0.,]*$)/, '')
    .replace('-', '−');
}

export const shownDay = (iso: string): string =>
  dateFormat({ dateStyle: 'medium' }).format(new Date(`${iso}T00:00:00Z`));

/** ISO dates within a text as they are shown elsewhere. */
export const withShownDays = (text: string): string =>
  text.replace(/\b\d{4}-\d{2}-\d{2}\b/g, (iso) => (isIsoDay(iso) ? shownDay(iso) : iso));

export function shownMonthDay(text: string): string {
  return /^\d{2}-\d{2}$/.test(text)
    ? dateFormat({ month: 'short', day: 'numeric' }).format(new Date(`2024-${text}T00:00:00Z`))
    : text;
}

/** The word for a unit beside `value`: 'quart jars', '1 quart jar', 'lb'. */
export function unitWord(unit: string | undefined, value: number): string {
  if (!unit) return '';
  const known = containerWithId(unit) ?? unitWithId(unit);
  if (!known) return spoken(unit);
  return spoken(Math.abs(value) === 1 ? known.id : known.plural);
}

/** The unit of a whole column, for its header: a planning column's, or that in which the person measures. */
export const unitOfColumn = ({
  unit,
  measure,
  type,
}: Pick<ColumnView, 'unit' | 'measure' | 'type'>): string | undefined =>
  unit ?? (type === 'number' ? measure : undefined);

/** Years are not grouped by thousands: a column of them takes nothing smaller. */
const isYear = ({ declaration }: ColumnView): boolean =>
  declaration?.decimals === 0 && declaration.min === 1900;

function numberIn(value: number, column: ColumnView): string {
  if (isYear(column)) return String(value);
  if (column.role === 'own' && column.decimals !== undefined) return fixedNumber(value, column.decimals);
  return shownNumber(value, column.decimals);
}

function plain(value: CellValue, column: ColumnView): Omit<ShownCell, 'unit' | 'problem'> {
  if (value === null || value === '') return { text: '', kind: 'blank' };
  if (isCellError(value)) return { text: value.error, kind: 'error' };
  if (typeof value === 'number') return { text: numberIn(value, column), kind: 'number' };
  if (typeof value === 'boolean') {
    return column.type === 'tick' && !value
      ? { text: '', kind: 'blank' }
      : { text: value ? say`yes` : say`no`, kind: 'tick' };
  }
  if (isIsoDay(value) && column.type !== 'text') return { text: shownDay(value), kind: 'date', iso: value };
  if (column.type === 'month-day') return { text: shownMonthDay(value), kind: 'date' };
  return { text: textShown(value, column), kind: 'text' };
}

/** What is asked of a book to show one of its cells. */
export type Showing = Pick<
  LiveBook,
  'value' | 'problem' | 'isFormula' | 'unit' | 'lotLabel' | 'colourOf' | 'noteOf'
>;

/** What a reader sees in a cell. `pending`: formulas are not worked out yet. */
export function shownCell(
  live: Showing,
  sheet: string,
  row: string,
  column: ColumnView,
  pending: boolean,
): ShownCell {
  const value = live.value(sheet, row, column.id);
  const problem = live.problem(sheet, row, column.id);
  if (pending && value === null && live.isFormula(sheet, row, column.id)) {
    return { text: '…', unit: '', kind: 'pending' };
  }
  let shown = plain(value, column);
  if (shown.kind === 'text' && column.id === 'took_from') {
    shown = { ...shown, text: withShownDays(shown.text) };
  }
  if (shown.kind === 'text' && column.declaration?.choices === 'lots') {
    shown = { ...shown, text: withShownDays(live.lotLabel(shown.text)) };
  }
  const own = shown.kind === 'number' ? live.unit(sheet, row, column.id) : undefined;
  const unit = own === unitOfColumn(column) ? '' : unitWord(own, value as number);
  const range = shown.kind === 'number' ? rangeOf(live, sheet, row, column) : '';
  const weight = weightOf(column, shown);
  const colour = live.colourOf(sheet, row, column.id);
  const note = live.noteOf(sheet, row, column.id);
  return {
    ...shown,
    unit,
    ...(range && { range }),
    ...(problem && { problem }),
    ...(weight && { weight }),
    ...(colour && { colour }),
    ...(note && { note }),
  };
}

/** By the text, since what rounds to 0 is shown as 0. */
export function weightOf(
  { id, role, taken }: ColumnView,
  { kind, text }: Pick<ShownCell, 'kind' | 'text'>,
): ShownCell['weight'] {
  if (role !== 'planning' || kind !== 'number') return undefined;
  if (text === '0') return 'quiet';
  return ALARMING.has(taken?.column ?? id) ? 'strong' : undefined;
}

function rangeOf(live: Showing, sheet: string, row: string, column: ColumnView): string {
  if (!column.range) return '';
  const [low, high] = column.range.map((id) => live.value(sheet, row, id));
  if (typeof low !== 'number' || typeof high !== 'number' || low === high) return '';
  return `${shownNumber(low, column.decimals)}–${shownNumber(high, column.decimals)}`;
}
