import { cropCalled } from './crops.js';
import raw from './data/rules.json';
import type { Certainty, SourceId } from './figure-types.js';
import { germanFor } from './german-names.js';
import { groupOf } from './groups.js';
import { pluralOf, wordsOf } from './names.js';

export type CanningVerdict =
  | 'no process'
  | 'not recommended'
  | 'one form'
  | 'pints only'
  | 'leave out'
  | 'add acid';

/** A food not to be canned at home, or canned only in one form. */
export interface CanningRule {
  readonly id: string;
  readonly verdict: CanningVerdict;
  readonly text: string;
  readonly source: SourceId;
  readonly certainty: Certainty;
}

interface RawRule {
  readonly id: string;
  readonly foods: readonly string[];
  readonly words: readonly string[];
  readonly groups?: readonly string[];
  readonly verdict: string;
  readonly text: string;
  readonly is: readonly string[];
}

const ROWS = raw as readonly RawRule[];

function toRule(row: RawRule): CanningRule {
  return {
    id: row.id,
    verdict: row.verdict as CanningVerdict,
    text: row.text,
    source: row.is[0] ?? '',
    certainty: (row.is[1] ?? 'published') as Certainty,
  };
}

const holds = (words: string, phrase: string): boolean =>
  ` ${words} `.includes(` ${phrase} `) || ` ${words} `.includes(` ${pluralOf(phrase)} `);

const seen = new Map<string, readonly CanningRule[]>();

/** Rules on canning that touch this food, by crop, by food group or by its words; none for most foods. */
export function canningRules(food: string): readonly CanningRule[] {
  const known = seen.get(food);
  if (known) return known;
  const crop = cropCalled(food);
  const words = wordsOf(food);
  const group = groupOf(food);
  const found = ROWS.filter((row) => {
    if (crop) return row.foods.includes(crop.name);
    if (group !== null && (row.groups ?? []).includes(group)) return true;
    return (
      row.words.some((phrase) => holds(words, wordsOf(phrase))) ||
      germanFor('rules', row.id).some((phrase) => ` ${words} `.includes(` ${phrase} `))
    );
  }).map(toRule);
  if (seen.size < 5000) seen.set(food, found);
  return found;
}

/** Every rule. */
export const allCanningRules = (): readonly CanningRule[] => ROWS.map(toRule);
