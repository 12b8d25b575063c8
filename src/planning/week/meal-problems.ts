import type { Problem } from '../../problem.js';

export const noSuchDish = (name: string): Problem => ({
  code: 'dish-not-there',
  message: `There is no dish called “${name.slice(0, 60)}” on the Dishes sheet.`,
  mend: 'Choose one of the list, or write the dish there first.',
});

export const NO_DATE: Problem = {
  code: 'missing',
  message: 'The date of this meal is missing.',
  mend: 'Write the day; until then the meal is on no list.',
};

export const bad = (what: string): Problem => ({
  code: 'bad-amount',
  message: `The ${what} is not a number from 0 up.`,
  mend: 'Write a number, or leave it blank.',
});

export const NOT_POSTED: Problem = {
  code: 'done-not-posted',
  message: 'This meal is ticked as done, but nothing was taken off the shelf for it.',
  mend: 'Use Mark done, so that the shelf is right; where it took nothing, leave it as it is.',
};

export const neverMarked = (days: number): Problem => ({
  code: 'never-marked',
  message: `This meal was more than ${days} days ago and was never marked: it no longer counts against the shelf.`,
  mend: 'Mark it done, or tick it as skipped.',
});
