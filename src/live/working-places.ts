import type { CellAddress, CellValue } from '../book/index.js';
import type { PlanValue, Working, WorkingInput } from '../planning/types.js';
import { phrase } from '../words/index.js';
import type { BookReading } from './book-reading.js';
import type { PlannedKind } from './lines.js';

/** What planners call a number that stands in a column of another name. */
const CALLED: Readonly<Record<string, readonly string[]>> = {
  'put up': ['count'],
  drawn: ['amount'],
  correction: ['amount'],
  'best quality by': ['best_by'],
  'use per week': ['own_use', 'use_per_week'],
  'next harvest begins': ['next_harvest'],
  'next supply begins': ['next_harvest'],
  'left at next harvest': ['left_at_harvest'],
  'to carry past it': ['carry'],
  over: ['short_or_over'],
  containers: ['jars', 'filled'],
  'plants planned in this row': ['plants'],
  'plants planned': ['plants'],
  'expected pounds': ['expected_pounds'],
  'own months of best quality': ['own_months'],
  'own target': ['own_target'],
  'fresh use per week': ['fresh_use'],
  'hours a load': ['hours_a_load'],
  'jars in a load of your canner': ['loads_of'],
  'seeds on hand': ['seeds_on_hand'],
  'this row': ['amount'],
  yield: ['yield', 'yield_low', 'yield_high', 'own_yield'],
  'fresh season': ['fresh_from'],
  serves: ['serves'],
  'the dish serves': ['serves'],
};

/** What is set for the whole household. */
const SETTINGS =
  /^(?:as-of date|last spring frost|first fall frost|altitude|shelf room|freezer room|cushion|at the table)/i;

const OF_HOUSEHOLD = phrase('a setting of the household');

const stem = (name: string): string =>
  name
    .split(/, | \(|: /)[0]!
    .trim()
    .toLowerCase();

/** The very number; of a season, the day on which it begins. */
const holds = (value: CellValue, given: PlanValue): boolean =>
  typeof value === 'number' && typeof given === 'number'
    ? Math.abs(value - given) <= 1e-9 * Math.max(1, Math.abs(given))
    : typeof value === 'string' &&
      value !== '' &&
      (value === given || given === `${value} to ${String(given).slice(-5)}`);

/**
 * Says of each number of a working in which cell it stands: one of the same row, or of the row of its food in
 * Foods, whose column is called so and that shows the very number. Where there is none, it is left as it is.
 */
export function withPlaces(
  live: BookReading,
  { sheet, row, column }: CellAddress,
  working: Working,
): Working {
  const rows = [{ sheet, row }, ...foodsRow(live, sheet, row)];
  const place = (given: WorkingInput): WorkingInput => {
    if (given.from) return given;
    if (SETTINGS.test(given.name) && given.source === undefined) return { ...given, source: OF_HOUSEHOLD };
    const name = stem(given.name);
    for (const at of rows) {
      for (const { id, title, declaration } of live.columns(at.sheet)) {
        if (at.sheet === sheet && id === column) continue;
        const called = [title, declaration?.title ?? ''].some((each) => each.toLowerCase() === name);
        if (!called && !CALLED[name]?.includes(id)) continue;
        if (holds(live.value(at.sheet, at.row, id), given.value))
          return { ...given, from: { ...at, column: id } };
      }
    }
    return given;
  };
  return { ...working, inputs: working.inputs.map(place) };
}

/** The row of Foods to which a row of Shelf, Draws or Foods belongs. */
function foodsRow(live: BookReading, sheet: string, row: string): { sheet: string; row: string }[] {
  const kind = live.inside.state.sheets.get(sheet)?.kind;
  if (kind !== 'shelf' && kind !== 'draws' && kind !== 'foods') return [];
  const foods = live.sheetOfKind('foods');
  const id = live.lineOf(kind satisfies PlannedKind, row)?.input.row?.id;
  return foods === undefined || id === undefined || foods === sheet ? [] : [{ sheet: foods, row: id }];
}
