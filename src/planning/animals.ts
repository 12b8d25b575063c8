import {
  germanMeant,
  inEnglishName,
  type Livestock,
  livestock,
  sourceText,
  staples,
} from '../facts/index.js';
import { ok, type Result, refuse } from '../problem.js';
import { ceilSafe } from '../units/index.js';
import { phrase, say, spoken } from '../words/index.js';
import { shortNumber } from './measure.js';
import { changed, combine, exactly, type Ranged, ranged } from './ranged.js';

const WEEKS_A_YEAR = 365.25 / 7;

/** The least, middle and greatest of what sources say, none of which leads. */
function span(
  values: readonly number[],
  unit: string,
  sources: readonly string[],
  notes: readonly string[],
): Ranged {
  const low = Math.min(...values);
  const high = Math.max(...values);
  const source = [...new Set(sources.map(sourceText))].join('; ');
  return { lean: low, usual: (low + high) / 2, good: high, unit, source, origin: 'published', notes };
}

/**
 * Eggs a year from a backyard hen: good is the most of a first year, lean that of a fourth, usual midway.
 * Refused only if the facts lack them.
 */
export function eggsPerHen(): Result<Ranged> {
  const hen = livestock('hen');
  if (!hen.ok) return hen;
  const first = hen.value.find((one) => one.value?.unit === 'eggs/hen/yr')?.value;
  const later = hen.value.flatMap((one) => (one.value?.unit === '% of first year' ? [one.value.usual] : []));
  if (!first || later.length === 0) {
    return refuse('nothing-published', say`No eggs of a hen are published here.`, say`Count your own.`);
  }
  const years = [100, ...later].map((percent) => (first.usual * percent) / 100);
  return ok(
    span(
      years,
      phrase('eggs a hen in a year'),
      [first.source],
      [
        say`up to ${shortNumber(first.usual)} in the first year, ${later.map((n) => shortNumber(n)).join(', ')} % of that in the years after`,
      ],
    ),
  );
}

/** Whole hens for eggs a week, over the year; rounded up. Lean counts on old hens, so wants more. */
export function hensFor(eggsPerWeek: number): Result<Ranged> {
  const eggs = eggsPerHen();
  if (!eggs.ok) return eggs;
  const note = say`averaged over the year: in winter hens lay less`;
  return ok(changed(eggs.value, 'hens', note, (n) => ceilSafe((eggsPerWeek * WEEKS_A_YEAR) / n)));
}

/** Meat to take home as a share of live weight, by each source that prints both. */
function takeHome(rows: readonly Livestock[]): Ranged | null {
  const found = rows.flatMap((one) =>
    one.takeHome && one.liveWeight ? [{ share: one.takeHome.usual / one.liveWeight, of: one }] : [],
  );
  if (found.length === 0) return null;
  const notes = found.map(
    ({ of }) =>
      say`${shortNumber(of.takeHome?.usual ?? 0)} pounds${of.basis ? ` (${spoken(of.basis)})` : ''} from ${of.liveWeight} pounds by ${sourceText(of.source)}`,
  );
  return span(
    found.map((one) => one.share),
    'of live weight',
    found.map((one) => one.of.source),
    notes,
  );
}

/** Carcass as a share of live weight, spanning all sources. */
function carcass(rows: readonly Livestock[]): Ranged | null {
  const found = rows.flatMap((one) => (one.dressing ? [one.dressing] : []));
  if (found.length === 0) return null;
  const ends = found.flatMap(({ low, high }) => [low / 100, high / 100]);
  return span(
    ends,
    'of live weight',
    found.map((one) => one.source),
    [],
  );
}

/** Bone-in cuts as a share of the carcass, where printed so. */
function cuts(rows: readonly Livestock[]): Ranged | null {
  const found = rows.find(
    (one) =>
      one.takeHomePercent && /percent of carcass/.test(one.basis ?? '') && /bone-in/.test(one.basis ?? ''),
  );
  return found?.takeHomePercent
    ? changed(ranged(found.takeHomePercent, 'low'), 'of the carcass', '', (n) => n / 100)
    : null;
}

/**
 * Pounds of meat to take home from an animal of `liveWeight` pounds: packaged meat where sources print it, else
 * the carcass times the cuts (lamb), else the carcass itself (birds). Live, hanging and take-home weights differ.
 */
export function meatFrom(animal: string, liveWeight: number): Result<Ranged> {
  const rows = livestock(animal);
  if (!rows.ok) return rows;
  const pounds = (share: Ranged, note: string) => ok(changed(share, 'pounds', note, (n) => n * liveWeight));
  const packaged = takeHome(rows.value);
  if (packaged) return pounds(packaged, say`cut and wrapped, some of it with bone`);
  const hanging = carcass(rows.value);
  if (!hanging) {
    return refuse(
      'nothing-published',
      say`No meat is published here for ${animal.trim()}.`,
      say`Write steer, hog, lamb or chicken.`,
    );
  }
  const cut = cuts(rows.value);
  if (!cut) return pounds(hanging, say`the dressed bird, with bone`);
  const share = combine(
    hanging,
    cut,
    'of live weight',
    say`carcass, times the cuts with bone`,
    (a, b) => a * b,
  );
  return pounds(share, '');
}

export const FLOURS = ['white flour', 'whole-wheat flour'] as const;

/** Pounds of flour from pounds of wheat. Refused (`nothing-published`) for other grains. */
export function flourFrom(grain: string, pounds: number): Result<Ranged> {
  const words = (germanMeant('words', ['whole wheat'], grain) ?? inEnglishName(grain))
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, ' ');
  const whole = /^(whole wheat|whole grain wheat)/.test(words);
  if (!whole && !/^(wheat|white wheat|wheat berr(y|ies))$/.test(words)) {
    return refuse(
      'nothing-published',
      say`No flour yield is published here for ${grain.trim()}.`,
      say`Write "wheat" for white flour, or "whole wheat"; a home mill loses next to nothing, so weigh your own.`,
    );
  }
  const wanted = whole ? 'lb whole-wheat flour' : 'lb white flour';
  const found = staples('wheat').find((one) => one.gives.unit === wanted);
  const bushel = found
    ? Number(/^lb wheat/.test(found.fromUnit) ? found.fromAmount : Number.NaN)
    : Number.NaN;
  if (!found || !(bushel > 0))
    return refuse('nothing-published', say`No flour yield is published here.`, say`Weigh your own.`);
  const source = ranged(found.gives, 'low').source;
  const share = exactly(found.gives.usual / bushel, 'of the grain', source);
  return ok(
    changed(
      share,
      'pounds',
      say`${shortNumber(found.gives.usual)} pounds from ${bushel} pounds of wheat`,
      (n) => n * pounds,
    ),
  );
}
