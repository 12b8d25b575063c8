import { phrase, say } from '../../words/index.js';
import { inputIn } from '../measured.js';
import type { Working, WorkingInput } from '../types.js';
import { input, working } from '../working/parts.js';
import type { CropGround, GroundCrop, GroundPlan } from './types.js';
import { compared, ground, percent } from './words.js';

const RULE = phrase(
  'The least plants first, then the crops in the household’s order, then the smallest share of any crop as large as possible, then the most servings (each times its weight); whole plants, never more than wanted.',
);

const groundInput = (plan: GroundPlan): WorkingInput =>
  inputIn(input(phrase('Ground there is'), plan.available, plan.measure, 'entered'));

/** The working of the smallest share that any crop gets, in percent. */
export function explainGround(plan: GroundPlan): Working {
  const [used, available] = [ground(plan.used, plan.measure), ground(plan.available, plan.measure)];
  return working(phrase('Smallest share of any crop'), asPercent(plan.leastShare), '%', {
    rule: RULE,
    inputs: [
      groundInput(plan),
      inputIn(input(phrase('Ground wanted'), plan.needed, plan.measure, 'computed')),
    ],
    steps: [
      ...plan.words,
      ...plan.crops.map(({ words }) => words),
      say`Ground used: ${used.n} of ${available.n} ${used.unit}.`,
    ],
    missing: say`Plants wanted of some crop.`,
  });
}

const asPercent = (share: number | null): number | null =>
  share === null ? null : Math.floor(share * 1e4 + 1e-6) / 100;

/** The working of the plants that one crop gets; undefined for a crop that is not in the plan. */
export function explainCropGround(
  plan: GroundPlan,
  crops: readonly GroundCrop[],
  id: string,
): Working | undefined {
  const got = plan.crops.find((each) => each.id === id);
  const crop = crops.find((each) => each.id === id);
  if (!got || !crop) return undefined;
  const food = plan.reckonedBy === 'pounds' ? crop.poundsPerPlant : crop.servingsPerPlant;
  return working(say`Plants of ${crop.name} that the ground gives`, got.plants, phrase('plants'), {
    rule: RULE,
    inputs: [
      input(phrase('Plants wanted'), crop.wanted, phrase('plants'), 'computed'),
      inputIn(input(phrase('Ground a plant'), crop.groundPerPlant, plan.measure, 'computed')),
      groundInput(plan),
      input(
        plan.reckonedBy === 'pounds' ? phrase('Pounds a plant') : phrase('Servings a plant'),
        food,
        plan.reckonedBy ?? '',
        'computed',
      ),
      input(phrase('Weight'), crop.weight ?? null, '', 'own'),
      input(phrase('Place in the order'), got.rank, '', 'own'),
      input(phrase('Least plants'), crop.least ?? null, phrase('plants'), 'own'),
    ],
    steps: cropSteps(plan, crop, got),
  });
}

function cropSteps(plan: GroundPlan, crop: GroundCrop, got: CropGround): (string | null)[] {
  const [each, all] = [crop.groundPerPlant, got.ground].map((amount) => ground(amount, plan.measure));
  const taken = say`${got.plants} plants × ${each!.n} ${each!.unit} a plant = ${all!.n} ${all!.unit}`;
  const [needed, there, unit] = compared(plan.needed, plan.available, plan.measure);
  if (plan.fits) return [say`All the plants wanted fit.`, taken];
  const added = got.plants - got.evenPlants;
  return [
    say`All the plants wanted take ${needed} ${unit}; there are ${there} ${unit}`,
    got.noRoom
      ? say`no room for one plant more: ${got.evenPlants} of ${got.wanted} plants`
      : say`by the even share: ${got.evenPlants} of ${got.wanted} plants`,
    added > 0 ? say`${added} more where ground was left, chosen for the food they give` : null,
    got.wanted > 0 ? say`${got.plants} plants ÷ ${got.wanted} plants = ${percent(got.share)}` : null,
    taken,
    got.words,
  ];
}
