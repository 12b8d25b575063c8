import { figureSource, growing } from '../../facts/index.js';
import { phrase, say, spoken } from '../../words/index.js';
import { measured, measuredIn, perAreaWords, perLengthWords } from '../measured.js';
import type { WorkingInput } from '../types.js';
import { isAmount } from '../words.js';
import { call, type Explained, input, some } from '../working/parts.js';
import type { BedReckoning } from './beds.js';
import { bedArea, bedSpacing, rowFeet } from './ground.js';
import { isSown } from './seeds.js';

export const lacksYield = (bed: BedReckoning): string =>
  bed.yield.ok ? '' : `${bed.yield.problem.message} ${bed.yield.problem.mend}`;
export const NO_POUNDS = phrase(
  'No food asks for this crop yet: name it in Foods under “Crops in it”, with a use per week and a harvest.',
);
export const NO_PLANTS = phrase('Write the plants planned.');

/** Plants that ground and seeds are for, as an input. */
function plantsInput(bed: BedReckoning): WorkingInput {
  return isAmount(bed.row.plants)
    ? input(phrase('Plants planned'), bed.row.plants, phrase('plants'), 'entered')
    : input(phrase('Plants wanted'), bed.plants, phrase('plants'), 'computed');
}

const lacksPlants = (bed: BedReckoning): string =>
  bed.plants === null
    ? `${spoken(NO_PLANTS)} ${bed.poundsWanted === null ? spoken(NO_POUNDS) : lacksYield(bed)}`.trim()
    : '';

export function ground(bed: BedReckoning, column: 'row_feet' | 'bed_area'): Explained {
  const { spacing, plants: count } = bed;
  const rule =
    column === 'row_feet'
      ? say`Plants (planned, else wanted) × inches between them ÷ 12.`
      : say`Plants (planned, else wanted) × inches each way ÷ 144: at the close spacing of a bed where one is published, else by rows.`;
  if (!spacing.ok) {
    return { rule, missing: lacksPlants(bed) || `${spacing.problem.message} ${spacing.problem.mend}` };
  }
  const { inRow, source, origin, acrossSource } = spacing.value;
  const each = column === 'bed_area' ? bedSpacing(spacing.value, bed.row, bed.crop) : null;
  const area = count === null ? null : bedArea(count, spacing.value, bed.row, bed.crop);
  const acrossOrigin = origin === 'own' ? 'computed' : 'published';
  const published = closeOrRows(bed);
  return {
    rule,
    inputs: [
      plantsInput(bed),
      ...(each === null || each.along === inRow
        ? [input(phrase('Between plants in the row'), inRow, phrase('inches'), origin, source)]
        : [
            input(
              phrase('Between plants along the bed'),
              each.along,
              phrase('inches'),
              'published',
              published,
            ),
          ]),
      ...(each === null
        ? []
        : [input(say`Across, ${acrossSource}`, each.across, phrase('inches'), acrossOrigin, published)]),
    ],
    steps: [
      count === null
        ? null
        : column === 'row_feet'
          ? say`${some(count, 'plant')} × ${measuredIn(inRow, 'inch')} a plant ÷ ${perLengthWords()} = ${measured(rowFeet(count, spacing.value), 'feet of row')}`
          : area === null || each === null
            ? null
            : say`${some(count, 'plant')} × ${measuredIn(each.along, 'inch')} × ${measuredIn(each.across, 'inch')} a plant ÷ ${perAreaWords()} = ${measuredIn(area, 'square foot')}`,
    ],
    missing: lacksPlants(bed) || say`No spacing of rows is published here; go by row feet.`,
  };
}

/** Source of the close spacing, or of that of rows. */
function closeOrRows(bed: BedReckoning): string | undefined {
  const of = growing(bed.crop);
  const figure = of.ok ? (of.value.intensiveSpacing ?? of.value.rowSpacing) : null;
  return figure ? figureSource(figure) : undefined;
}

export function seeds(bed: BedReckoning, column: 'seeds' | 'seeds_to_buy'): Explained {
  const rule =
    column === 'seeds'
      ? say`Plants (planned, else wanted) ÷ the share of seeds that come up, once, rounded up.`
      : say`Seeds less those on hand that are not too old.`;
  if (!isSown(bed.dates.how)) {
    return { rule, missing: say`It is started as a ${bed.dates.how}, not from seed.` };
  }
  if (!bed.seeds) return { rule, missing: lacksPlants(bed) };
  if (!bed.seeds.ok) return { rule, missing: `${bed.seeds.problem.message} ${bed.seeds.problem.mend}` };
  const { seeds: count, germination, life, counted, tooOld } = bed.seeds.value;
  const plain = germination.own === null;
  return {
    rule,
    inputs: [
      plantsInput(bed),
      input(
        plain ? phrase('Germination: the least that may be sold') : 'Germination',
        germination.usual,
        phrase('percent'),
        germination.origin,
        germination.source,
      ),
      ...(column === 'seeds'
        ? []
        : [
            input(phrase('Seeds on hand'), bed.row.seedsOnHand, phrase('seeds'), 'entered'),
            input(phrase('Year of the packet'), bed.row.packetYear, phrase('year'), 'entered'),
            ...(life
              ? [input(phrase('Seed keeps'), life.usual, phrase('years'), life.origin, life.source)]
              : []),
          ]),
    ],
    steps: [
      say`${some(bed.plants ?? 0, 'plant')} ÷ ${some(germination.usual / 100, 'plant')} a seed = ${some((bed.plants ?? 0) / (germination.usual / 100), 'seed')}, so ${some(count, 'seed')}`,
      tooOld ? say`the packet is older than seed of this crop keeps, so it is not counted` : null,
      column === 'seeds'
        ? null
        : say`${some(count, 'seed')} − ${some(counted, 'seed')} on hand = ${some(count - counted, 'seed')}${counted > count ? say`, so 0: none is to be bought` : ''}`,
    ],
    ...(plain && column === 'seeds' && bed.plants !== null
      ? { formula: call('SEEDS_FOR', bed.crop, bed.plants) }
      : {}),
  };
}
