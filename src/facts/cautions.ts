import { phrase, spoken } from '../words/index.js';
import { cropCalled } from './crops.js';
import raw from './data/cautions.json';
import { groupOf } from './groups.js';
import { wordsOf } from './names.js';
import type { Way } from './ways.js';

/** A short food-safety text, in our own words, to be shown where it bears. */
export interface Caution {
  readonly id: CautionId;
  readonly text: string;
}

export type CautionId =
  | 'tested-process'
  | 'low-acid'
  | 'acidify'
  | 'seal-check'
  | 'doubt'
  | 'lids-once'
  | 'raw-egg'
  | 'old-food'
  | 'frozen'
  | 'dry-goods-moisture'
  | 'freezer-load';

/** Where cautions are asked for: a way of keeping, a screen or a sort of food. */
export type CautionTopic =
  | 'canned'
  | 'canning'
  | 'pressure'
  | 'headspace'
  | 'low-acid'
  | 'acidify'
  | 'shelf'
  | 'old'
  | 'batch'
  | 'supplies'
  | 'raw egg'
  | 'frozen'
  | 'freezing'
  | 'dry goods'
  | 'dried'
  | 'freeze-dried';

const toCaution = (row: { id: string; text: string }): Caution => ({
  id: row.id as CautionId,
  text: spoken(phrase(row.text)),
});

/** The caution with this id. */
export const caution = (id: CautionId): Caution =>
  toCaution(raw.find((row) => row.id === id) ?? { id, text: '' });

/** Every caution. */
export const allCautions = (): readonly Caution[] => raw.map(toCaution);

/** The cautions that bear on a topic, most urgent first; none for a topic without any. */
export const cautions = (forWhat: CautionTopic): readonly Caution[] =>
  raw.filter((row) => row.for.includes(forWhat)).map(toCaution);

/** Made with raw eggs, in English or German. */
const RAW_EGG = /\b(?:mayonnaise|majonase|aioli|caesar dressing|hollandaise|remoulade|eggnog|eierlikor)\b/;

const MEATS = [
  'beef',
  'veal',
  'pork',
  'lamb',
  'game',
  'meat',
  'ground meat',
  'poultry',
  'fish',
  'prepared',
  'dry legume',
];

/**
 * The cautions that bear on a food kept in a way: all canned food has the tested process and the seals,
 * low-acid food the pressure canner, tomatoes and figs the acid, dried and dry goods the moisture.
 * `old`: the food is near or past its best-by date.
 */
export function cautionsFor(food: string, way: Way | null, old = false): readonly Caution[] {
  const ids: CautionId[] = [];
  if (way === 'canned') {
    ids.push('tested-process');
    const acid = cropCalled(food)?.acid ?? null;
    const group = groupOf(food);
    if (acid === 'low-acid' || (group !== null && MEATS.includes(group))) ids.push('low-acid', 'doubt');
    if (acid === 'acidify') ids.push('acidify');
    ids.push('seal-check');
  }
  if (way === 'dried' || way === 'freeze-dried' || way === 'dry goods') ids.push('dry-goods-moisture');
  if (way === 'frozen' && old) ids.push('frozen');
  if (old) ids.push('old-food');
  if (RAW_EGG.test(wordsOf(food))) ids.push('raw-egg');
  return ids.map(caution);
}
