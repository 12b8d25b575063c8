import type { Command } from '../../src/book/index.js';
import {
  atTableCommand,
  copyWeekCommand,
  openMealsCommand,
  rotateCommand,
} from '../../src/live/doings/plan-meals.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { dayOf } from '../../src/live/week-stage.js';
import { shortDay } from '../../src/planning/day-words.js';
import type { DayNumber } from '../../src/planning/types.js';
import { type Result, refuse } from '../../src/problem.js';
import { counted, phrase, say } from '../../src/words/index.js';

/** What can be done to plan a week without writing each row. */
export const TASKS = [
  ['open', phrase('Rows for its meals')],
  ['copy', phrase('The week before, again')],
  ['rotate', phrase('Some weeks, in turn')],
  ['table', phrase('Guests, and days away')],
] as const;
export type PlanTask = (typeof TASKS)[number][0];

/** All that the fields of the plan dialog hold; each task reads its own. */
export interface PlanChoices {
  readonly task: PlanTask;
  /** Monday of the week that is planned. */
  readonly monday: DayNumber;
  readonly meals: readonly string[];
  readonly looseWeekends: boolean;
  readonly keepShares: boolean;
  /** Monday of the first week that is repeated, and how many weeks, how often. */
  readonly patternFrom: DayNumber;
  readonly weeks: number;
  readonly times: number;
  readonly from: DayNumber;
  readonly to: DayNumber;
  readonly change: number | 'all away';
}

/** The one command that these choices come to. */
export function planCommand(live: LiveBook, choices: PlanChoices): Result<Command> {
  const { monday, meals, looseWeekends, keepShares } = choices;
  const options = { looseWeekends, keepShares };
  switch (choices.task) {
    case 'open':
      return meals.length === 0 ? NO_MEALS : openMealsCommand(live, monday, monday + 6, meals);
    case 'copy':
      return copyWeekCommand(live, monday, options);
    case 'rotate': {
      const { patternFrom, weeks, times } = choices;
      return rotateCommand(live, { from: patternFrom, weeks, to: monday, times }, options);
    }
    case 'table': {
      const { from, to, change } = choices;
      if (meals.length === 0) return NO_MEALS;
      if (from > to)
        return refuse('from-after-to', say`The last day lies before the first.`, say`Change one of them.`);
      if (change === 0)
        return refuse('no-change', say`Nobody comes and nobody is away.`, say`Write how many.`);
      return atTableCommand(live, { from, to, meals, change });
    }
  }
}

const NO_MEALS = refuse('no-meals', phrase('No meal is ticked.'), phrase('Tick at least one.'));

/** What a command will write, in words, before it does. */
export function inAdvance(live: LiveBook, command: Command): string {
  if (command.do === 'set cells') {
    const n = command.cells.length;
    const skipped = command.cells.filter(({ column }) => column === 'skipped').length;
    const changed = n - skipped;
    const words = [
      changed > 0 ? say`${meals(changed)} with other shares at the table` : '',
      skipped > 0 ? say`${meals(skipped)} skipped` : '',
    ].filter(Boolean);
    return say`${words.join(', ')}. The whole table is ${live.household.shares}.`;
  }
  if (command.do !== 'insert rows') return '';
  const days = command.rows.flatMap(({ cells }) => {
    const date = cells?.date;
    return (typeof date === 'string' ? dayOf(date) : null) ?? [];
  });
  const [first, last] = [Math.min(...days), Math.max(...days)];
  const dishes = command.rows.filter(({ cells }) => cells?.dish).length;
  const open = command.rows.length - dishes;
  const which =
    open === 0 ? '' : dishes === 0 ? say`, without a dish yet` : say`, ${open} of them without a dish`;
  const span = first === last ? shortDay(first) : say`${shortDay(first)} to ${shortDay(last)}`;
  return say`Adds ${meals(command.rows.length)}${which}: ${span}.`;
}

const meals = (n: number): string => counted(n, String(n), 'meal');
