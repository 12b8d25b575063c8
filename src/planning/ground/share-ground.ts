import { ok, type Result, refuse } from '../../problem.js';
import { say } from '../../words/index.js';
import { shortNumber } from '../measure.js';
import { checkGround } from './check.js';
import { evenShare } from './even-share.js';
import { mostFood } from './most-food.js';
import { groundPlan, type Shared } from './plan.js';
import { loadSolver, type Solver } from './solver.js';
import type { Ground, GroundCrop, GroundPlan, Reckoned, ShareOptions } from './types.js';

/** Sums of ground are held against the ground there is with this much grace, for the crumbs of binary arithmetic. */
const GRACE = 1e-9;
const MILLISECONDS = 1000;

/** What one plant is worth when plants are chosen by the food they give; 0 where that is not known. */
export function worthOf(crop: GroundCrop, by: Reckoned): number {
  const food = by === 'servings' ? crop.servingsPerPlant : by === 'pounds' ? crop.poundsPerPlant : null;
  return (food ?? 0) * (crop.weight ?? 1);
}

/** Servings, unless only the pounds of all crops are known. */
function reckonedBy(crops: readonly GroundCrop[]): Reckoned {
  const wanting = crops.filter(({ wanted }) => wanted > 0);
  if (wanting.every(({ servingsPerPlant }) => servingsPerPlant !== null)) return 'servings';
  if (wanting.every(({ poundsPerPlant }) => poundsPerPlant !== null)) return 'pounds';
  if (wanting.some(({ servingsPerPlant }) => servingsPerPlant !== null)) return 'servings';
  return wanting.some(({ poundsPerPlant }) => poundsPerPlant !== null) ? 'pounds' : null;
}

/** Crops by their place in the order, first to last; those without one come last, together. */
function inOrder(crops: readonly Shared[]): Shared[][] {
  const places = new Map<number, Shared[]>();
  for (const each of crops) {
    const place = each.crop.rank ?? Number.POSITIVE_INFINITY;
    const group = places.get(place);
    if (group) group.push(each);
    else places.set(place, [each]);
  }
  return [...places].sort(([a], [b]) => a - b).map(([, group]) => group);
}

const groundOf = (crops: readonly Shared[]): number =>
  crops.reduce((sum, { crop, plants }) => sum + crop.groundPerPlant * plants, 0);

const wantsMore = ({ crop, plants }: Shared, left: number): boolean =>
  plants < crop.wanted && crop.groundPerPlant <= left;

/** Raises crops to the greatest share that all of them can have in `left` more ground. False if the solver fails. */
function raiseEvenly(crops: readonly Shared[], left: number, solver: Solver): boolean {
  const beds = crops.map(({ crop, plants }) => ({
    size: crop.groundPerPlant,
    wanted: crop.wanted,
    least: plants,
  }));
  const plants = evenShare(beds, left + groundOf(crops), solver);
  if (plants === null) return false;
  crops.forEach((each, i) => {
    each.plants = plants[i] ?? each.plants;
  });
  return true;
}

const solverFailed = () =>
  refuse(
    'solver-failed',
    say`The ground could not be shared out: the arithmetic did not come to an end.`,
    say`Check for numbers that are very large or very small; give the crops an order to share step by step.`,
  );

/**
 * Shares ground that is too small among crops, in whole plants, never more than wanted:
 *
 * 1. each crop gets its least; what is left goes to the crops in the household's order, one place after another,
 *    so that a crop gets ground only where no plant of an earlier one can stand;
 * 2. within a place of the order (crops without one share the last), the smallest share of any crop is made as large
 *    as possible, where share = plants ÷ wanted; a crop of which not one plant more can stand is left out of it;
 * 3. then the servings, each times its crop's weight, are made as many as possible (pounds, where servings are not
 *    known of all crops and pounds are); among equals of one place the least ground is taken when later ones wait;
 * 4. ground still left goes to crops whose food is not known or weighs nothing, evenly.
 *
 * Resolves with a `Problem` for numbers that cannot be reckoned with, when the leasts do not fit
 * (`least-over-ground`), or when the solver's file cannot be loaded (`solver-not-loaded`); never rejects.
 * The solver is loaded only when not all fits.
 */
export async function shareGround(
  crops: readonly GroundCrop[],
  ground: Ground,
  options: ShareOptions = {},
): Promise<Result<GroundPlan>> {
  const checked = checkGround(crops, ground);
  if (!checked.ok) return checked;
  const by = reckonedBy(crops);
  const room = ground.amount * (1 + GRACE);
  const all = crops.map(
    (crop): Shared => ({ crop, plants: crop.wanted, evenPlants: crop.wanted, noRoom: false }),
  );
  if (groundOf(all) <= room) return ok(groundPlan(all, ground, by, true, 0));

  for (const each of all) each.plants = each.crop.least ?? 0;
  const least = groundOf(all);
  if (least > room) {
    return refuse(
      'least-over-ground',
      say`The least plants asked for take ${shortNumber(least)} ${ground.measure}, and there are ${shortNumber(ground.amount)}.`,
      say`Lower the least of some crops, or find more ground.`,
    );
  }
  let solver: Solver;
  try {
    solver = await loadSolver();
  } catch {
    return refuse(
      'solver-not-loaded',
      say`The part of Croftsheet that shares out ground could not be loaded.`,
      say`Check the connection and try again.`,
    );
  }
  const end = performance.now() + (options.milliseconds ?? MILLISECONDS);
  const timeLeft = () => end - performance.now();

  let proved = true;
  let mayBeMissing = 0;
  const places = inOrder(all);
  for (const [place, group] of places.entries()) {
    const left = () => room - groundOf(all);
    for (const each of group) each.noRoom = each.plants < each.crop.wanted && !wantsMore(each, left());
    const open = group.filter((each) => wantsMore(each, left()));
    if (open.length > 0 && !raiseEvenly(open, left(), solver)) return solverFailed();
    for (const each of group) each.evenPlants = each.plants;

    const more = open.filter((each) => wantsMore(each, left()) && worthOf(each.crop, by) > 0);
    if (more.length > 0) {
      const items = more.map(({ crop, plants }) => ({
        size: crop.groundPerPlant,
        value: worthOf(crop, by),
        most: Math.min(crop.wanted - plants, Math.floor(left() / crop.groundPerPlant)),
      }));
      const choice = mostFood(items, left(), solver, timeLeft, place < places.length - 1);
      more.forEach((each, i) => {
        each.plants += choice.plants[i] ?? 0;
      });
      proved &&= choice.proved;
      mayBeMissing += choice.mayBeMissing;
    }
    if (!fillEvenly(open, left, solver)) return solverFailed();
  }
  return ok(groundPlan(all, ground, by, proved, mayBeMissing));
}

/** Ground that is left goes, evenly, to whatever can still stand on it. */
function fillEvenly(group: readonly Shared[], left: () => number, solver: Solver): boolean {
  for (;;) {
    const open = group.filter((each) => wantsMore(each, left()));
    if (open.length === 0) return true;
    const before = groundOf(open);
    if (!raiseEvenly(open, left(), solver)) return false;
    if (groundOf(open) > before) continue;
    // Not all of them can have more, but one can: the least covered, or the first of several.
    const next = open.reduce((a, b) => (b.plants / b.crop.wanted < a.plants / a.crop.wanted ? b : a));
    next.plants += 1;
  }
}
