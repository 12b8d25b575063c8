import { bushelPounds, type Growing, growing, plantShare, type Yield, type YieldOf } from '../facts/index.js';
import { ok, type Result, refuse } from '../problem.js';
import { ceilSafe, findMeasure, inMeasure } from '../units/index.js';
import { say } from '../words/index.js';
import { measureName, shortNumber } from './measure.js';
import { changed, exactly, type Ranged, ranged, reachingTo } from './ranged.js';

/** Yields counted rather than weighed; all are reckoned one by one. */
const COUNTED: readonly YieldOf[] = ['ear', 'head', 'fruit', 'stalk', 'bunch', 'spear'];

const PLURALS: Readonly<Record<YieldOf, string>> = {
  pound: 'pounds',
  ear: 'ears',
  head: 'heads',
  fruit: 'fruits',
  stalk: 'stalks',
  bunch: 'bunches',
  spear: 'spears',
};

type Per = Yield['per'];

/** How a yield turns into the measure asked for. */
interface Wanted {
  readonly of: readonly YieldOf[];
  /** How many of the measure one pound (or one piece) is. */
  readonly factor: number;
  readonly name: string;
}

const needsWeight = (id: string) =>
  refuse(
    'yield-by-weight',
    say`Yields are published in pounds or by the piece, not in ${measureName(id)}.`,
    say`Give pounds: POUNDS_PER_JAR says how many go into a jar, BUSHEL_POUNDS how many a bushel weighs.`,
  );

/** Whether a yield is of cleaned food, where a bushel is weighed as it comes from the field. */
const isCleaned = (one: Yield | null): boolean => /\bshelled\b|\bdry\b/.test(one?.note ?? '');

function wantedIn(of: Growing, measure: string): Result<Wanted> {
  const found = findMeasure(measure);
  if (!found.ok) return found;
  const id = found.value.kind === 'unit' ? found.value.unit.id : found.value.container.id;
  const name = measureName(id);
  const count = inMeasure(1, 'each', id);
  if (count.ok) return ok({ of: COUNTED, factor: count.value, name: id === 'piece' ? 'pieces' : name });
  const weight = inMeasure(1, 'pound', id);
  if (weight.ok) return ok({ of: ['pound'], factor: weight.value, name });
  if (found.value.kind !== 'unit' || found.value.unit.dimension !== 'dry measure') return needsWeight(id);
  if (of.yields.some((one) => one.of === 'pound' && isCleaned(one))) {
    return refuse(
      'yield-of-cleaned-food',
      say`The yield of ${of.crop} is published shelled or dry, and a bushel is weighed as it comes from the field.`,
      say`Give pounds.`,
    );
  }
  const bushel = bushelPounds(of.crop);
  if (!bushel.ok) return bushel;
  const byBushel = inMeasure(1, 'pound', id, { pounds: bushel.value.usual, per: 'bushel' });
  return byBushel.ok ? ok({ of: ['pound'], factor: byBushel.value, name }) : byBushel;
}

function yieldIn(of: Growing, per: Per, kinds: readonly YieldOf[]): Yield | null {
  for (const one of of.yields) if (one.per === per && kinds.includes(one.of)) return one;
  return null;
}

function nothingIn(of: Growing, wanted: Wanted) {
  const others = [...new Set(of.yields.map((one) => PLURALS[one.of]))];
  if (others.length === 0) {
    return refuse(
      'no-yield',
      say`No yield is published here for ${of.crop}.`,
      say`Use your own figure, from what you harvested.`,
    );
  }
  return refuse(
    'no-yield-in-unit',
    say`The yield of ${of.crop} is published in ${others.join(' and ')}, not in ${wanted.name}.`,
    wanted.of.includes('pound')
      ? say`Write "each" as the unit.`
      : say`Write "pound" as the unit, or leave it out.`,
  );
}

const printed = (of: Growing): readonly string[] =>
  of.printedFor === of.crop ? [] : [say`figures of ${of.printedFor}`];

/**
 * What one plant gives in a season, in `measure` (a weight, a count, or a dry measure by the bushel weight).
 * Published per plant where it is, else the row-foot yield shared out at `inches` between plants (default:
 * the usual published spacing). Refused: what the crop lacks, `no-yield`, `no-yield-in-unit`.
 */
export function yieldPerPlant(crop: string, measure = 'pound', inches?: number): Result<Ranged> {
  const of = growing(crop);
  if (!of.ok) return of;
  const wanted = wantedIn(of.value, measure);
  if (!wanted.ok) return wanted;
  const unit = say`${wanted.value.name} a plant`;
  const plant = yieldIn(of.value, 'plant', wanted.value.of);
  const row = yieldIn(of.value, 'row foot', wanted.value.of);
  const share = row ? plantShare(of.value, inches, row.of) : null;
  const notes = printed(of.value);
  const scaled = (figure: Ranged): Ranged => ({
    ...changed(figure, unit, '', (n) => n * wanted.value.factor),
    notes: [...figure.notes, ...notes],
  });
  if (plant) {
    const other = share ? scaled(ranged(share, 'low')) : null;
    return ok(reachingTo(scaled(ranged(plant, 'low')), other, 'low', say`worked out from yields of a row`));
  }
  if (share) return ok(scaled(ranged(share, 'low')));
  if (row) return noSpacing(of.value);
  return nothingIn(of.value, wanted.value);
}

/**
 * What a foot of row gives in a season, in `measure`; where it is published only by the plant, that divided by
 * the spacing. Refused as `yieldPerPlant`.
 */
