import {
  altitudePressure,
  canningRules,
  caution,
  findCrop,
  foodGroup,
  type Gauge,
  germanMeant,
  nearCrops,
  pressureGroup,
  sourceText,
} from '../../facts/index.js';
import { excerpt, ok, type Result, refuse } from '../../problem.js';
import { phrase, say, spoken } from '../../words/index.js';
import { declareExplained, type Explained } from '../declare.js';
import { told } from '../tell.js';
import { lookedUp } from '../tell-figure.js';

/** Said of every food that the pressures of low-acid foods do not hold for. */
export const SEE_PROCESS = phrase('see its tested process');

const SOURCE = sourceText('aib539');

const GAUGES: readonly Gauge[] = [phrase('dial'), phrase('weighted')];

const gaugeNamed = (text: string): Gauge | null => {
  const words = text
    .toLowerCase()
    .replace(/\bgauge\b/g, '')
    .trim();
  return GAUGES.find((each) => each === words) ?? germanMeant('words', GAUGES, words) ?? null;
};

/** A food that neither crops nor groups know: a slip of the key gets its nearest names. */
function unknown(food: string): Result<Explained> | null {
  if (foodGroup(food).ok) return null;
  const crop = findCrop(food);
  return !crop.ok && nearCrops(food).length > 0 ? crop : null;
}

export const ALTITUDE_PRESSURE = declareExplained({
  name: 'ALTITUDE_PRESSURE',
  group: 'Putting up',
  summary: 'The canner pressure for a low-acid food at an altitude.',
  arguments: [
    { name: 'food', kind: 'food', help: 'a vegetable, meat, poultry, dry bean or mushroom' },
    {
      name: 'altitude_ft',
      kind: 'number',
      least: 0,
      most: 30000,
      help: 'feet above sea level; 0 for places at or below it',
      unit: 'feet',
    },
    {
      name: 'gauge',
      kind: 'text',
      help: '"dial" or "weighted": they step at different altitudes',
      values: GAUGES,
    },
  ],
  gives: `pounds per square inch; '${SEE_PROCESS}' for foods that are not low-acid`,
  unit: 'pounds per square inch',
  details: [
    'For low-acid foods only. Fruits, tomatoes, figs, soups and mixtures have processes of their own.',
    'It gives no times, and nothing above 8,000 ft.',
  ],
  example: { formula: '=ALTITUDE_PRESSURE("green beans", 1500, "dial")', gives: '11' },
  source: SOURCE,
  caution: `${caution('tested-process').text} ${caution('low-acid').text}`,
  steps: ([food, altitude], { answer }) => lookedUp(say`${food} at ${told(altitude)} feet`, answer),
  explain: ([food, altitude, gauge]) => {
    const named = gaugeNamed(gauge);
    if (!named)
      return refuse(
        'unknown-gauge',
        say`no gauge called “${excerpt(gauge)}”.`,
        say`Write "dial" or "weighted".`,
      );
    const slip = unknown(food);
    if (slip) return slip;
    const group = pressureGroup(food);
    if (!group.ok && group.problem.code !== 'see-tested-process') return group;
    const notes = canningRules(food).map((rule) => spoken(rule.text));
    if (!group.ok || group.value !== 'low-acid') {
      return ok({ value: SEE_PROCESS, unit: '', source: SOURCE, origin: 'published', notes });
    }
    const found = altitudePressure('low-acid', altitude, named);
    if (!found.ok) return found;
    const { psi, fromFt, toFt, source } = found.value;
    const band = say`for ${fromFt === 0 ? 0 : fromFt + 1} to ${toFt} ft, ${named} gauge`;
    return ok({
      value: psi,
      unit: 'pounds per square inch',
      source: sourceText(source),
      origin: 'published',
      notes: [band, ...notes],
    });
  },
});
