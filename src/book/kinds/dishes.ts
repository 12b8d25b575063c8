import type { DishFigures } from '../../planning/week/types.js';
import { type KindDeclaration, kept, planningColumns } from './column.js';

export const dishes: KindDeclaration = {
  kind: 'dishes',
  title: 'Dishes',
  help: 'What you cook: one row for each line of a dish, with the dish’s name on each of its rows.',
  empty:
    'No dishes yet. Write the name of a dish and how many shares it serves, then a row for each food in it: the same name, the food, how much.',
  row: 'line of a dish',
  columns: [
    kept('dish', 'Dish', 'choice', 'The dish that this line belongs to: its name, on each of its rows.', {
      choices: 'dishes',
      open: true,
      width: 160,
    }),
    kept(
      'serves',
      'Serves',
      'number',
      'Shares at the table that the amounts are for, written at the first row of the dish. 1 is a grown appetite.',
      { min: 0.01, decimals: 2, width: 76 },
    ),
    kept('food', 'Food', 'choice', 'A food of the shelf, something bought, or another dish of this sheet.', {
      choices: 'foods',
      open: true,
      width: 150,
    }),
    kept(
      'way',
      'Way kept',
      'choice',
      'How it is kept. Blank: whichever there is, what is open and oldest first.',
      { choices: 'ways', width: 104 },
    ),
    kept(
      'amount',
      'Amount',
      'number',
      'How much, for as many shares as the dish serves. Of another dish: how many shares of it.',
      { min: 0, decimals: 3, width: 80 },
    ),
    kept(
      'measure',
      'Measure',
      'choice',
      'Cups, pounds, quart jars… Blank: what the food is counted in, or shares of another dish.',
      { choices: 'measures', width: 120 },
    ),
    kept(
      'from',
      'From',
      'choice',
      'The shelf, bought, or a dish. Blank: a dish of this name if the shelf has no such food, else the shelf.',
      { choices: 'line sources', width: 84 },
    ),
    ...planningColumns<DishFigures>({
      on_hand: {
        title: 'On hand',
        type: 'number',
        decimals: 2,
        width: 84,
        help: 'All that is left of this food on the shelf, in the measure of the line.',
      },
      enough_for: {
        title: 'Enough for',
        type: 'number',
        unit: 'times',
        decimals: 1,
        width: 88,
        help: 'How many times this line can be cooked for the whole table.',
      },
      makes: {
        title: 'Can be cooked',
        type: 'number',
        unit: 'times',
        decimals: 0,
        width: 92,
        help: 'At the first row of a dish: how many times the whole dish can be cooked for the whole table, as far as the shelf goes.',
      },
      costs_shelf: {
        title: 'Takes from the shelf',
        type: 'text',
        width: 220,
        help: 'At the first row of a dish: what one cooking for the whole table takes from the shelf.',
      },
    }),
    kept(
      'prep',
      'To do ahead',
      'text',
      'What is to be done for this line before the meal, with the days ahead: “thaw 1 day; soak overnight”.',
      { width: 180 },
    ),
    kept(
      'suits',
      'Meals it suits',
      'text',
      'At the first row of a dish: breakfast, midday, snack, supper or your own, with commas. Blank: any.',
      { width: 120 },
    ),
    kept('quick', 'Quick', 'tick', 'At the first row of a dish: ticked when it is fit for a busy day.', {
      width: 70,
    }),
    kept('note', 'Note', 'text', 'Anything worth remembering.', { width: 160 }),
  ],
};
