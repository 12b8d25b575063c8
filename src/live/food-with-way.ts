import { germanNames } from '../facts/german-names.js';
import { wordsOf } from '../facts/names.js';
import { WAYS_KEPT } from '../planning/types.js';

/** A food and the way it is kept, the way as it is stored. */
interface FoodWithWay {
  readonly food: string;
  readonly way: string;
}

/** Longest first: 'freeze-dried' ends with 'dried'. */
const WAYS = [...WAYS_KEPT].sort((a, b) => b.length - a.length);

/** What an adjective takes before its noun: 'eingekochte Tomaten', 'getrockneter Salbei'. */
const ENDINGS = ['e', 'er', 'es', 'en'];

let german: {
  readonly after: ReadonlyMap<string, string>;
  readonly before: ReadonlyMap<string, string>;
} | null = null;

/** German words for ways, as they stand after a food and before it. */
function germanWays() {
  if (german) return german;
  const names = germanNames('ways');
  const before = names.flatMap(([words, way]) => ENDINGS.map((ending) => [words + ending, way] as const));
  german = { after: new Map(names), before: new Map(before) };
  return german;
}

function inGerman(text: string): FoodWithWay | null {
  const [, food = '', last = ''] = /^(.*[^\s,]),?\s+([^\s,]+)$/.exec(text) ?? [];
  const after = germanWays().after.get(wordsOf(last));
  if (after !== undefined) return { food, way: after };
  const [, first = '', rest = ''] = /^([^\s,]+)\s+(.+)$/.exec(text) ?? [];
  const before = germanWays().before.get(wordsOf(first));
  return before === undefined ? null : { food: rest, way: before };
}

/**
 * 'tomatoes, canned', 'canned tomatoes' and 'tomatoes (canned)' as the food and its way, and so in German, whatever
 * language is spoken: what a cell says is kept. Null where no way is named.
 */
export function withWay(text: string): FoodWithWay | null {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/\s*\(([^()]*)\)$/, ', $1');
  for (const way of WAYS) {
    if (plain.startsWith(`${way} `)) return { food: text.trim().slice(way.length + 1), way };
    for (const joint of [`, ${way}`, ` ${way}`])
      if (plain.endsWith(joint)) return { food: plain.slice(0, -joint.length), way };
  }
  return inGerman(plain);
}
