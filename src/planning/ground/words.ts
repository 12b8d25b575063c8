import { andList, roundSig, turnedUnit } from '../../units/index.js';
import { counted, say, spoken } from '../../words/index.js';
import { shortNumber } from '../measure.js';
import type { CropGround, Food, GroundPlan } from './types.js';

/** A share for reading, rounded down, so that only a crop that gets all reads 100 %. */
export function percent(share: number): string {
  const whole = Math.floor(roundSig(share * 100, 9));
  return share > 0 && whole < 1 ? say`less than 1 %` : `${whole} %`;
}

const plants = (n: number): string => counted(n, shortNumber(n), 'plant');

/** A weight in the measures written now. */
function weight(pounds: number): string {
  const turned = turnedUnit('pounds');
  return turned
    ? `${shortNumber(pounds * turned.factor)} ${spoken(turned.unit)}`
    : counted(pounds, shortNumber(pounds), 'pound');
}

/** No tape measures ground closer. */
const DIGITS = 4;

/** An amount of ground in the measures written now, and these measures. */
export function ground(amount: number, measure: string): { readonly n: string; readonly unit: string } {
  const { unit = measure, factor = 1 } = turnedUnit(measure) ?? {};
  return { n: shortNumber(roundSig(amount * factor, DIGITS)), unit };
}

/** What is needed and what there is, to be compared: never told alike where they differ. */
export function compared(
  needed: number,
  available: number,
  measure: string,
): readonly [needed: string, available: string, unit: string] {
  const [a, b] = [ground(needed, measure), ground(available, measure)];
  if (a.n !== b.n || needed === available) return [a.n, b.n, a.unit];
  const { factor = 1 } = turnedUnit(measure) ?? {};
  return [shortNumber(needed * factor), shortNumber(available * factor), a.unit];
}

/** Plants and what is known of their food. */
const upWords = (up: { readonly plants: number } & Food): string =>
  [
    plants(up.plants),
    up.pounds === null ? say`pounds not known` : weight(up.pounds),
    up.servings === null
      ? say`servings not known`
      : counted(up.servings, shortNumber(up.servings), 'serving'),
  ].join(', ');

/** What one crop gets and gives up, in a sentence. */
export function cropWords(crop: Omit<CropGround, 'words'>): string {
  if (crop.wanted === 0) return say`${crop.name}: none wanted.`;
  if (crop.plants === crop.wanted) return say`${crop.name}: all of ${plants(crop.wanted)}.`;
  const got = say`${crop.name}: ${crop.plants} of ${plants(crop.wanted)} (${percent(crop.share)})`;
  const why = crop.noRoom ? say`, no room for one more` : '';
  return say`${got}${why}; given up: ${upWords(crop.givenUp)}.`;
}

function shareWords(plan: Omit<GroundPlan, 'words'>): string[] {
  const without = plan.crops.filter(({ noRoom }) => noRoom).map(({ name }) => name);
  const said: string[] = [];
  if (plan.crops.some(({ rank }) => rank !== null)) {
    said.push(say`The crops were served in the order given; those without a place shared what was left.`);
  }
  if (plan.leastShare !== null && plan.leastShare > 0) {
    said.push(say`Every crop gets at least ${percent(plan.leastShare)} of its plants.`);
  } else {
    const none = plan.crops.filter(({ share }) => share === 0).map(({ name }) => name);
    said.push(say`Not one plant of ${andList(none)}.`);
  }
  if (without.length > 0)
    said.push(say`Once the crops before had theirs, not one plant more of ${andList(without)} could stand.`);
  return said;
}

/** The whole in sentences; `unknown` names crops whose food per plant is not known. */
export function planWords(plan: Omit<GroundPlan, 'words'>, unknown: readonly string[]): string[] {
  const { measure } = plan;
  const [needed, available, unit] = compared(plan.needed, plan.available, measure);
  if (plan.leastShare === null) return [say`No plants are wanted.`];
  if (plan.fits) {
    return [say`All the plants wanted fit: they take ${needed} ${unit} of ${available}.`];
  }
  const said = [
    say`The plants wanted take ${needed} ${unit}, and there are ${available}.`,
    ...shareWords(plan),
    say`Given up in all: ${upWords(plan.givenUp)}.`,
  ];
  if (unknown.length > 0) {
    const what = plan.reckonedBy ?? 'servings';
    said.push(
      say`How many ${what} a plant gives is not known for ${andList(unknown)}: beyond the even share they got only ground that others left.`,
    );
  }
  if (!plan.proved) {
    const what = plan.reckonedBy ?? 'servings';
    said.push(
      plan.mayBeMissing > 0
        ? say`Best found in the time allowed, not proved: at most ${shortNumber(plan.mayBeMissing)} more ${what} (times weight) could be had.`
        : say`Best found in the time allowed; the same might be had on a little less ground.`,
    );
  }
  return said;
}
