import { ok, type Result, refuse } from '../../problem.js';
import { say } from '../../words/index.js';
import { shortNumber } from '../measure.js';
import { isAmount, MOST } from '../words.js';
import { GROUND_MEASURES, type Ground, type GroundCrop } from './types.js';

/** More plants of one crop than this are a slip of the key. */
const MOST_PLANTS = 1e6;
const MOST_CROPS = 200;
/** Ground of one plant, in feet of row or square feet: from an eighth of an inch each way to a very large tree. */
const LEAST_GROUND = 1e-4;
const MOST_GROUND = 1e4;
const MOST_WEIGHT = 1e6;

const isWhole = (n: number): boolean => Number.isInteger(n) && n >= 0 && n <= MOST_PLANTS;

const plantsProblem = (crop: GroundCrop, what: string, n: number) =>
  n > MOST_PLANTS && n !== Number.POSITIVE_INFINITY
    ? refuse(
        'too-many-plants',
        say`${what} of ${crop.name} is ${shortNumber(n)}: more than a million plants of one crop.`,
        say`Check the number: a yield per plant that is far too small gives such numbers.`,
        { row: crop.id },
      )
    : refuse(
        'bad-plants',
        say`${what} of ${crop.name} is no whole number from 0 up.`,
        say`Give whole plants, as in 12.`,
        { row: crop.id },
      );

const perPlantProblem = (crop: GroundCrop, what: string) =>
  refuse(
    'bad-food-per-plant',
    say`${what} a plant of ${crop.name} is no number from 0 up.`,
    say`Give a number, or leave it blank when it is not known.`,
    { row: crop.id },
  );

function checkCrop(crop: GroundCrop): Result<GroundCrop> {
  const where = { row: crop.id };
  const least = crop.least ?? 0;
  const rank = crop.rank ?? 1;
  if (!isWhole(crop.wanted)) return plantsProblem(crop, 'The number of plants wanted', crop.wanted);
  if (!isWhole(least)) return plantsProblem(crop, 'The least number of plants', least);
  if (least > crop.wanted) {
    return refuse(
      'least-over-wanted',
      say`At least ${least} plants of ${crop.name} are asked for, and only ${crop.wanted} are wanted.`,
      say`Lower the least, or raise the plants wanted.`,
      where,
    );
  }
  if (!(crop.groundPerPlant >= LEAST_GROUND && crop.groundPerPlant <= MOST_GROUND)) {
    return refuse(
      'bad-ground-per-plant',
      say`The ground that a plant of ${crop.name} takes is no number from ${LEAST_GROUND} to ${shortNumber(MOST_GROUND)}.`,
      say`Give its spacing; where none is published, use your own.`,
      where,
    );
  }
  if (crop.servingsPerPlant !== null && !isAmount(crop.servingsPerPlant))
    return perPlantProblem(crop, 'Servings');
  if (crop.poundsPerPlant !== null && !isAmount(crop.poundsPerPlant)) return perPlantProblem(crop, 'Pounds');
  const weight = crop.weight ?? 1;
  if (!(weight >= 0 && weight <= MOST_WEIGHT)) {
    return refuse(
      'bad-weight',
      say`The weight of ${crop.name} is no number from 0 to a million.`,
      say`Leave it blank for 1, or give 2 for a crop whose servings count twice.`,
      where,
    );
  }
  if (!(rank > 0 && rank <= MOST)) {
    return refuse(
      'bad-rank',
      say`The place of ${crop.name} in the order is no number above 0.`,
      say`Give 1 to the crop that goes first, 2 to the next; leave the others blank.`,
      where,
    );
  }
  return ok(crop);
}

/** The crops and the ground as they are, or what is wrong with the first that cannot be reckoned with. */
export function checkGround(crops: readonly GroundCrop[], ground: Ground): Result<readonly GroundCrop[]> {
  if (!GROUND_MEASURES.includes(ground.measure)) {
    return refuse(
      'bad-ground-measure',
      say`Ground is measured in feet of row or in square feet of bed.`,
      say`Choose one of the two on the Household sheet.`,
    );
  }
  if (!(isAmount(ground.amount) && ground.amount > 0)) {
    return refuse(
      'no-ground',
      say`The ground there is must be a number of ${ground.measure} above 0.`,
      say`Enter it on the Household sheet; leave it blank there to plan without a limit.`,
    );
  }
  if (crops.length > MOST_CROPS) {
    return refuse(
      'too-many-crops',
      say`Ground can be shared among ${MOST_CROPS} crops; there are ${crops.length}.`,
      say`Put plantings of the same crop together.`,
    );
  }
  const seen = new Set<string>();
  for (const crop of crops) {
    if (seen.has(crop.id)) {
      return refuse(
        'crop-twice',
        say`${crop.name} stands twice among the crops.`,
        say`Put its plants together in one row.`,
        { row: crop.id },
      );
    }
    seen.add(crop.id);
    const checked = checkCrop(crop);
    if (!checked.ok) return checked;
  }
  return ok(crops);
}
