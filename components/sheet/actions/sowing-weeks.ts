import type { LiveBook } from '../../../src/live/live-book.js';
import type { DayNumber } from '../../../src/planning/types.js';
import { counted } from '../../../src/words/index.js';
import { mondayOf } from '../../pictures/time-axis.js';
import { type SeasonRow, seasonRows } from '../../season/season-model.js';
import { readPlantings } from '../../season/season-read.js';
import { named } from '../../season/season-words.js';
import { shownNumber } from '../shown.js';

/** One thing to do. */
export interface CalendarLine {
  readonly name: string;
  readonly day: DayNumber;
  /** `48 seeds`, `12 plants`; '' where not known. */
  readonly more: string;
}

/** What begins in one week: to be started indoors or under cover, sown or planted in place, set out. */
export interface CalendarWeek {
  readonly monday: DayNumber;
  readonly start: readonly CalendarLine[];
  readonly sow: readonly CalendarLine[];
  readonly setOut: readonly CalendarLine[];
}

type Task = 'start' | 'sow' | 'setOut';

/** The weeks in which Beds wants something begun, in their order. What was begun already is left out. */
export function sowingWeeks(live: LiveBook): CalendarWeek[] {
  const weeks = new Map<DayNumber, Record<Task, CalendarLine[]>>();
  const add = (task: Task, day: DayNumber | null, row: SeasonRow, column: string): void => {
    if (day === null) return;
    const monday = mondayOf(day);
    const week = weeks.get(monday) ?? { start: [], sow: [], setOut: [] };
    weeks.set(monday, week);
    week[task].push({ name: named(row), day, more: count(live, row, column) });
  };
  for (const row of seasonRows(readPlantings(live))) {
    const covered = row.what === 'start indoors' || row.what === 'sow under cover';
    const column = row.what === 'plant' ? 'plants' : 'seeds';
    if (!row.done) add(covered ? 'start' : 'sow', row.begin, row, column);
    // A planting that was started stays to be set out.
    if (row.setOut !== null && row.setOut >= live.household.asOf) add('setOut', row.setOut, row, 'plants');
    else if (!row.done) add('setOut', row.setOut, row, 'plants');
  }
  const byDay = (a: CalendarLine, b: CalendarLine): number => a.day - b.day || a.name.localeCompare(b.name);
  return [...weeks]
    .sort(([a], [b]) => a - b)
    .map(([monday, { start, sow, setOut }]) => ({
      monday,
      start: start.sort(byDay),
      sow: sow.sort(byDay),
      setOut: setOut.sort(byDay),
    }));
}

function count(live: LiveBook, { cell }: SeasonRow, column: string): string {
  const value = cell ? live.value(cell.sheet, cell.row, column) : null;
  if (typeof value !== 'number' || value <= 0) return '';
  const shown = shownNumber(value, 0);
  return column === 'seeds' ? counted(value, shown, 'seed') : counted(value, shown, 'plant');
}
