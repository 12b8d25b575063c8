import { figureSource, growing } from '../../facts/index.js';
import type { Basis, Household, Working, WorkingInput } from '../types.js';
import { isAmount } from '../words.js';
import { call, type Explained, input, n, some, working } from '../working/parts.js';
import type { BedReckoning, BedsPlan } from './beds.js';
import { datesExplained } from './explain-dates.js';
import { yieldInputs, yieldSteps } from './explain-yield.js';
import { bedArea, rowFeet } from './ground.js';
import type { OwnFigures } from './own-figures.js';
import { isSown } from './seeds.js';
import type { BedFigures } from './types.js';

const TITLES: Readonly<Record<keyof BedFigures, string>> = {
  pounds_wanted: 'Pounds wanted',
  yield_low: 'Yield, low',
  yield: 'Yield',
  yield_high: 'Yield, high',
  yield_from: 'Where the yield comes from',
  plants_low: 'Plants wanted in a good season',
  plants_wanted: 'Plants wanted',
  plants_high: 'Plants wanted in a lean season',
  row_feet: 'Row feet',
  bed_area: 'Bed area',
  seeds: 'Seeds',
  seeds_to_buy: 'Seeds to buy',
  start_on: 'Start on',
  set_out_on: 'Set out on',
  harvest_from: 'Harvest from',
  harvest_to: 'Harvest to',
  latest_sowing: 'Latest sowing',
  expected_low: 'Expected pounds, lean season',
  expected_pounds: 'Expected pounds',
  expected_high: 'Expected pounds, good season',
  short_or_over: 'Short or over',
};

const UNITS: Partial<Record<keyof BedFigures, string>> = {
  pounds_wanted: 'pounds',
  yield_low: 'pounds a plant',
  yield: 'pounds a plant',
  yield_high: 'pounds a plant',
  yield_from: '',
  plants_low: 'plants',
  plants_wanted: 'plants',
  plants_high: 'plants',
  row_feet: 'feet of row',
  bed_area: 'square feet',
  seeds: 'seeds',
  seeds_to_buy: 'seeds',
  expected_low: 'pounds',
  expected_pounds: 'pounds',
  expected_high: 'pounds',
  short_or_over: 'pounds',
};

const lacksYield = (bed: BedReckoning): string =>
  bed.yield.ok ? '' : `${bed.yield.problem.message} ${bed.yield.problem.mend}`;
const NO_POUNDS =
  'No food asks for this crop yet: name it in Foods under “Crops in it”, with a use per week and a harvest.';
const NO_PLANTS = 'Write the plants planned.';

function pounds(bed: BedReckoning): Explained {
  const { cropPounds, poundsWanted } = bed;
  return {
    rule: 'The pounds of this crop that Foods asks for, over all foods, shared over its plantings by the plants planned, equally when none are. Trees and perennials that bear already count first.',
    inputs: [
      input(`Pounds to grow of ${bed.crop}, all foods`, cropPounds, 'pounds', 'computed'),
      input('Plants planned in this row', bed.row.plants, 'plants', 'entered'),
    ],
    steps: [
      poundsWanted !== null && cropPounds !== null && cropPounds > 0
        ? `${n(poundsWanted)} of ${n(cropPounds)} pounds fall to this planting`
        : null,
    ],
    missing: NO_POUNDS,
  };
}

function plants(bed: BedReckoning, basis: Basis): Explained {
  const { poundsWanted, wanted } = bed;
  const found = bed.yield.ok ? bed.yield.value : null;
  const at = found?.[basis];
  const own = found?.origin === 'own' || found?.origin === 'learned';
  return {
    rule: `Pounds wanted ÷ pounds a plant in a ${basis} season, rounded up to whole plants.`,
    inputs: [input('Pounds wanted', poundsWanted, 'pounds', 'computed'), ...yieldInputs(bed, basis)],
    steps: [
      poundsWanted === null || at === undefined || wanted[basis] === null
        ? null
        : `${n(poundsWanted)} lb ÷ ${n(at)} lb a plant = ${n(poundsWanted / at)}, so ${some(wanted[basis], 'plant')}`,
    ],
    // The function knows published figures at the usual spacing: it is shown where it gives the same.
    ...(own || poundsWanted === null || bed.row.ownSpacing !== null || bed.dates.how === 'tree'
      ? {}
      : { formula: call('PLANTS_FOR', bed.crop, poundsWanted, null, basis === 'usual' ? null : basis) }),
    missing:
      poundsWanted === null ? NO_POUNDS : lacksYield(bed) || 'The yield is nothing, or the pounds too many.',
  };
}

/** Plants that ground and seeds are for, as an input. */
function plantsInput(bed: BedReckoning): WorkingInput {
  return isAmount(bed.row.plants)
    ? input('Plants planned', bed.row.plants, 'plants', 'entered')
    : input('Plants wanted', bed.plants, 'plants', 'computed');
}

const lacksPlants = (bed: BedReckoning): string =>
  bed.plants === null
    ? `Write the plants planned. ${bed.poundsWanted === null ? NO_POUNDS : lacksYield(bed)}`.trim()
    : '';

