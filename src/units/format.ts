import { localNumber, spoken } from '../words/index.js';
import { containerWithId, unitWithId } from './find.js';
import { roundSig } from './rounding.js';

/** A word for what is counted, with its plural; units and containers are such. */
export interface Labelled {
  readonly id: string;
  readonly plural: string;
}

function decimals(size: number): number {
  if (size >= 100) return 0;
  if (size >= 10) return 1;
  if (size >= 1) return 2;
  return size >= 0.01 ? 3 : Math.min(12, 1 - Math.floor(Math.log10(size)));
}

function plainNumber(n: number): string {
  const clean = roundSig(n);
  if (clean === 0) return '0';
  const text = String(Number(clean.toFixed(decimals(Math.abs(clean)))));
  // String() turns to powers of ten for very small and very great numbers; nobody at a table reads those.
  return text.includes('e')
    ? clean.toLocaleString('en-US', { maximumSignificantDigits: 3, useGrouping: false })
    : text;
}

function labelled(text: string, singular: boolean, label: string | Labelled | undefined): string {
  if (label === undefined || label === '') return text;
  const known = typeof label === 'string' ? (unitWithId(label) ?? containerWithId(label)) : label;
  const word = spoken(known ? (singular ? known.id : known.plural) : String(label));
  return `${text} ${word}`;
}

/**
 * `n` as people write it, with its unit: '17.7 quarts', '1 quart', '0.125 cups'. Whole from 100 up, one
 * decimal from 10, two from 1, three below; no trailing zeros and no powers of ten. `label` is the id of a
 * unit or container (set in the plural as needed), a thing with `id` and `plural`, or any words, which
 * stay as they are. A number that is none gives ''.
 */
export function formatAmount(n: number, label?: string | Labelled): string {
  if (!Number.isFinite(n)) return '';
  const text = plainNumber(n);
  return labelled(localNumber(text), text === '1' || text === '-1', label);
}

const PARTS: readonly (readonly [number, string])[] = [
  [0, ''],
  [1 / 8, '⅛'],
  [1 / 4, '¼'],
  [1 / 3, '⅓'],
  [3 / 8, '⅜'],
  [1 / 2, '½'],
  [5 / 8, '⅝'],
  [2 / 3, '⅔'],
  [3 / 4, '¾'],
  [7 / 8, '⅞'],
  [1, ''],
];

/** How near a number must be to a fraction to be written as one: 17.67 is 17⅔, 17.7 is not. */
const NEAR = 0.005;

/**
 * `n` in halves, quarters, eighths or thirds where it is within 0.005 of one and below a million ('17⅔ quarts', '½ quart'),
 * else as `formatAmount` writes it.
 */
export function asFraction(n: number, label?: string | Labelled): string {
  if (!Number.isFinite(n)) return '';
  const size = Math.abs(n);
  if (size >= 1e6) return formatAmount(n, label);
  const whole = Math.floor(size);
  const part = PARTS.find(([value]) => Math.abs(size - whole - value) <= NEAR);
  if (!part || (size > 0 && size < NEAR)) return formatAmount(n, label);
  const units = whole + (part[0] === 1 ? 1 : 0);
  const text = `${units === 0 && part[1] !== '' ? '' : units}${part[1]}`;
  const signed = n < 0 && text !== '0' ? `-${text}` : text;
  return labelled(signed, units + (part[0] % 1) <= 1 && text !== '0', label);
}
