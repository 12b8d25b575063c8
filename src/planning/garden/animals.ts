import { inEnglishName, livestock, sourceText, staples } from '../../facts/index.js';
import { ok, type Result, refuse } from '../../problem.js';
import { ceilSafe } from '../../units/index.js';
import { phrase, say } from '../../words/index.js';
import { hensFor, meatFrom } from '../animals.js';
import { at, changed, exactly, type Ranged, ranged } from '../ranged.js';
import type { Basis } from '../types.js';
import { HEN } from './figure-names.js';
import { type InUse, type OwnFigures, publishedOnly } from './own-figures.js';
import { freezerFigure } from './room-measures.js';

const WEEKS_A_YEAR = 365.25 / 7;

/** Hens for eggs, with what each is reckoned to lay. */
export interface HensWanted {
  /** Whole hens by basis: lean counts on old hens, so wants more. */
  readonly hens: Ranged;
  /** Whole hens if all were in their first, second, third and fourth year of laying. */
  readonly byAge: readonly { readonly year: number; readonly eggs: number; readonly hens: number }[];
}

/** Eggs of a hen in each year of laying, as published for a backyard flock: a most, not an average. */
export function eggsByAge(): readonly {
  readonly year: number;
  readonly eggs: number;
  readonly source: string;
}[] {
  const hen = livestock('hen');
  if (!hen.ok) return [];
  const first = hen.value.find(({ value }) => value?.unit === 'eggs/hen/yr')?.value;
  if (!first) return [];
  const later = hen.value.flatMap(({ value }) => (value?.unit === '% of first year' ? [value.usual] : []));
  return [100, ...later].map((percent, i) => ({
    year: i + 1,
    eggs: (first.usual * percent) / 100,
    source: sourceText(first.source),
  }));
}

/** Whole hens for eggs a week: by the household's own eggs a hen, else the published range over their ages. */
export function hensForEggs(eggsPerWeek: number, figures: OwnFigures = publishedOnly): Result<HensWanted> {
  if (!(eggsPerWeek >= 0 && eggsPerWeek <= 1e9)) {
    return refuse(
      'bad-amount',
      say`The eggs a week are not a number from 0 up.`,
      say`Write eggs a week as a number.`,
    );
  }
  const own = figures.inUse(HEN);
  const hens =
    own.ok && (own.value.own !== null || own.value.learned !== null)
      ? byOwn(eggsPerWeek, own.value)
      : hensFor(eggsPerWeek);
  if (!hens.ok) return hens;
  const byAge = eggsByAge().map(({ year, eggs }) => ({
    year,
    eggs,
    hens: ceilSafe((eggsPerWeek * WEEKS_A_YEAR) / eggs),
  }));
  return ok({ hens: hens.value, byAge });
}

function byOwn(eggsPerWeek: number, eggs: InUse): Result<Ranged> {
  if (!(eggs.low > 0)) {
    return refuse(
      'bad-amount',
      say`Hens that lay no eggs are never enough.`,
      say`Correct “hen, eggs a year” on Facts.`,
    );
  }
  const of = (n: number) => ceilSafe((eggsPerWeek * WEEKS_A_YEAR) / n);
  return ok({
    ...exactly(of(eggs.usual), 'hens', eggs.source),
    lean: of(eggs.low),
    good: of(eggs.high),
    origin: eggs.origin,
  });
}

/** What an animal brings to the table and the freezer. Live, hanging and take-home weights are three things. */
export interface AnimalBrings {
  /** Hanging pounds, spanning every source. Null where none is published. */
  readonly hanging: Ranged | null;
  /** Pounds to take home. */
  readonly meat: Ranged;
  /** Cubic feet of freezer for the meat; null where not known. */
  readonly freezer: Ranged | null;
  /** Quart jars if all of it were canned; null where no pounds a quart are published. */
  readonly quarts: Ranged | null;
  /** Pounds of fat that come off besides; null where none is published. */
  readonly fat: Ranged | null;
}

const MEAT: Readonly<Record<string, string>> = { Beef: 'beef', Pork: 'pork', Lamb: 'lamb' };

function hangingWeight(animal: string, liveWeight: number): Ranged | null {
  const rows = livestock(animal);
  const all = rows.ok
    ? rows.value.flatMap(({ dressing }) => (dressing ? [ranged(dressing, 'low')] : []))
    : [];
  const first = all[0];
  if (!first) return null;
  const lean = Math.min(...all.map((one) => one.lean));
  const good = Math.max(...all.map((one) => one.good));
  const share: Ranged = {
    ...first,
    lean,
    usual: (lean + good) / 2,
    good,
    source: [...new Set(all.map(({ source }) => source))].join('; '),
  };
  return changed(share, 'pounds hanging', '', (percent) => (percent / 100) * liveWeight);
}

