import { type Caution, caution, cautionsFor, groupOf, wordsOf } from '../../facts/index.js';
import { phrase } from '../../words/index.js';
import type { WayKept } from '../types.js';
import type { Dish } from './dish-book.js';
import type { DishNeeds } from './needs.js';

/** A safety text that belongs beside a meal, a list or a dish. */
export interface WeekCaution {
  readonly id: Caution['id'] | 'opened' | 'past-best';
  readonly text: string;
}

/** Common practice, no source: beside everything that stands opened. */
export const OPENED: WeekCaution = {
  id: 'opened',
  text: phrase(
    'Keep what is opened, thawed or left over covered in the refrigerator and use it within days. Where there is any doubt, throw it out. Common practice, no source: ask your food-safety authority for its times.',
  ),
};

const RAW_EGG_DISH =
  /\b(?:mayonnaise|majonase|aioli|caesar dressing|hollandaise|remoulade|eggnog|eierlikor|mousse|tiramisu)\b/;

/** True where a dish is one that is made with raw eggs, or a line says that its eggs are raw. */
function hasRawEgg(dish: Dish, { lines }: Pick<DishNeeds, 'lines'>): boolean {
  if (RAW_EGG_DISH.test(wordsOf(dish.name))) return true;
  return lines.some((line) => {
    // What is bought as a dressing is made with pasteurised eggs.
    if (line.from !== 'bought' && RAW_EGG_DISH.test(wordsOf(line.foodName))) return true;
    if (groupOf(line.foodName) !== 'egg') return false;
    const said = [line.note, ...line.prep.map(({ text }) => text), line.foodName, dish.name];
    return /\b(?:raw|roh(?:e[mnrs]?)?)\b/.test(wordsOf(said.join(' ')));
  });
}

/** By food; their texts are said anew, in the language spoken then. */
const known = new Map<string, readonly Caution['id'][]>();

/** Cautions of opening a jar of a food; what is said of putting it up does not bear on that. */
function ofOpening(foodName: string): readonly Caution[] {
  let ids = known.get(foodName);
  if (!ids) {
    ids = cautionsFor(foodName, 'canned')
      .map(({ id }) => id)
      .filter((id) => id === 'doubt' || id === 'seal-check');
    if (known.size < 5000) known.set(foodName, ids);
  }
  return ids.map(caution);
}

/**
 * The usual cautions of a dish: raw eggs, and for each home-canned low-acid food taken the seal, and where doubt
 * remains. `used` are the foods and ways that it takes from the shelf.
 */
export function dishCautions(
  dish: Dish,
  needs: Pick<DishNeeds, 'lines'>,
  used: Iterable<{ readonly foodName: string; readonly way: WayKept | null }>,
): WeekCaution[] {
  const found = new Map<string, WeekCaution>();
  if (hasRawEgg(dish, needs)) found.set('raw-egg', caution('raw-egg'));
  for (const { foodName, way } of used) {
    if (way !== 'canned') continue;
    for (const each of ofOpening(foodName)) found.set(each.id, each);
  }
  return [...found.values()];
}

/** Cautions for lots taken past their best-by date: a quality date, and no word on safety. */
export const pastBestCaution = (): WeekCaution => ({ id: 'past-best', text: caution('old-food').text });
