import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { findCrop, kin } from './crops.js';
import raw from './data/water.json';
import { figureFrom } from './figure.js';
import type { Figure, RawFigure } from './figure-types.js';

export type WaterState = 'fresh' | 'dried' | 'freeze-dried';

/** Water and waste of a food. */
export interface WaterContent {
  readonly crop: string;
  readonly state: WaterState;
  /** 'peeled', 'shelled', 'with skin'; '' where there is only one. */
  readonly form: string;
  /** Grams of water in 100 g, of the part that is eaten. */
  readonly water: Figure;
  /** Percent of the weight as bought that is not eaten: peel, pods, bone. */
  readonly refuse: Figure;
}

interface RawWater {
  readonly crop: string;
  readonly form?: string;
  readonly state?: string;
  readonly water: RawFigure;
  readonly refuse: RawFigure;
}

const ALL: readonly WaterContent[] = (raw as unknown as readonly RawWater[]).flatMap((row) => {
  const water = figureFrom(row.water, 'grams of water per 100 g');
  const waste = figureFrom(row.refuse, 'percent refuse');
  if (!water || !waste) return [];
  const state = (row.state ?? 'fresh') as WaterState;
  return [{ crop: row.crop, state, form: row.form ?? '', water, refuse: waste }];
});

/** Every form of a crop in the water table; of the crop that it is like where it has none of its own. */
export function waterForms(crop: string): readonly WaterContent[] {
  const found = findCrop(crop);
  if (!found.ok) return [];
  for (const one of kin(found.value)) {
    const forms = ALL.filter((row) => row.crop === one.name);
    if (forms.length > 0) return forms;
  }
  return [];
}

/**
 * Water of a crop, in its plainest form unless `form` names another ('peeled'), from USDA Standard Reference.
 * Refused: `unknown-crop`, or `nothing-published`, which names what there is.
 */
export function waterContent(crop: string, state: WaterState = 'fresh', form?: string): Result<WaterContent> {
  const found = findCrop(crop);
  if (!found.ok) return found;
  const forms = waterForms(crop);
  const here = forms.filter((one) => one.state === state);
  const one = form === undefined ? here[0] : here.find((each) => each.form === form.trim().toLowerCase());
  if (one) return ok(one);
  const what = `${found.value.name}${form === undefined ? '' : `, ${form.trim()}`}, ${state}`;
  const known = forms
    .map((each) => (each.form === '' ? each.state : `${each.form} (${each.state})`))
    .join(', ');
  return refuse(
    'nothing-published',
    say`no water content is published here for ${what}.`,
    known === '' ? say`Enter your own dried yield.` : say`Known: ${known}.`,
  );
}

/** Every row of the water table. */
export const allWater = (): readonly WaterContent[] => ALL;
