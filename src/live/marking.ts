import { type CellValue, isCellError, isToday, type Marking, type Raw } from '../book/index.js';
import { fromIsoDay, toIsoDay } from '../planning/dates.js';
import type { DayNumber } from '../planning/types.js';

/** What a rule may need to know besides the cell. */
export interface MarkingContext {
  readonly today: DayNumber;
  /** Does another cell of the column show the same? */
  readonly isDouble: (value: CellValue) => boolean;
  /** A text that a cell or a rule keeps, as the column shows it: words of ours are compared by what is read. */
  readonly shown?: (text: string) => string;
}

const isBlank = (value: CellValue | undefined): boolean =>
  value === null || value === undefined || (typeof value === 'string' && value.trim() === '');

const dayOf = (value: CellValue | undefined): DayNumber | null => {
  if (typeof value !== 'string') return null;
  const day = fromIsoDay(value.trim());
  return day.ok ? day.value : null;
};

const wordOf = (value: string): string => value.trim().toLowerCase();
const asKept = (text: string): string => text;

/** The form in which a column's cells are compared with one another; undefined for what is never double. */
export function sameKey(value: CellValue): string | undefined {
  if (isBlank(value) || isCellError(value) || typeof value === 'boolean') return undefined;
  return typeof value === 'number' ? `n${value}` : `t${wordOf(String(value))}`;
}

/** Below, at or above; null where the two are not alike: numbers compare with numbers, days with days. */
function compare(value: CellValue, with_: Raw | undefined): number | null {
  if (typeof value === 'number' && typeof with_ === 'number') return value - with_;
  const [a, b] = [dayOf(value), dayOf(with_)];
  return a !== null && b !== null ? a - b : null;
}

function equals(value: CellValue, with_: Raw | undefined, { shown = asKept }: MarkingContext): boolean {
  if (typeof value === 'string' && typeof with_ === 'string')
    return wordOf(value) === wordOf(with_) || wordOf(shown(value)) === wordOf(shown(with_));
  return value === with_;
}

/** A rule may keep a whole word of ours, or a part of what is read. */
function contains(value: CellValue, with_: Raw | undefined, { shown = asKept }: MarkingContext): boolean {
  if (typeof value !== 'string') return false;
  const [read, part] = [wordOf(shown(value)), String(with_ ?? '')];
  return read.includes(wordOf(part)) || read.includes(wordOf(shown(part)));
}

/** Whether it holds today and tomorrow not, or the other way round, though the cell stays as it is. */
export const hangsOnTheDay = ({ when, value, to }: Marking): boolean =>
  when === 'within days' || isToday(value) || isToday(to);

/** Whether a rule holds for what a cell shows. A blank cell is only ever blank, and an error is only filled. */
export function holds(
  { when, value: with_, to }: Marking,
  value: CellValue,
  context: MarkingContext,
): boolean {
  if (when === 'blank' || when === 'filled') return isBlank(value) === (when === 'blank');
  if (isBlank(value) || isCellError(value)) return false;
  /** A limit that moves on with the days, as the day that it is now. */
  const now = (limit: Raw | undefined): Raw | undefined =>
    isToday(limit) && dayOf(value) !== null ? toIsoDay(context.today) : limit;
  switch (when) {
    case 'above':
      return (compare(value, with_) ?? 0) > 0;
    case 'below':
      return (compare(value, with_) ?? 0) < 0;
    case 'between': {
      const [from, end] = [compare(value, now(with_)), compare(value, now(to))];
      if (from === null || end === null) return false;
      // Ends written the wrong way round mean the same span.
      return (from >= 0 && end <= 0) || (from <= 0 && end >= 0);
    }
    case 'is':
      return equals(value, now(with_), context);
    case 'is not':
      return !equals(value, now(with_), context);
    case 'contains':
      return contains(value, with_, context);
    case 'before':
    case 'after': {
      const [day, other] = [dayOf(value), dayOf(now(with_))];
      return day !== null && other !== null && (when === 'before' ? day < other : day > other);
    }
    case 'within days': {
      const day = dayOf(value);
      const ahead = typeof with_ === 'number' ? with_ : Number.NaN;
      return day !== null && day >= context.today && day <= context.today + ahead;
    }
    case 'double':
      return context.isDouble(value);
  }
}
