import type { WeekFigures } from '../../planning/week/types.js';
import { type KindDeclaration, kept, planningColumns } from './column.js';

export const week: KindDeclaration = {
  kind: 'week',
  title: 'Week',
  help: 'The meals, one row each. From them come the lists to bring up, to buy and to do ahead; marked done, they post their draws.',
  empty:
    'No meals yet. Write a row for each meal of the week: the day, which meal, and a dish. Leave the dish open to have one suggested.',
  row: 'meal',
  columns: [
    kept('date', 'Date', 'date', 'The day of the meal.', { width: 108 }),
    kept('meal', 'Meal', 'choice', 'Breakfast, midday, snack, supper, or your own word.', {
      choices: 'meals',
      open: true,
      width: 96,
    }),
    kept('dish', 'Dish', 'choice', 'A dish of the Dishes sheet. Blank: an open meal.', {
      choices: 'dishes',
      open: true,
      width: 170,
    }),
    kept(
      'shares',
      'Shares',
      'number',
      'Shares at the table for this meal, where guests come or someone is away. Blank: the whole table.',
      { min: 0, decimals: 2, width: 76 },
    ),
    kept(
      'times',
      'Amount ×',
      'number',
      'What the amounts are multiplied by, where more or less was cooked: 1.5, 0.5. Blank: as the dish says.',
      { min: 0, decimals: 2, width: 84 },
    ),
    kept('busy', 'Busy', 'tick', 'A busy day: only quick dishes are suggested.', { width: 64 }),
    kept('skipped', 'Skipped', 'tick', 'The meal was not eaten, or not at home: it takes nothing.', {
      width: 74,
    }),
    kept('done', 'Done', 'tick', 'Set by Mark done, which posts the draws of the meal.', { width: 64 }),
    ...planningColumns<WeekFigures>({
      needs: {
        title: 'Needs from the shelf',
        type: 'text',
        width: 220,
        help: 'What the meal takes from the shelf, for the shares at this meal.',
      },
      stock: {
        title: 'In stock or short',
        type: 'text',
        width: 150,
        help: 'Whether the shelf has it, once the meals before have taken theirs; else what is short.',
      },
      oldest_lot: {
        title: 'Oldest lot it would use',
        type: 'text',
        width: 200,
        help: 'Of the lots that the meal would take from, the one put up first.',
      },
      uses_up: {
        title: 'Uses up',
        type: 'text',
        width: 200,
        help: 'Lots of which the meal would take the last.',
      },
      open_after: {
        title: 'Open after it',
        type: 'text',
        width: 200,
        help: 'Jars, cans and bags that stand opened when the meal is over, and how much they hold. The next meals use them first.',
      },
    }),
    kept('note', 'Note', 'text', 'Anything worth remembering.', { width: 160 }),
  ],
};