function ground(bed: BedReckoning, column: 'row_feet' | 'bed_area'): Explained {
  const { spacing, plants: count } = bed;
  const rule =
    column === 'row_feet'
      ? 'Plants (planned, else wanted) × inches between them ÷ 12.'
      : 'Plants (planned, else wanted) × inches each way ÷ 144: at the close spacing of a bed where one is published, else by rows.';
  if (!spacing.ok) {
    return { rule, missing: lacksPlants(bed) || `${spacing.problem.message} ${spacing.problem.mend}` };
  }
  const { inRow, across, source, origin, acrossSource } = spacing.value;
  const area = count === null ? null : bedArea(count, spacing.value, bed.row, bed.crop);
  return {
    rule,
    inputs: [
      plantsInput(bed),
      input('Between plants in the row', inRow, 'inches', origin, source),
      ...(column === 'bed_area' && across !== null
        ? [
            input(
              `Across, ${acrossSource}`,
              across,
              'inches',
              origin === 'own' ? 'computed' : 'published',
              acrossFrom(bed),
            ),
          ]
        : []),
    ],
    steps: [
      count === null
        ? null
        : column === 'row_feet'
          ? `${n(count)} × ${n(inRow)} in ÷ 12 = ${n(rowFeet(count, spacing.value))} ft`
          : area === null
            ? null
            : `${some(count, 'plant')}: ${n(area)} square feet`,
    ],
    missing: lacksPlants(bed) || 'No spacing of rows is published here; go by row feet.',
  };
}

function acrossFrom(bed: BedReckoning): string | undefined {
  const of = growing(bed.crop);
  const figure = of.ok ? (of.value.intensiveSpacing ?? of.value.rowSpacing) : null;
  return figure ? figureSource(figure) : undefined;
}

function seeds(bed: BedReckoning, column: 'seeds' | 'seeds_to_buy'): Explained {
  const rule =
    column === 'seeds'
      ? 'Plants (planned, else wanted) ÷ the share of seeds that come up, once, rounded up.'
      : 'Seeds less those on hand that are not too old.';
  if (!isSown(bed.dates.how)) {
    return { rule, missing: `It is started as a ${bed.dates.how}, not from seed.` };
  }
  if (!bed.seeds) return { rule, missing: lacksPlants(bed) };
  if (!bed.seeds.ok) return { rule, missing: `${bed.seeds.problem.message} ${bed.seeds.problem.mend}` };
  const { seeds: count, toBuy, germination, life, counted, tooOld } = bed.seeds.value;
  const plain = germination.own === null;
  return {
    rule,
    inputs: [
      plantsInput(bed),
      input(
        plain ? 'Germination: the least that may be sold' : 'Germination',
        germination.usual,
        'percent',
        germination.origin,
        germination.source,
      ),
      ...(column === 'seeds'
        ? []
        : [
            input('Seeds on hand', bed.row.seedsOnHand, 'seeds', 'entered'),
            input('Year of the packet', bed.row.packetYear, 'year', 'entered'),
            ...(life ? [input('Seed keeps', life.usual, 'years', life.origin, life.source)] : []),
          ]),
    ],
    steps: [
      `${n(bed.plants ?? 0)} ÷ ${n(germination.usual / 100)} = ${n((bed.plants ?? 0) / (germination.usual / 100))}, so ${some(count, 'seed')}`,
      tooOld ? 'the packet is older than seed of this crop keeps, so it is not counted' : null,
      column === 'seeds' ? null : `${n(count)} − ${n(counted)} on hand = ${n(toBuy)}`,
    ],
    ...(plain && column === 'seeds' && bed.plants !== null
      ? { formula: call('SEEDS_FOR', bed.crop, bed.plants) }
      : {}),
  };
}

function expected(bed: BedReckoning, basis: Basis): Explained {
  const { row, yearsOff } = bed;
  const at = bed.yield.ok ? bed.yield.value[basis] : null;
  return {
    rule: `Plants planned × pounds a plant in a ${basis} season. A tree or crown gives nothing before its bearing year; a young one gives less than a grown one, by how much is not published.`,
    inputs: [
      input('Plants planned', row.plants, 'plants', 'entered'),
      ...yieldInputs(bed, basis),
      ...(row.nthYear === null ? [] : [input('Its year', row.nthYear, 'years from planting', 'entered')]),
    ],
    steps: [
      yearsOff > 0
        ? `it does not bear yet: ${some(yearsOff, 'year')} to go`
        : at === null || !isAmount(row.plants)
          ? null
          : `${n(row.plants)} × ${n(at)} = ${n(row.plants * at)} lb`,
    ],
    missing: row.plants === null ? NO_PLANTS : lacksYield(bed),
  };
}

function short(bed: BedReckoning): Explained {
  const now = bed.expected[bed.basis];
  return {
    rule: 'Expected pounds less pounds wanted: below 0 is short, above 0 over.',
    inputs: [
      input('Expected pounds', now, 'pounds', 'computed'),
      input('Pounds wanted', bed.poundsWanted, 'pounds', 'computed'),
    ],
    steps: [
      now === null || bed.poundsWanted === null
        ? null
        : `${n(now)} − ${n(bed.poundsWanted)} = ${n(now - bed.poundsWanted)} lb`,
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
        rule: 'The row’s own yield; else the household’s own on Facts; else learned from its seasons; else published.',
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
