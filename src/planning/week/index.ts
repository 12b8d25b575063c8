export type { AlreadyOpen, BringUp, BringUpList } from './bring-up.js';
export { type Buyable, buyable } from './buyable.js';
export { dishCautions, OPENED, type WeekCaution } from './cautions.js';
export {
  type CountChange,
  type CountDraw,
  type Counted,
  countShelf,
  type NotSeen,
  notSeen,
  type PlaceToCount,
  placesToCount,
  type ToCount,
} from './count.js';
export { type Dish, DishBook } from './dish-book.js';
export { explainDish } from './explain-dish.js';
export { explainMeal } from './explain-meal.js';
export { type Label, type LabelFor, type LabelOptions, labelsFor } from './labels.js';
export {
  type ListedMeal,
  listsFor,
  mealWords,
  type PrepDay,
  type PrepItem,
  type WeekLists,
} from './lists.js';
export { type MarkDone, type MarkedMeal, type MealDraw, markDone, type WhichMeals } from './mark-done.js';
export { type DishNeeds, type Need, needsOf } from './needs.js';
export { type OpenNow, openNow } from './open-now.js';
export { type DishRowPlan, planDishes } from './plan-dishes.js';
export { type MealPlan, type MealRowPlan, planWeek, type WeekPlan } from './plan-week.js';
export {
  type AtTable,
  type CopyOptions,
  copyLastWeek,
  guestsAndAway,
  type MealEdit,
  mondayOf,
  type NewMeal,
  openMeals,
  repeatWeeks,
} from './plan-weeks.js';
export { drawIdOf, postedMeals } from './post-id.js';
export { leadDaysOf, readPrep } from './prep.js';
export type { ToBuy } from './shopping.js';
export { type Suggestion, type Suggestions, suggestDishes } from './suggest.js';
export type { SuggestOptions } from './suggest-model.js';
export type * from './types.js';
export { LINE_SOURCES, MEALS } from './types.js';
export { type WeekAverage, weekAverages } from './week-average.js';
export { type Wish, type WishFor, wishList } from './wish-list.js';
