import { html, type TemplateResult } from 'lit';
import { toIsoDay } from '../../src/planning/dates.js';
import { phrase } from '../../src/words/index.js';
import { icons } from '../look/icons.js';
import type { ActionHost, SheetAction } from '../sheet/actions/action.js';
import { weekIcons } from './week-icons.js';
import { weekOfRow } from './week-of.js';

/** An action that loads a dialog and shows it. */
const opening =
  (load: () => Promise<unknown>, show: (host: ActionHost) => TemplateResult) =>
  (host: ActionHost): Promise<void> =>
    host.show(async () => {
      await load();
      return show(host);
    });

const plan: SheetAction = {
  label: phrase('Plan meals'),
  title: phrase(
    'Rows for the meals of a week, the week before again, some weeks in turn, guests and days away',
  ),
  icon: icons.calendar,
  firstStep: true,
  act: opening(
    () => import('./plan-dialog.js'),
    ({ row }) => html`<croft-plan-dialog .row=${row}></croft-plan-dialog>`,
  ),
};

const suggest: SheetAction = {
  label: phrase('Suggest dishes'),
  title: phrase('Dishes for the open meals of the week, that eat what would not be eaten in time'),
  icon: weekIcons.pot,
  act: opening(
    () => import('./suggest-dialog.js'),
    ({ row }) => html`<croft-suggest-dialog .row=${row}></croft-suggest-dialog>`,
  ),
};

const lists: SheetAction = {
  label: phrase('Lists'),
  title: phrase('What to bring up, to buy and to do ahead for the week'),
  icon: weekIcons.list,
  act: opening(
    () => import('../lists/lists-dialog.js'),
    ({ live, row }) => html`<croft-lists-dialog week=${toIsoDay(weekOfRow(live, row))}></croft-lists-dialog>`,
  ),
};

const markDone: SheetAction = {
  label: phrase('Mark done'),
  title: phrase('Post what the chosen meal, its day or its week took from the shelf'),
  icon: icons.check,
  act: opening(
    () => import('./mark-done-dialog.js'),
    ({ row }) => html`<croft-mark-done-dialog .row=${row}></croft-mark-done-dialog>`,
  ),
  urged({ live, sheet, row }) {
    const problem = row === null ? undefined : live.problem(sheet, row, 'done');
    return problem?.code === 'done-not-posted' || problem?.code === 'never-marked' ? problem.message : null;
  },
};

const count: SheetAction = {
  label: phrase('Count the shelf'),
  title: phrase('Count again what stands there, one place after another; the differences are posted'),
  icon: weekIcons.count,
  act: opening(
    () => import('../count/count-dialog.js'),
    () => html`<croft-count-dialog></croft-count-dialog>`,
  ),
};

const take: SheetAction = {
  label: phrase('Take from the shelf'),
  title: phrase('Write down what comes up from the shelf, one after another'),
  icon: weekIcons.take,
  firstStep: true,
  act: opening(
    () => import('../taking/draw-dialog.js'),
    () => html`<croft-draw-dialog></croft-draw-dialog>`,
  ),
};

const labels: SheetAction = {
  label: phrase('Labels'),
  title: phrase('Labels to print for the chosen lot, or for all new ones'),
  icon: weekIcons.label,
  act: opening(
    () => import('../labels/labels-dialog.js'),
    ({ row }) => html`<croft-labels-dialog .row=${row}></croft-labels-dialog>`,
  ),
};

const wishes: SheetAction = {
  label: phrase('Wish list'),
  title: phrase('What ran out, what was wished for and what stayed: a word for the next year'),
  icon: weekIcons.wish,
  act: opening(
    () => import('./wish-dialog.js'),
    () => html`<croft-wish-dialog></croft-wish-dialog>`,
  ),
};

/** What the week's table does, by kind of sheet. */
export const WEEK_ACTIONS = {
  week: [plan, suggest, lists, markDone],
  shelf: [take, count, labels],
  draws: [take],
  foods: [wishes],
  beds: [wishes],
} as const satisfies Readonly<Record<string, readonly SheetAction[]>>;
