import { caution } from '../../src/facts/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { flourFrom } from '../../src/planning/animals.js';
import {
  animalBrings,
  cookedPerDryCup,
  hensForEggs,
  type OwnFigures,
  publishedOnly,
} from '../../src/planning/garden/index.js';
import { changed, ends, type Ranged } from '../../src/planning/ranged.js';
import { ok, type Result, refuse } from '../../src/problem.js';
import { phrase, say } from '../../src/words/index.js';
import { originInWords } from '../working/working-view.js';
import { shownNumber } from './shown.js';

export type AskedId = 'hens' | 'animal' | 'flour' | 'cooked';

/** One thing to reckon: what is asked for, and what its field begins with (by the choice). */
export interface Asked {
  readonly id: AskedId;
  readonly title: string;
  readonly choice: string;
  readonly choices: readonly string[];
  readonly number: string;
  readonly unit: string;
  readonly usual: Readonly<Record<string, string>>;
  readonly blank: string;
}

/** The amounts that fields begin with are only somewhere to begin. */
export const ASKED: readonly Asked[] = [
  {
    id: 'hens',
    title: phrase('Hens for the eggs'),
    choice: '',
    choices: [],
    number: phrase('Eggs a week'),
    unit: '',
    usual: {},
    blank: phrase('Write how many eggs the table uses in a week.'),
  },
  {
    id: 'animal',
    title: phrase('What an animal brings'),
    choice: phrase('Animal'),
    choices: [phrase('steer'), phrase('hog'), phrase('lamb'), phrase('chicken')],
    number: phrase('Live weight'),
    unit: 'lb',
    usual: {},
    blank: phrase('Write what it weighs alive, in pounds.'),
  },
  {
    id: 'flour',
    title: phrase('Flour from grain'),
    choice: phrase('Grain'),
    choices: [phrase('wheat'), phrase('whole wheat')],
    number: phrase('Weight'),
    unit: 'lb',
    usual: { '': '60' },
    blank: phrase('Write how many pounds of grain are ground.'),
  },
  {
    id: 'cooked',
    title: phrase('Dry food, cooked'),
    choice: phrase('Food'),
    choices: [phrase('dry beans'), phrase('barley'), phrase('cornmeal')],
    number: phrase('Dry'),
    unit: 'cups',
    usual: { '': '2' },
    blank: phrase('Write how many cups of it, dry.'),
  },
];

export interface Answer {
  readonly name: string;
  readonly low: number;
  readonly usual: number;
  readonly high: number;
  readonly unit: string;
  /** Where it comes from, in words. */
  readonly from: string;
}

export interface Answers {
  readonly answers: readonly Answer[];
  /** What is particular of the figures. */
  readonly notes: readonly string[];
  /** Always in sight. */
  readonly cautions: readonly string[];
  /** Gives the same first figure in a cell; '' where none does. */
  readonly formula: string;
}

/** What a choice and an amount come to. Refused with what to write where it is out of reach or unpublished. */
export function answersOf(
  id: AskedId,
  of: string,
  n: number,
  figures: OwnFigures = publishedOnly,
): Result<Answers> {
  if (!(n >= 0 && n <= 1e6)) {
    return refuse(
      'bad-amount',
      phrase('That is not an amount to reckon with.'),
      phrase('Write a number from 0 to 1,000,000.'),
    );
  }
  switch (id) {
    case 'hens':
      return hens(n, figures);
    case 'animal':
      return animal(of, n, figures);
    case 'flour': {
      const flour = flourFrom(of, n);
      return flour.ok ? ok(only(phrase('Flour'), flour.value, `=FLOUR_FROM("${of}",${n})`)) : flour;
    }
    case 'cooked': {
      const cup = cookedPerDryCup(of);
      if (!cup.ok) return cup;
      return ok(
        only(
          phrase('Cooked'),
          changed(cup.value, 'cups', '', (each) => each * n),
          '',
        ),
      );
    }
  }
}

const only = (name: string, value: Ranged, formula: string): Answers => ({
  answers: [answer(name, value)],
  notes: value.notes,
  cautions: [],
  formula,
});

const answer = (name: string, value: Ranged, unit = value.unit): Answer => ({
  name,
  ...ends(value),
  usual: value.usual,
  unit,
  from: originInWords(value.origin, value.source),
});

function hens(eggs: number, figures: OwnFigures): Result<Answers> {
  const found = hensForEggs(eggs, figures);
  if (!found.ok) return found;
  const { hens: value, byAge } = found.value;
  const ages = byAge.map(
    ({ year, hens: n }) => say`${shownNumber(n, 0)} in their ${ORDINALS[year] ?? String(year)} year`,
  );
  return ok({
    answers: [answer(phrase('Hens'), value)],
    notes: [
      ...value.notes,
      ...(ages.length > 0 ? [say`If all were of an age: ${ages.join(', ')} of laying.`] : []),
    ],
    cautions: [],
    formula: value.origin === 'own' || value.origin === 'learned' ? '' : `=HENS_FOR(${eggs})`,
  });
}

const ORDINALS: readonly string[] = [
  '',
  phrase('first'),
  phrase('second'),
  phrase('third'),
  phrase('fourth'),
  phrase('fifth'),
];

function animal(of: string, weight: number, figures: OwnFigures): Result<Answers> {
  const found = animalBrings(of, weight, figures);
  if (!found.ok) return found;
  const { hanging, meat, freezer, quarts, fat } = found.value;
  const some = (name: string, value: Ranged | null, unit: string): Answer[] =>
    value ? [answer(name, value, unit)] : [];
  return ok({
    answers: [
      ...some(phrase('Hanging'), hanging, 'lb'),
      ...some(phrase('Meat to take home'), meat, 'lb'),
      ...some(phrase('Freezer room for it'), freezer, 'cu ft'),
      ...some(phrase('Or canned'), quarts, 'quart jars'),
      ...some(phrase('Suet besides'), fat, 'lb'),
    ],
    notes: [...meat.notes],
    cautions: [
      ...(of === 'hog' ? [phrase('No yield of lard is published here: weigh what you render.')] : []),
      ...(quarts ? [caution('tested-process').text, caution('low-acid').text] : []),
    ],
    formula: `=MEAT_FROM("${of}",${weight})`,
  });
}

const EGGS_IN: Readonly<Record<string, number>> = { each: 1, piece: 1, dozen: 12 };

/** Eggs that the table uses in a week, by Foods; null where it does not say. */
export function eggsAWeek(live: LiveBook): number | null {
  for (const { input, plan } of live.foodLines) {
    const each = EGGS_IN[input.row?.countedIn ?? 'each'];
    const use = plan.food?.figures.use_per_week;
    if (/^(?:hen )?eggs?$/i.test(input.food) && input.way === 'fresh' && each && typeof use === 'number') {
      return use * each;
    }
  }
  return null;
}
