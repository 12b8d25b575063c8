import { excerpt, ok, type Result, refuse } from '../problem.js';
import { localNumber, phrase, say, spoken } from '../words/index.js';
import { canning } from './canning.js';
import { cropCalled, kin } from './crops.js';
import raw from './data/pressure.json';
import { figureFrom } from './figure.js';
import type { Figure, Reading, SourceId } from './figure-types.js';
import { groupOf } from './groups.js';
import { canningRules } from './rules.js';

/** Foods with a table of pressures: low-acid foods, and fruits by pressure. */
export type PressureGroup = 'low-acid' | 'fruit';
/** A dial gauge can be read to the pound; a weighted gauge has set weights. They step at different altitudes. */
export type Gauge = 'dial' | 'weighted';

/** Gauge pressure in pounds per square inch (psi), and the altitudes that it holds for. */
export interface AltitudePressure {
  readonly psi: number;
  /** Feet; the band is above `fromFt` (0 included) up to and with `toFt`. */
  readonly fromFt: number;
  readonly toFt: number;
  readonly source: SourceId;
  readonly certainty: Reading['certainty'];
}

const MEND = phrase('Follow the current tested process for the food, at your altitude.');

/**
 * Canner pressure at an altitude, in psi, from the USDA tables: 0 to 8,000 ft, dial or weighted gauge.
 * To be shown with the caution 'tested-process'. Refused: `bad-altitude` (not a number, or below sea
 * level), `altitude-not-in-tables` (above 8,000 ft), `unknown-gauge`, `no-pressure-table`.
 */
export function altitudePressure(
  group: PressureGroup,
  altitudeFt: number,
  gauge: Gauge,
): Result<AltitudePressure> {
  const table = raw.groups[group];
  if (!table)
    return refuse('no-pressure-table', say`there is no pressure table for ${group} foods.`, spoken(MEND));
  const bands = table[gauge];
  if (!bands) {
    return refuse(
      'unknown-gauge',
      say`no gauge called "${excerpt(String(gauge))}".`,
      say`Write dial or weighted; they step at different altitudes.`,
    );
  }
  if (!Number.isFinite(altitudeFt) || altitudeFt < 0) {
    return refuse(
      'bad-altitude',
      say`the altitude is not a number of feet from 0 up.`,
      say`Write feet above sea level.`,
    );
  }
  let from = 0;
  for (const [to = 0, psi = 0] of bands) {
    if (altitudeFt <= to) {
      return ok({ psi, fromFt: from, toFt: to, source: raw.source, certainty: 'published' });
    }
    from = to;
  }
  return refuse(
    'altitude-not-in-tables',
    say`the tables end at ${localNumber(raw.above.toLocaleString('en-US'))} ft: nothing is published here for higher places.`,
    say`Ask your food-safety authority for a process at your altitude.`,
  );
}

// Fish is left out: the table as looked up names meats and poultry only.
const MEATS = new Set(['beef', 'veal', 'pork', 'lamb', 'game', 'meat', 'ground meat', 'poultry']);

/**
 * The pressure table a food belongs to: 'low-acid' for the vegetables, meats, poultry, dry beans and mushrooms
 * that have canning figures here; 'fruit' for the fruits with a pressure process. Tomatoes, figs and anything
 * else answer 'see its tested process', and foods with no tested process say so.
 * Refused: `no-tested-process`, `see-tested-process`.
 */
export function pressureGroup(food: string): Result<PressureGroup> {
  const stop = canningRules(food).find(
    (rule) => rule.verdict === 'no process' || rule.verdict === 'not recommended',
  );
  if (stop)
    return refuse('no-tested-process', `${food.trim()}: ${spoken(stop.text)}`, say`Keep it another way.`);
  const crop = cropCalled(food);
  if (crop && kin(crop).some((one) => raw.fruits.includes(one.name))) return ok('fruit');
  const group = groupOf(food);
  if (group !== null && (MEATS.has(group) || (!crop && group === 'dry legume'))) return ok('low-acid');
  const plain = crop && group !== 'prepared' ? canning(crop.name) : null;
  if (plain?.ok && plain.value.acid === 'low-acid') return ok('low-acid');
  return refuse(
    'see-tested-process',
    say`${food.trim() || phrase('the food')}: see its tested process for the pressure.`,
    spoken(MEND),
  );
}

/** Upper ends in feet of the altitude bands of boiling-water canning; above the last is one more band. */
export const boilingWaterBands = (): readonly number[] => raw.boilingBands.feet;

/** Jars to a usual canner load: 7 quarts, or 9 pints. Other sizes depend on the canner. */
export const usualLoad = (): { readonly quarts: number; readonly pints: number; readonly source: SourceId } =>
  raw.loads;

/** The pressure tables row by row, for the list of all figures. */
export function pressureFigures(): readonly (readonly [
  group: string,
  name: string,
  figure: Figure | null,
])[] {
  return Object.entries(raw.groups).flatMap(([group, table]) =>
    Object.entries(table).flatMap(([gauge, bands]) =>
      bands.map(([to = 0, psi = 0], i) => {
        const from = bands[i - 1]?.[0] ?? 0;
        return [
          group,
          `${gauge} gauge, ${from} to ${to} ft`,
          figureFrom([[raw.source, psi]], 'psi'),
        ] as const;
      }),
    ),
  );
}
