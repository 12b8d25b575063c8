import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { cropCalled, crops } from './crops.js';
import raw from './data/groups.json';
import { germanFor, germanNames } from './german-names.js';
import { pluralOf, wordsOf } from './names.js';

/** Groups of food, as far as quality periods and cautions tell them apart. */
export const FOOD_GROUPS = [
  'fruit',
  'citrus',
  'vegetable',
  'herb',
  'grain',
  'dry legume',
  'nut',
  'seed',
  'sweetener',
  'seasoning',
  'egg',
  'dairy',
  'butter',
  'fat',
  'beef',
  'veal',
  'pork',
  'lamb',
  'game',
  'meat',
  'ground meat',
  'cured meat',
  'poultry',
  'fish',
  'shellfish',
  'prepared',
] as const;
export type FoodGroup = (typeof FOOD_GROUPS)[number];

interface RawGroup {
  readonly group: string;
  readonly words: readonly string[];
}

let keywords: Map<string, FoodGroup> | null = null;
function keywordMap(): Map<string, FoodGroup> {
  if (keywords) return keywords;
  keywords = new Map();
  for (const { group, words } of raw as readonly RawGroup[]) {
    for (const word of words) {
      for (const form of [wordsOf(word), pluralOf(wordsOf(word))]) {
        if (!keywords.has(form)) keywords.set(form, group as FoodGroup);
      }
    }
  }
  const german = [
    ...germanNames('groups'),
    ...crops().flatMap(({ name, group }) => germanFor('crops', name).map((words) => [words, group] as const)),
  ];
  for (const [words, group] of german) if (!keywords.has(words)) keywords.set(words, group as FoodGroup);
  return keywords;
}

const CUTS = new Set([
  'steak',
  'steaks',
  'roast',
  'roasts',
  'brisket',
  'loin',
  'chop',
  'chops',
  'ribs',
  'cubes',
]);

const seen = new Map<string, FoodGroup | null>();

/**
 * The group by keyword: the last that the name holds, since the head of an English name comes last
 * ('chicken eggs' are eggs, 'pork sausage' is sausage), and of those the longest ('peanut butter').
 * What follows 'in', 'with' or 'and' is left out: peaches in syrup are peaches. German names are read alike.
 */
function groupByWords(name: string): FoodGroup | null {
  const map = keywordMap();
  const head = wordsOf(name.replace(/\(.*?\)/g, ' ')).split(/ (?:in|with|and|or|mit|und|oder) /)[0] ?? '';
  const all = head.split(' ');
  // A cut tells nothing of the animal: elk steak is game. Alone it is beef.
  const named = all.filter((word) => !CUTS.has(word));
  const words = named.length > 0 ? named : all;
  for (let end = words.length; end > 0; end -= 1) {
    for (let start = Math.max(0, end - 3); start < end; start += 1) {
      const group = map.get(words.slice(start, end).join(' '));
      if (group) return group;
    }
  }
  return null;
}

/** The group of a food, or null where neither the crops nor the keywords know it. */
export function groupOf(food: string): FoodGroup | null {
  const known = seen.get(food);
  if (known !== undefined) return known;
  const found = cropCalled(food)?.group ?? groupByWords(food);
  if (seen.size < 5000) seen.set(food, found);
  return found;
}

/**
 * The group of any food name: a crop of the registry, or by its words ('smoked trout' is fish, 'beef stew'
 * is prepared food). Refused (`unknown-food-group`) where nothing in the name is known.
 */
export function foodGroup(food: string): Result<FoodGroup> {
  const group = groupOf(food);
  if (group) return ok(group);
  const shown =
    food.trim() === '' ? say`the food is blank.` : say`nothing tells what sort of food "${food.trim()}" is.`;
  return refuse(
    'unknown-food-group',
    shown,
    say`Name the food more plainly, as in smoked trout or ground beef, or set your own figure.`,
  );
}
