import { phrase, say } from '../../words/index.js';
import { plantsFor } from '../growing.js';
import { measuredIn } from '../measured.js';
import type { Basis, Household, Working } from '../types.js';
import { isAmount } from '../words.js';
import { call, type Explained, input, some, working } from '../working/parts.js';
import type { BedReckoning, BedsPlan } from './beds.js';
import { datesExplained } from './explain-dates.js';
import { ground, lacksYield, NO_PLANTS, NO_POUNDS, seeds } from './explain-ground.js';
import { yieldInputs, yieldSteps } from './explain-yield.js';
import type { OwnFigures } from './own-figures.js';
import type { BedFigures } from './types.js';

const TITLES: Readonly<Record<keyof BedFigures, string>> = {
  pounds_wanted: phrase('Pounds wanted'),
  yield_low: phrase('Yield, low'),
  yield: phrase('Yield'),
  yield_high: phrase('Yield, high'),
  yield_from: phrase('Where the yield comes from'),
  plants_low: phrase('Plants wanted in a good season'),
  plants_wanted: phrase('Plants wanted'),
  plants_high: phrase('Plants wanted in a lean season'),
  row_feet: phrase('Row feet'),
  bed_area: phrase('Bed area'),
  seeds: phrase('Seeds'),
  seeds_to_buy: phrase('Seeds to buy'),
  start_on: phrase('Start on'),
  set_out_on: phrase('Set out on'),
  harvest_from: phrase('Harvest from'),
  harvest_to: phrase('Harvest to'),
  latest_sowing: phrase('Latest sowing'),
  expected_low: phrase('Expected pounds, lean season'),
  expected_pounds: phrase('Expected pounds'),
  expected_high: phrase('Expected pounds, good season'),
  short_or_over: phrase('Short or over'),
};

const UNITS: Partial<Record<keyof BedFigures, string>> = {
  pounds_wanted: 'pounds',
  yield_low: phrase('pounds a plant'),
  yield: phrase('pounds a plant'),
  yield_high: phrase('pounds a plant'),
  yield_from: '',
  plants_low: 'plants',
  plants_wanted: 'plants',
  plants_high: 'plants',
  row_feet: phrase('feet of row'),
  bed_area: phrase('square feet'),
  seeds: 'seeds',
  seeds_to_buy: 'seeds',
  expected_low: 'pounds',
  expected_pounds: 'pounds',
  expected_high: 'pounds',
  short_or_over: 'pounds',
};

function pounds(bed: BedReckoning): Explained {
  const { cropPounds, poundsWanted } = bed;
  return {
    rule: say`The pounds of this crop that Foods asks for, over all foods, shared over its plantings by the plants planned, equally when none are. Trees and perennials that bear already count first.`,
    inputs: [
      input(say`Pounds to grow of ${bed.crop}, all foods`, cropPounds, phrase('pounds'), 'computed'),
      input(phrase('Plants planned in this row'), bed.row.plants, phrase('plants'), 'entered'),
    ],
    steps: [
      poundsWanted !== null && cropPounds !== null && cropPounds > 0
        ? say`${measuredIn(poundsWanted, 'pound')} of ${measuredIn(cropPounds, 'pound')} fall to this planting`
        : null,
    ],
    missing: NO_POUNDS,
  };
}

function plants(bed: BedReckoning, basis: Basis): Explained {
  const { poundsWanted, wanted } = bed;
  const found = bed.yield.ok ? bed.yield.value : null;
  const at = found?.[basis];
  const byFunction = poundsWanted === null ? null : plantsFor(bed.crop, poundsWanted);
  return {
    rule: say`Pounds wanted ÷ pounds a plant in a ${basis} season, rounded up to whole plants.`,
    inputs: [
      input(phrase('Pounds wanted'), poundsWanted, phrase('pounds'), 'computed'),
      ...yieldInputs(bed, basis),
    ],
    steps: [
      poundsWanted === null || at === undefined || wanted[basis] === null
        ? null
        : say`${measuredIn(poundsWanted, 'pound')} ÷ ${measuredIn(at, 'pound')} a plant = ${some(poundsWanted / at, 'plant')}, so ${some(wanted[basis], 'plant')}`,
    ],
    // The function knows published figures at the usual spacing: it is shown where it gives the same.
    ...(byFunction?.ok && byFunction.value[basis] === wanted[basis]
      ? { formula: call('PLANTS_FOR', bed.crop, poundsWanted, null, basis === 'usual' ? null : basis) }
      : {}),
    missing:
      poundsWanted === null
        ? NO_POUNDS
        : lacksYield(bed) || say`The yield is nothing, or the pounds too many.`,
  };
}

