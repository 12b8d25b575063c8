import type { LotFigures } from '../../planning/types.js';
import { type KindDeclaration, kept, planningColumns } from './column.js';

export const shelf: KindDeclaration = {
  kind: 'shelf',
  title: 'Shelf',
  help: 'What stands in the cellar, the freezer and the pantry: one row for each lot.',
  empty:
    'Nothing on the shelf yet. Start with one place, say the top cellar shelf, and write a row for each food and the day it was put up.',
  row: 'lot',
  columns: [
    kept('food', 'Food', 'choice', 'What is in the containers. A food of the Foods sheet, or a new one.', {
      choices: 'foods',
      open: true,
      width: 150,
    }),
    kept('way', 'Way kept', 'choice', 'How it is kept: canned, frozen, dried, cellared…', {
      choices: 'ways',
      width: 104,
    }),
    kept(
      'container',
      'Container',
      'choice',
      'What the lot is counted in: quart jars, freezer bags, pounds…',
      { choices: 'containers', width: 128 },
    ),
    kept(
      'count',
      'Put up',
      'number',
      'How many containers were put up on that day. What is drawn later does not change it.',
      { min: 0, width: 76, decimals: 2 },
    ),
    kept('put_up_on', 'Put up on', 'date', 'The day the lot was put up, bought or brought in.', {
      width: 108,
    }),
    kept('place', 'Kept where', 'choice', 'Where it stands, as you would tell someone sent to fetch it.', {
      choices: 'places',
      open: true,
      width: 130,
    }),
    ...planningColumns<LotFigures>({
      left: {
        title: 'Left',
        type: 'number',
        decimals: 2,
        width: 70,
        help: 'Containers put up, less what draws took from this lot. Never below 0.',
      },
      use_first: {
        title: 'Use first',
        type: 'number',
        decimals: 0,
        width: 74,
        help: 'The turn of this lot within its food, oldest first: 1 is the next to open.',
      },
      weeks_of_supply: {
        title: 'Weeks of supply',
        type: 'number',
        unit: 'weeks',
        decimals: 1,
        width: 88,
        help: 'How many weeks all lots of this food last at the usual use; the same on each of its lots.',
      },
      best_by: {
        title: 'Best quality by',
        type: 'date',
        width: 112,
        help: 'The date to which published guidance, or your own figure, expects best quality. It says nothing about safety.',
      },
      eaten_by: {
        title: 'Eaten by',
        type: 'date',
        width: 132,
        help: 'The day on which this lot would be finished at the usual use, oldest first.',
      },
      at_risk: {
        title: 'At risk',
        type: 'number',
        decimals: 1,
        width: 76,
        help: 'Containers of this lot that would still be there at its best-by date, at the usual use.',
      },
      days_left: {
        title: 'Days left',
        type: 'number',
        unit: 'days',
        decimals: 0,
        width: 74,
        help: 'Days from the as-of date to best quality by; below 0 when past.',
      },
      months_kept: {
        title: 'Months kept',
        type: 'number',
        unit: 'months',
        decimals: 0,
        width: 80,
        help: 'Whole months since it was put up.',
      },
      holds: {
        title: 'Holds',
        type: 'number',
        decimals: 1,
        width: 82,
        help: 'What is left, in quarts, or in pounds where the container is reckoned by weight.',
      },
      servings: {
        title: 'Servings',
        type: 'number',
        unit: 'servings',
        decimals: 0,
        width: 80,
        help: 'What is left, in servings of the size set in Foods (half a cup if none is).',
      },
    }),
    kept('note', 'Note', 'text', 'Anything worth remembering about this lot.', { width: 160 }),
    kept(
      'still_counting',
      'Still counting on it',
      'tick',
      'Ticked: you plan to eat this lot whatever its best-by date, so it counts in weeks of supply.',
      { width: 96 },
    ),
    kept(
      'own_best_by',
      'Own best-by',
      'date',
      'Your own best-quality date for this lot; it wins over the published period.',
      { hidden: true, width: 108 },
    ),
  ],
};
