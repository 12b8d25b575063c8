import type { Command } from '../../book/index.js';
import { type MarkDone, markDone, type WhichMeals } from '../../planning/week/index.js';
import { ok, type Result, refuse } from '../../problem.js';
import type { BookReading } from '../book-reading.js';

/** What marking meals done would post, and the one command that does it: all draws or none, one step of undo. */
export interface MealsToMark {
  readonly marked: MarkDone;
  readonly command: Command;
}

/** Marks meals done by their rows, or by a span of days. Meals marked before post nothing again. */
export function mealsToMark(live: BookReading, which: WhichMeals): Result<MealsToMark> {
  const [week, draws] = [live.sheetOfKind('week'), live.sheetOfKind('draws')];
  const { weekPlans } = live;
  if (!week || !draws || !weekPlans)
    return refuse('no-week', 'The book has no Week.', 'Open it with this version first.');
  const marked = markDone(weekPlans.week, which, new Set(live.rowIds(draws)));
  if (marked.draws.length === 0 && marked.tick.length === 0) {
    const [first] = marked.left;
    return first
      ? { ok: false, problem: { ...first.problem, where: { sheet: week, row: first.meal } } }
      : refuse('nothing-to-mark', marked.said, 'Choose a meal with a dish that is not marked yet.', {
          sheet: week,
        });
  }
  const rows = marked.draws.map(({ id, cells }) => ({ id, cells: { ...cells } }));
  const ticks = marked.tick.map((row) => ({ row, column: 'done', typed: true }));
  return ok({
    marked,
    command: {
      do: 'all',
      of: [
        { do: 'insert rows', sheet: draws, before: null, rows },
        { do: 'set cells', sheet: week, cells: ticks },
      ],
    },
  });
}