function expected(bed: BedReckoning, basis: Basis): Explained {
  const { row, yearsOff } = bed;
  const at = bed.yield.ok ? bed.yield.value[basis] : null;
  return {
    rule: say`Plants planned × pounds a plant in a ${basis} season. A tree or crown gives nothing before its bearing year; a young one gives less than a grown one, by how much is not published.`,
    inputs: [
      input(phrase('Plants planned'), row.plants, phrase('plants'), 'entered'),
      ...yieldInputs(bed, basis),
      ...(row.nthYear === null
        ? []
        : [input(phrase('Its year'), row.nthYear, phrase('years from planting'), 'entered')]),
    ],
    steps: [
      yearsOff > 0
        ? say`it does not bear yet: ${some(yearsOff, 'year')} to go`
        : at === null || !isAmount(row.plants)
          ? null
          : say`${some(row.plants, 'plant')} × ${measuredIn(at, 'pound')} a plant = ${measuredIn(row.plants * at, 'pound')}`,
    ],
    missing: row.plants === null ? NO_PLANTS : lacksYield(bed),
  };
}

function short(bed: BedReckoning): Explained {
  const now = bed.expected[bed.basis];
  return {
    rule: say`Expected pounds less pounds wanted: below 0 is short, above 0 over.`,
    inputs: [
      input(phrase('Expected pounds'), now, phrase('pounds'), 'computed'),
      input(phrase('Pounds wanted'), bed.poundsWanted, phrase('pounds'), 'computed'),
    ],
    steps: [
      now === null || bed.poundsWanted === null
        ? null
        : say`${measuredIn(now, 'pound')} − ${measuredIn(bed.poundsWanted, 'pound')} = ${measuredIn(now - bed.poundsWanted, 'pound')}`,
    ],
    missing: bed.poundsWanted === null ? NO_POUNDS : bed.row.plants === null ? NO_PLANTS : lacksYield(bed),
  };
}

function explained(
  bed: BedReckoning,
  column: keyof BedFigures,
  household: Household,
  figures: OwnFigures,
): Explained {
  switch (column) {
    case 'pounds_wanted':
      return pounds(bed);
    case 'yield_low':
    case 'yield':
    case 'yield_high':
    case 'yield_from':
      return {
        rule: say`The row’s own yield; else the household’s own on Facts; else learned from its seasons; else published.`,
        inputs: yieldInputs(
          bed,
          column === 'yield_low' ? 'lean' : column === 'yield_high' ? 'good' : bed.basis,
        ),
        steps: yieldSteps(bed),
        missing: lacksYield(bed),
      };
    case 'plants_low':
      return plants(bed, 'good');
    case 'plants_high':
      return plants(bed, 'lean');
    case 'plants_wanted':
      return plants(bed, bed.basis);
    case 'row_feet':
    case 'bed_area':
      return ground(bed, column);
    case 'seeds':
    case 'seeds_to_buy':
      return seeds(bed, column);
    case 'expected_low':
      return expected(bed, 'lean');
    case 'expected_high':
      return expected(bed, 'good');
    case 'expected_pounds':
      return expected(bed, bed.basis);
    case 'short_or_over':
      return short(bed);
    default:
      return datesExplained(bed, column, household, figures);
  }
}

/**
 * The working of a planning figure of a planting: rule, inputs with their sources, steps, the formula that gives
 * the same where one does, and what would fill a blank. Undefined for a row or column that is not there.
 */
export function explainPlanting(
  plan: BedsPlan,
  household: Household,
  figures: OwnFigures,
  rowId: string,
  column: keyof BedFigures,
): Working | undefined {
  const bed = plan.reckoned.get(rowId);
  const row = plan.rows.get(rowId);
  if (!bed || !row || !Object.hasOwn(TITLES, column)) return undefined;
  return working(
    TITLES[column],
    row.figures[column],
    UNITS[column] ?? 'day',
    explained(bed, column, household, figures),
  );
}
