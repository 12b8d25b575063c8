import { html } from 'lit';
import { figuresInUse } from '../../../src/live/doings/figures-in-use.js';
import { postBatchCommand } from '../../../src/live/doings/post-batch.js';
import { yearToTurn } from '../../../src/live/doings/turn-year.js';
import { usualSupplies } from '../../../src/live/doings/usual-supplies.js';
import { withShownDays } from '../../../src/live/shown.js';
import { refuse } from '../../../src/problem.js';
import { phrase, say } from '../../../src/words/index.js';
import { icons } from '../../look/icons.js';
import { WEEK_ACTIONS } from '../../week/week-actions.js';
import { whatIf } from '../../what-if/what-if-action.js';
import type { ActionHost, SheetAction } from './action.js';
import { addRows } from './add-rows.js';

const NO_BATCH = refuse('no-row', phrase('No batch is chosen.'), phrase('Choose its row, then post it.'));

const postTheBatch: SheetAction = {
  label: phrase('Post the batch'),
  title: phrase('Put what was filled, less failed seals, on the Shelf as a lot'),
  icon: icons.jar,
  act({ live, row, say: tell }) {
    const posted = row === null ? NO_BATCH : postBatchCommand(live, row);
    const done = posted.ok ? live.apply(posted.value) : posted;
    if (row === null || !done.ok) {
      tell(done.ok ? null : done.problem);
      return;
    }
    const lot = String(live.value(live.sheetOfKind('batches')!, row, 'lot'));
    const count = live.value(live.sheetOfKind('shelf')!, lot, 'count');
    const number = typeof count === 'number' ? count : String(count);
    tell(say`On the Shelf: ${number} × ${withShownDays(live.lotLabel(lot))}. Undo takes it back.`);
  },
};

const shareTheGround: SheetAction = {
  label: phrase('Share the ground'),
  title: phrase('When the ground is too small: what each crop could have, and what is given up'),
  icon: icons.ground,
  act: ({ show }) =>
    show(async () => {
      await import('./ground-dialog.js');
      return html`<croft-ground-dialog></croft-ground-dialog>`;
    }),
};

const sowingCalendar: SheetAction = {
  label: phrase('Sowing calendar'),
  title: phrase('What to start, set out and sow, week by week, to print'),
  icon: icons.calendar,
  act: ({ show }) =>
    show(async () => {
      await import('./calendar-dialog.js');
      return html`<croft-calendar-dialog></croft-calendar-dialog>`;
    }),
};

const turnTheYear: SheetAction = {
  label: phrase('Turn the year'),
  title: phrase('Close the season: what it taught goes into Facts, and Harvest is emptied'),
  icon: icons.year,
  async act({ live, show, say: tell }) {
    const found = yearToTurn(live);
    if (!found.ok) {
      tell(found.problem);
      return;
    }
    await show(async () => {
      await import('./year-dialog.js');
      return html`<croft-year-dialog></croft-year-dialog>`;
    });
  },
};

const figuresAdded = (n: number): string =>
  n === 1 ? say`1 figure added. Undo takes them back.` : say`${n} figures added. Undo takes them back.`;

const itemsAdded = (n: number): string =>
  n === 1 ? say`1 item added. Undo takes them back.` : say`${n} items added. Undo takes them back.`;

const addFigures: SheetAction = {
  label: phrase('Add the figures in use'),
  title: phrase('A row for each published figure that the book’s crops and foods rest on, with its source'),
  icon: icons.addRow,
  firstStep: true,
  act: (host: ActionHost) =>
    addRows(host, figuresInUse(host.live), figuresAdded, {
      code: 'no-figures',
      message: phrase('No published figure is in use that is not here already.'),
      mend: phrase('Name crops in Beds, or in Foods, first.'),
    }),
};

const addSupplies: SheetAction = {
  label: phrase('Add the usual items'),
  title: phrase('Lids and rings, the jars and bags of your foods, and what recipes take'),
  icon: icons.addRow,
  firstStep: true,
  act: (host: ActionHost) =>
    addRows(host, usualSupplies(host.live), itemsAdded, {
      code: 'all-there',
      message: phrase('All the usual items are here already.'),
      mend: phrase('Write a row for anything else.'),
    }),
};

const takeAColumn: SheetAction = {
  label: phrase('Take a planning column'),
  title: phrase('Show figures of the plan on this sheet, beside the names of foods, dishes or plantings'),
  icon: icons.takeColumn,
  firstStep: true,
  act: ({ sheet, show }) =>
    show(async () => {
      await import('../../sheets/take-dialog.js');
      return html`<croft-take-dialog .sheet=${sheet}></croft-take-dialog>`;
    }),
};

/** What can be done on each kind of sheet, besides what every sheet has. A new action is one more line here. */
const ACTIONS: Readonly<Record<string, readonly SheetAction[]>> = {
  household: [turnTheYear, whatIf],
  ...WEEK_ACTIONS,
  foods: [...WEEK_ACTIONS.foods, whatIf],
  week: [...WEEK_ACTIONS.week, whatIf],
  beds: [shareTheGround, sowingCalendar, ...WEEK_ACTIONS.beds, whatIf],
  harvest: [turnTheYear],
  batches: [postTheBatch],
  supplies: [addSupplies],
  facts: [addFigures, turnTheYear],
  own: [takeAColumn],
};

export const actionsOf = (kind: string): readonly SheetAction[] => ACTIONS[kind] ?? [];
