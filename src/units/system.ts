import { rewordBy } from '../words/index.js';
import { unitWithId } from './find.js';
import { metricWords } from './metric-words.js';

/** In which measures a household reads its figures. */
export type MeasureSystem = 'US customary' | 'metric';

let system: MeasureSystem = 'US customary';

/** The measures in which figures are written now. */
export const measureSystem = (): MeasureSystem => system;

/**
 * Figures, and the texts about them, are written in these measures from now on. A book says so before it plans,
 * shows or explains: planners reckon in US customary units throughout, and what is read is turned last.
 */
export function measureIn(wanted: MeasureSystem): void {
  if (wanted === system) return;
  system = wanted;
  rewordBy(wanted === 'metric' ? metricWords : null);
}

/** One unit word of ours and the metric one that stands in its place. */
interface Turned {
  readonly unit: string;
  /** How many of it one of the other is. */
  readonly factor: number;
}

const size = (id: string): number => unitWithId(id)!.factor;
const of = (customary: string, metric: string): number => size(customary) / size(metric);

const POUND = of('pound', 'kilogram');
const FOOT = of('foot', 'metre');
const INCH = of('inch', 'centimetre');
const SQUARE_FOOT = of('square foot', 'square metre');
const CUBIC_FOOT = of('cubic foot', 'litre');
const QUART = of('quart', 'litre');
const CUP = of('cup', 'millilitre');
/** A bushel and a litre are both plain space here: nothing is said of what it weighs. */
const BUSHEL = size('bushel') / size('litre');

const WORDS: Readonly<Record<string, readonly [metric: string, factor: number]>> = {
  lb: ['kg', POUND],
  pound: ['kilogram', POUND],
  pounds: ['kilograms', POUND],
  'pounds hanging': ['kilograms hanging', POUND],
  ft: ['m', FOOT],
  foot: ['metre', FOOT],
  feet: ['metres', FOOT],
  'feet of row': ['metres of row', FOOT],
  'row ft': ['row m', FOOT],
  in: ['cm', INCH],
  inch: ['centimetre', INCH],
  inches: ['centimetres', INCH],
  'sq ft': ['m²', SQUARE_FOOT],
  'square foot': ['square metre', SQUARE_FOOT],
  'square feet': ['square metres', SQUARE_FOOT],
  'cu ft': ['litres', CUBIC_FOOT],
  'cubic foot': ['litre', CUBIC_FOOT],
  'cubic feet': ['litres', CUBIC_FOOT],
  bu: ['litres', BUSHEL],
  bushel: ['litre', BUSHEL],
  bushels: ['litres', BUSHEL],
  quart: ['litre', QUART],
  quarts: ['litres', QUART],
  cup: ['millilitre', CUP],
  cups: ['millilitres', CUP],
};

/** `pounds a foot` is made of two units; a jar, a plant, a week are the same in any measures. */
const COMPOUND = /^(.+?)(?: (?:a|each|per|of|between|from|to|in|before|wanted)\b.*)?$/;
const PER = / (a|per|to a) (foot|cubic foot|bushel)(?! jar)\b/;

/** The metric unit that stands for a customary one, whichever way it is written; null where it is none. */
export function metricOf(unit: string): Turned | null {
  const whole = WORDS[unit];
  if (whole) return { unit: whole[0], factor: whole[1] };
  const head = COMPOUND.exec(unit)?.[1];
  const turned = head === undefined ? undefined : WORDS[head];
  if (head === undefined || !turned) return null;
  const rest = unit.slice(head.length);
  const per = PER.exec(rest);
  const below = per ? WORDS[per[2]!]! : null;
  return {
    unit: `${turned[0]}${below && per ? rest.replace(per[0], ` ${per[1]} ${below[0]}`) : rest}`,
    factor: turned[1] / (below?.[1] ?? 1),
  };
}

/** What stands in place of a customary unit in the measures written now; null where it stays. */
export const turnedUnit = (unit: string): Turned | null => (system === 'metric' ? metricOf(unit) : null);
