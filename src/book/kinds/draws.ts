import type { DrawFigures } from '../../planning/types.js';
import { type KindDeclaration, kept, planningColumns } from './column.js';

export const draws: KindDeclaration = {
  kind: 'draws',
  title: 'Draws',
  help: 'What was taken from the shelf, and when: the only record from which stock and use are reckoned.',
  empty:
    'Nothing drawn yet. Each time something comes up from the cellar, write a row: the day, the food, how much.',
  row: 'draw',
  columns: [
    kept('date', 'Date', 'date', 'The day it was taken.', { width: 108 }),
    kept('food', 'Food', 'choice', 'What was taken.', { choices: 'foods', open: true, width: 150 }),
    kept('way', 'Way kept', 'choice', 'How it was kept: canned, frozen, dried…', {
      choices: 'ways',
      width: 104,
    }),
    kept(
      'amount',
      'Amount',
      'number',
      'How much, in the measure beside it. Below 0 only to correct an earlier draw.',
      { width: 80, decimals: 3 },
    ),
    kept(
      'container',
      'Measure',
      'choice',
      'Containers, or any measure: quart jars, cups, pounds. Blank: what the food is counted in.',
      { choices: 'measures', width: 128 },
    ),
    kept(
      'purpose',
      'For',
      'choice',
      'A dish, a count of the shelf, a gift, spoiled, or other. Gifts and spoiled food lower the stock but are not use.',
      { choices: 'purposes', width: 90 },
    ),
    ...planningColumns<DrawFigures>({
      in_counted: {
        title: 'In counted-in',
        type: 'number',
        decimals: 3,
        width: 96,
        help: 'The draw in the containers that the food is counted in.',
      },
      took_from: {
        title: 'Took from',
        type: 'text',
        width: 210,
        help: 'How much came from which lots, oldest first unless a lot was named.',
      },
      not_found: {
        title: 'Not found',
        type: 'number',
        decimals: 2,
        width: 84,
        help: 'The part of the draw that the shelf did not hold.',
      },
    }),
    kept('lot', 'From lot', 'choice', 'The lot it came from. Blank: the oldest first.', {
      choices: 'lots',
      width: 130,
    }),
    kept('corrects', 'Corrects', 'choice', 'The draw that this one corrects.', {
      choices: 'draws',
      hidden: true,
      width: 110,
    }),
    kept(
      'not_use',
      'Was not use',
      'tick',
      'On a count: ticked when the difference was not eaten (a miscount, say).',
      { hidden: true, width: 90 },
    ),
    kept('note', 'Note', 'text', 'Anything worth remembering.', { width: 160 }),
  ],
};
