import { cropNames } from '../../facts/index.js';
import { ok, type Result, refuse } from '../../problem.js';
import { containerWithId, findContainer, orList } from '../../units/index.js';
import { phrase, say, spoken } from '../../words/index.js';
import { WAYS_KEPT, type WayKept } from '../types.js';
import { cropKey } from './words.js';

/** Figures of a crop that a household may have its own of. */
export const CROP_FIGURES = [
  phrase('yield'),
  phrase('weight of one'),
  phrase('spacing'),
  phrase('days to maturity'),
  phrase('weeks indoors'),
  phrase('weeks from the last frost'),
  phrase('germination'),
  phrase('seed life'),
  phrase('years to bearing'),
  phrase('bushel weight'),
] as const;
export type CropFigure = (typeof CROP_FIGURES)[number];

/** A figure by name: of what, and which. */
export type FigureName =
  | { readonly of: string; readonly what: CropFigure }
  | {
      readonly of: string;
      readonly what: 'pounds per container';
      readonly container: string;
      readonly way: WayKept;
    }
  | { readonly of: string; readonly what: 'months of best quality'; readonly way: WayKept }
  | { readonly of: 'freezer'; readonly what: 'pounds per cubic foot' }
  | { readonly of: 'hen'; readonly what: 'eggs a year' };

export const FREEZER: FigureName = { of: phrase('freezer'), what: phrase('pounds per cubic foot') };
export const HEN: FigureName = { of: 'hen', what: phrase('eggs a year') };

/** As it is stored, in every language: 'tomato, yield', 'tomato, pounds per quart jar, canned'. */
export function figureText(name: FigureName): string {
  switch (name.what) {
    case 'pounds per container':
      return `${name.of}, pounds per ${name.container}, ${name.way}`;
    case 'months of best quality':
      return `${name.of}, months of best quality, ${name.way}`;
    default:
      return `${name.of}, ${name.what}`;
  }
}

const wayOf = (text: string | undefined, usual: WayKept): WayKept | null =>
  text === undefined || text === ''
    ? usual
    : (WAYS_KEPT.find((way) => way === text || way.replace(/[- ]/g, '') === text.replace(/[- ]/g, '')) ??
      null);

/** Other words for the same figure. */
const ALSO: Readonly<Record<string, CropFigure>> = {
  'yield per plant': 'yield',
  'pounds a plant': 'yield',
  'pounds per plant': 'yield',
  'pounds each': phrase('weight of one'),
  'spacing in the row': 'spacing',
  days: phrase('days to maturity'),
  'least germination': 'germination',
  'pounds per bushel': phrase('bushel weight'),
  'pounds a bushel': phrase('bushel weight'),
};

function named(of: string, what: string, way: string | undefined): FigureName | null {
  const crop = cropKey(of);
  if (crop === null) return null;
  if (what === 'pounds per cubic foot' || what === 'pounds a cubic foot')
    return /freezer/.test(of) ? FREEZER : null;
  if (what === 'eggs a year' || what === 'eggs per year') return /hen/.test(of) ? HEN : null;
  if (what === 'months of best quality' || what === 'months') {
    const kept = wayOf(way, 'canned');
    return kept && { of: crop, what: 'months of best quality', way: kept };
  }
  // Only what the table itself holds: every object has a 'constructor' besides.
  const also = Object.hasOwn(ALSO, what) ? ALSO[what] : undefined;
  const plain = CROP_FIGURES.find((one) => one === what) ?? also;
  if (plain) return way === undefined ? { of: crop, what: plain } : null;
  const container = /^pounds (?:per|a|an|in a) (.+)$/.exec(what)?.[1];
  const found = container === undefined ? null : findContainer(container);
  const kept = wayOf(way, found?.ok && found.value.family === 'bag' ? 'frozen' : 'canned');
  return found?.ok && kept
    ? { of: crop, what: 'pounds per container', container: found.value.id, way: kept }
    : null;
}

/**
 * Reads 'tomato, yield' and the like, without case. Refused: `unknown-figure`, with what can be written.
 * Whether anything is published under the name is another question.
 */
export function readFigureName(text: string): Result<FigureName> {
  const parts = text
    .toLowerCase()
    .split(',')
    .map((part) => part.trim().replace(/\s+/g, ' '));
  // A crop may have a comma of its own: 'corn, sweet, yield'.
  for (const first of [1, 2]) {
    const [what, way, ...more] = parts.slice(first);
    if (what === undefined || more.length > 0) continue;
    const name = named(parts.slice(0, first).join(', '), what, way);
    if (name) return ok(name);
  }
  return refuse(
    'unknown-figure',
    text.trim() === ''
      ? say`The figure is not named.`
      : say`No plan uses a figure called “${text.slice(0, 60)}”.`,
    say`Write the crop, a comma and one of: ${orList(CROP_FIGURES.map(spoken))}; or “tomato, pounds per quart jar, canned”.`,
  );
}

/** One text for one figure, whichever way it was written. */
export const figureKey = (name: FigureName): string => figureText(name).toLowerCase();

let known: readonly string[] | null = null;

/** The figures to choose from on Facts: each crop's own, pounds per quart and pint jar, the freezer and the hen. */
export function knownFigures(): readonly string[] {
  if (known) return known;
  known = [
    ...cropNames().flatMap((of) => [
      ...CROP_FIGURES.map((what) => figureText({ of, what })),
      ...(['quart jar', 'pint jar'] as const)
        .filter((container) => containerWithId(container) !== undefined)
        .map((container) => figureText({ of, what: 'pounds per container', container, way: 'canned' })),
    ]),
    figureText(FREEZER),
    figureText(HEN),
  ];
  return known;
}