export function yieldPerRowFoot(crop: string, measure = 'pound', inches?: number): Result<Ranged> {
  const of = growing(crop);
  if (!of.ok) return of;
  const wanted = wantedIn(of.value, measure);
  if (!wanted.ok) return wanted;
  const unit = `${wanted.value.name} a foot of row`;
  const { factor } = wanted.value;
  const row = yieldIn(of.value, 'row foot', wanted.value.of);
  if (row) {
    const figure = changed(ranged(row, 'low'), unit, '', (n) => n * factor);
    return ok({ ...figure, notes: [...figure.notes, ...printed(of.value)] });
  }
  const plant = yieldIn(of.value, 'plant', wanted.value.of);
  if (!plant) return nothingIn(of.value, wanted.value);
  const apart = inches ?? of.value.spacing?.usual;
  if (apart === undefined || !(apart > 0)) return noSpacing(of.value);
  const note = say`worked out: yield of a plant ÷ ${apart} inches × 12 inches a foot`;
  return ok(changed(ranged(plant, 'low'), unit, note, (n) => (n * factor * 12) / apart));
}

const noSpacing = (of: Growing) =>
  refuse(
    'no-spacing',
    say`No spacing in the row is published here for ${of.crop}.`,
    say`Use your own: plants times inches between them, divided by 12, is feet of row.`,
  );

/** Whole plants for `amount` at a yield per plant (more than 0, same unit), rounded up once; null otherwise. */
export function plantsAt(amount: number, perPlant: number): number | null {
  return perPlant > 0 && amount >= 0 && Number.isFinite(amount / perPlant)
    ? ceilSafe(amount / perPlant)
    : null;
}

/** Whole plants for an amount of a crop, by basis: lean counts on less from each, so wants more of them. */
export function plantsFor(crop: string, amount: number, measure = 'pound'): Result<Ranged> {
  const per = yieldPerPlant(crop, measure);
  if (!per.ok) return per;
  const [lean, usual, good] = (['lean', 'usual', 'good'] as const).map((basis) =>
    plantsAt(amount, per.value[basis]),
  );
  if (lean == null || usual == null || good == null) {
    return refuse(
      'bad-amount',
      say`The amount or the yield is no number above 0.`,
      say`Give the amount as a number.`,
    );
  }
  const note = say`at ${shortNumber(per.value.usual)} ${per.value.unit}`;
  return ok({
    ...per.value,
    lean,
    usual,
    good,
    unit: 'plants',
    origin: 'computed',
    notes: [note, ...per.value.notes],
  });
}

/** Feet of row for plants at the usual spacing in the row, or `inches`. */
export function rowFeetFor(crop: string, plants: number, inches?: number): Result<Ranged> {
  const of = growing(crop);
  if (!of.ok) return of;
  if (inches !== undefined && inches > 0) return ok(exactly((plants * inches) / 12, 'feet of row'));
  if (!of.value.spacing) return noSpacing(of.value);
  const { usual } = of.value.spacing;
  const spacing = { ...ranged(of.value.spacing, 'high'), notes: printed(of.value) };
  return ok(
    changed(
      spacing,
      'feet of row',
      say`at ${usual} inches, usually, between plants`,
      (n) => (plants * n) / 12,
    ),
  );
}

/** Square feet of bed for plants that stand at the close spacing each way; else row by row. */
export function bedAreaFor(crop: string, plants: number): Result<Ranged> {
  const of = growing(crop);
  if (!of.ok) return of;
  const { intensiveSpacing: close, spacing, rowSpacing } = of.value;
  if (close) {
    const figure = { ...ranged(close, 'high'), notes: printed(of.value) };
    const note = say`at ${shortNumber(close.usual)} inches, usually, each way`;
    return ok(changed(figure, 'square feet', note, (n) => (plants * n * n) / 144));
  }
  if (!spacing || !rowSpacing) return noSpacing(of.value);
  const inRow = spacing.usual;
  const figure = { ...ranged(rowSpacing, 'high'), notes: printed(of.value) };
  const note = say`in rows: ${shortNumber(inRow)} by ${shortNumber(rowSpacing.usual)} inches, usually`;
  return ok(changed(figure, 'square feet', note, (n) => (plants * inRow * n) / 144));
}

/** Whole seeds for plants: plants ÷ germination, once, rounded up. `percent` from 0 (excluded) to 100. */
export function seedsAt(plants: number, percent: number): number | null {
  return percent > 0 && percent <= 100 && plants >= 0 ? ceilSafe(plants / (percent / 100)) : null;
}

/** Whole seeds for plants at the least germination that may be sold. Refused where none is published. */
export function seedsFor(crop: string, plants: number): Result<Ranged> {
  const of = growing(crop);
  if (!of.ok) return of;
  const germination = of.value.germination;
  const seeds = germination ? seedsAt(plants, germination.usual) : null;
  if (!germination || seeds === null) {
    return refuse(
      'no-germination',
      say`No germination of seed is published here for ${of.value.crop}${
        of.value.sow.includes('set') ? say`, which is mostly planted as sets or plants` : ''
      }.`,
      say`Use your own: plants divided by the packet's germination, as in 0.8.`,
    );
  }
  const figure = exactly(seeds, 'seeds', ranged(germination, 'low').source);
  return ok({ ...figure, notes: [say`at ${germination.usual} % germination`, ...printed(of.value)] });
}