/** Suet of a beef carcass, as printed; other fat is not published here. */
function fatOf(name: string | undefined): Ranged | null {
  if (name !== 'Beef') return null;
  const rows = livestock('Beef fat');
  const value = rows.ok ? rows.value[0]?.value : null;
  return value ? ranged(value, 'low', 'pounds of suet a carcass') : null;
}

/** What a steer, hog, lamb or chicken of `liveWeight` pounds brings. Refused: unknown animals, `bad-amount`. */
export function animalBrings(
  animal: string,
  liveWeight: number,
  figures: OwnFigures = publishedOnly,
): Result<AnimalBrings> {
  if (!(liveWeight >= 0 && liveWeight <= 1e9)) {
    return refuse('bad-amount', say`The live weight is not a number from 0 up.`, say`Write it in pounds.`);
  }
  const meat = meatFrom(animal, liveWeight);
  if (!meat.ok) return meat;
  const rows = livestock(animal);
  const name = rows.ok ? rows.value[0]?.animal : undefined;
  const room = freezerFigure(figures);
  const freezer =
    room.ok && room.value.low > 0
      ? {
          ...changed(meat.value, 'cubic feet', '', (n) => n / room.value.usual),
          // The more meat there is and the less a cubic foot holds, the more room it wants.
          lean: meat.value.good / room.value.low,
          good: meat.value.lean / room.value.high,
          source: `${meat.value.source}; ${room.value.source}`,
        }
      : null;
  const of = name === undefined ? undefined : MEAT[name];
  const perQuart =
    of === undefined
      ? null
      : figures.inUse({
          of,
          what: 'pounds per container',
          container: 'quart jar',
          way: 'canned',
        });
  const quarts =
    perQuart?.ok && perQuart.value.low > 0
      ? {
          ...changed(meat.value, 'quart jars', '', (n) => n / perQuart.value.usual),
          lean: meat.value.lean / perQuart.value.high,
          good: meat.value.good / perQuart.value.low,
          source: `${meat.value.source}; ${perQuart.value.source}`,
          origin: perQuart.value.origin,
          notes: [...meat.value.notes, ...perQuart.value.notes],
        }
      : null;
  return ok({
    hanging: hangingWeight(animal, liveWeight),
    meat: meat.value,
    freezer,
    quarts,
    fat: fatOf(name),
  });
}

/** Whole animals for pounds of meat a year, at a live weight each. Lean counts on less meat, so wants more. */
export function animalsFor(animal: string, pounds: number, liveWeight: number, basis: Basis): Result<number> {
  const meat = meatFrom(animal, liveWeight);
  if (!meat.ok) return meat;
  const each = at(meat.value, basis);
  const count = pounds / each;
  return each > 0 && pounds >= 0 && count <= 1e9
    ? ok(ceilSafe(count))
    : refuse(
        'bad-amount',
        say`The pounds or the live weight are no number to reckon with.`,
        say`Check both.`,
      );
}

/**
 * Pounds of lard from a hog. No yield of lard is published here, so this refuses with what would fill it: pork
 * sources give fat together with skin and bone.
 */
export const lardFrom = (): Result<Ranged> =>
  refuse(
    'nothing-published',
    say`No yield of lard is published here: the sources give fat together with skin and bone.`,
    say`Weigh what you render, and keep your own figure.`,
  );

/** Cups cooked from a cup dry, for dry beans, barley and cornmeal. */
export function cookedPerDryCup(food: string): Result<Ranged> {
  const words = inEnglishName(food).trim().toLowerCase();
  const about = /bean|pea|lentil|legume/.test(words) ? 'dry beans' : words.replace(/s$/, '');
  const found = staples(about).find(
    ({ fromUnit, gives }) => fromUnit === 'cup dry' && gives.unit === 'cups cooked',
  );
  return found && about !== ''
    ? ok(ranged(found.gives, 'low', 'cups cooked from a cup dry'))
    : refuse(
        'nothing-published',
        say`How much ${food.trim() || phrase('it')} swells in cooking is not published here.`,
        say`Write dry beans, barley or cornmeal; or measure your own.`,
      );
}
