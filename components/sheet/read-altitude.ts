import { readNumber } from '../../src/book/index.js';

const FEET_IN_A_METRE = 1 / 0.3048;

/** Feet from `1,200 ft`, `1200`, `370 m`; what cannot be read stays as it was typed. */
export function readAltitude(text: string): number | string {
  const [, digits, metres] =
    /^(.*?)\s*(?:ft\.?|feet|foot|['′]|(m|metres?|meters?))?$/i.exec(text.trim()) ?? [];
  const number = readNumber(digits ?? '');
  if (number === undefined) return text;
  return metres ? Math.round(number * FEET_IN_A_METRE) : number;
}
