import { readTypedNumber } from '../../src/book/index.js';
import { type MeasureSystem, roundSig } from '../../src/units/index.js';

const FEET_IN_A_METRE = 1 / 0.3048;

/**
 * Feet from `1,200 ft`, `1200`, `370 m`; metres where the household reads metric measures. A bare number is meant
 * in these. What cannot be read stays as it was typed.
 */
export function readAltitude(text: string, measures: MeasureSystem = 'US customary'): number | string {
  const [, digits, unit] = /^(.*?)\s*(ft\.?|feet|foot|Fuß|['′]|m|metres?|meters?)?$/i.exec(text.trim()) ?? [];
  const number = readTypedNumber(digits ?? '');
  if (number === undefined) return text;
  const metric = measures === 'metric';
  const inMetres = unit === undefined ? metric : /^m/i.test(unit);
  if (inMetres === metric) return number;
  return metric ? roundSig(number / FEET_IN_A_METRE, 6) : Math.round(number * FEET_IN_A_METRE);
}
