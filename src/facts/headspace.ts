import { excerpt, ok, type Result, refuse } from '../problem.js';
import { orList } from '../units/index.js';
import { say, spoken } from '../words/index.js';
import raw from './data/pressure.json';
import { figureFrom } from './figure.js';
import type { Figure } from './figure-types.js';
import { germanMeant } from './german-names.js';
import { pluralOf, wordsOf } from './names.js';

export type HeadspaceClass = 'low-acid' | 'fruit' | 'jam';

/** Inches of headspace, with the foods of the class in words. */
export interface Headspace extends Figure {
  readonly class: HeadspaceClass;
}

const CLASSES: readonly Headspace[] = raw.headspace.flatMap((one) => {
  const figure = figureFrom([[raw.source, one.inches, { n: one.note }]], 'inches');
  return figure ? [{ ...figure, class: one.class as HeadspaceClass }] : [];
});

/**
 * Headspace of a class of food: 'low-acid' (vegetables and meats, 1 inch), 'fruit' (fruits, tomatoes and
 * pickles, 1/2 inch) or 'jam' (jams, jellies, juices, 1/4 inch); plain words such as 'pickles' are known.
 * The tested process of a food goes before its class. Refused: `unknown-headspace-class`.
 */
export function headspace(of: string): Result<Headspace> {
  const words = wordsOf(of);
  const row =
    raw.headspace.find((one) =>
      [one.class, ...one.also].some((name) => wordsOf(name) === words || pluralOf(wordsOf(name)) === words),
    ) ?? raw.headspace.find((one) => germanMeant('words', [one.class], of));
  const found = CLASSES.find((one) => one.class === row?.class);
  if (found) return ok(found);
  const known = orList(raw.headspace.map((one) => spoken(one.class)));
  return refuse(
    'unknown-headspace-class',
    say`no headspace class called "${excerpt(of)}".`,
    say`Write ${known}; or see the tested process of the food.`,
  );
}

/** The headspace classes. */
export const headspaceClasses = (): readonly Headspace[] => CLASSES;
