import type { Problem } from '../../problem.js';
import { phrase, say } from '../../words/index.js';

export const noSuchDish = (name: string): Problem => ({
  code: 'dish-not-there',
  message: say`There is no dish called “${name.slice(0, 60)}” on the Dishes sheet.`,
  mend: say`Choose one of the list, or write the dish there first.`,
});

export const NO_DATE: Problem = {
  code: 'missing',
  message: phrase('The date of this meal is missing.'),
  mend: phrase('Write the day; until then the meal is on no list.'),
};

export const bad = (what: string): Problem => ({
  code: 'bad-amount',
  message: say`The ${what} is not a number from 0 up.`,
  mend: say`Write a number, or leave it blank.`,
});

export const NOT_POSTED: Problem = {
  code: 'done-not-posted',
  message: phrase('This meal is ticked as done, but nothing was taken off the shelf for it.'),
  mend: phrase('Use Mark done, so that the shelf is right; where it took nothing, leave it as it is.'),
};

export const neverMarked = (days: number): Problem => ({
  code: 'never-marked',
  message: say`This meal was more than ${days} days ago and was never marked: it no longer counts against the shelf.`,
  mend: say`Mark it done, or tick it as skipped.`,
});
