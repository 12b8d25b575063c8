import { distance } from 'fastest-levenshtein';
import { excerpt, MAX_NAME, ok, type Result, refuse } from '../problem.js';
import { phrase, say } from '../words/index.js';
import { BINARY_PREFIXES, CODE_GROUPS, type CodeRow, DECIMAL_PREFIXES } from './convert-code-table.js';
import { findUnit } from './find.js';
import { orList } from './names.js';
import { roundSig } from './rounding.js';

interface Code {
  readonly group: string;
  readonly row: CodeRow;
}

interface Scaled {
  readonly group: string;
  readonly size: number;
  readonly zero: number;
}

const byCode = new Map<string, Code>();
for (const [group, rows] of Object.entries(CODE_GROUPS)) {
  for (const row of rows) for (const code of row.codes.split(' ')) byCode.set(code, { group, row });
}

/** Groups as a refusal names them. */
const OF_GROUP: Readonly<Record<string, string>> = {
  area: phrase('of area'),
  energy: phrase('of energy'),
  force: phrase('of force'),
  information: phrase('of information'),
  length: phrase('of length'),
  'magnetic flux density': phrase('of magnetic flux density'),
  mass: phrase('of mass'),
  power: phrase('of power'),
  pressure: phrase('of pressure'),
  speed: phrase('of speed'),
  temperature: phrase('of temperature'),
  time: phrase('of time'),
  volume: phrase('of volume'),
};

/** Every code without prefixes, by group. */
export function convertCodes(): Readonly<Record<string, readonly string[]>> {
  return Object.fromEntries(
    Object.entries(CODE_GROUPS).map(([group, rows]) => [group, rows.flatMap((row) => row.codes.split(' '))]),
  );
}

const scaled = ({ group, row }: Code, by = 1): Scaled => ({
  group,
  size: row.size * by,
  // A prefix makes the degree smaller, so more of them stand at 0 °C: 273,150 mK.
  zero: (row.zero ?? 0) / by,
});

function read(code: string): Scaled | undefined {
  // A code that stands by itself wins over a prefixed one: 'pc' is the parsec, 'min' the minute.
  const bare = byCode.get(code);
  if (bare) return scaled(bare);
  for (const length of [2, 1]) {
    const prefix = code.slice(0, length);
    const rest = byCode.get(code.slice(length));
    if (!rest) continue;
    const ten = Object.hasOwn(DECIMAL_PREFIXES, prefix) ? DECIMAL_PREFIXES[prefix] : undefined;
    if (ten !== undefined && rest.row.prefix) return scaled(rest, Number(`1e${ten * rest.row.prefix}`));
    const two = Object.hasOwn(BINARY_PREFIXES, prefix) ? BINARY_PREFIXES[prefix] : undefined;
    if (two !== undefined && rest.row.binary) return scaled(rest, 2 ** two);
  }
  return undefined;
}

/** Codes of ours for units that people may name in full. */
const CODE_OF_UNIT: Readonly<Record<string, string>> = {
  teaspoon: 'tsp',
  tablespoon: 'tbs',
  'fluid ounce': 'oz',
  cup: 'cup',
  pint: 'pt',
  quart: 'qt',
  gallon: 'gal',
  millilitre: 'ml',
  litre: 'l',
  'cubic inch': 'in3',
  'cubic foot': 'ft3',
  bushel: 'bushel',
  ounce: 'ozm',
  pound: 'lbm',
  gram: 'g',
  kilogram: 'kg',
  ton: 'ton',
  inch: 'in',
  foot: 'ft',
  yard: 'yd',
  centimetre: 'cm',
  metre: 'm',
  'square foot': 'ft2',
  'square yard': 'yd2',
  acre: 'uk_acre',
  'square metre': 'm2',
};

function unknown(code: string) {
  const lower = code.toLowerCase();
  const sameLetters = [...byCode.keys()].filter((known) => known.toLowerCase() === lower);
  const unit = findUnit(code);
  const named = unit.ok ? CODE_OF_UNIT[unit.value.id] : undefined;
  const near =
    sameLetters.length > 0
      ? sameLetters
      : named !== undefined
        ? [named]
        : [...byCode.keys()]
            .filter((known) => known.length > 2 && code.length <= MAX_NAME && distance(known, code) === 1)
            .slice(0, 3);
  return refuse(
    'convert-unknown-code',
    near.length > 0
      ? `${say`CONVERT has no unit "${excerpt(code)}"`}${say`: did you mean `}${orList(near)}?`
      : `${say`CONVERT has no unit "${excerpt(code)}"`}.`,
    near.length > 0
      ? `${say`Write `}${orList(near)}${say` (capitals matter), or use MEASURE, which takes plain names.`}`
      : say`Use a code such as qt, lbm or ft (capitals matter), or use MEASURE, which takes plain names.`,
  );
}

/**
 * CONVERT of OpenFormula (OpenDocument 1.3, part 4): `n` of the unit `from`, in the unit `to`. Codes are
 * case-sensitive, and take the standard's decimal and binary prefixes where it allows them. Answers are
 * clean to 15 significant digits. Refused for an unknown code (`convert-unknown-code`) and for codes of
 * different groups (`convert-groups-differ`).
 */
export function convertOpenFormula(n: number, from: string, to: string): Result<number> {
  if (!Number.isFinite(n)) return refuse('not-a-number', say`the number is none.`, say`Write a number.`);
  const a = read(from);
  if (!a) return unknown(from);
  const b = read(to);
  if (!b) return unknown(to);
  if (a.group !== b.group) {
    return refuse(
      'convert-groups-differ',
      say`"${from}" is a unit ${OF_GROUP[a.group] ?? ''} and "${to}" ${OF_GROUP[b.group] ?? ''}.`,
      massAndVolume(a, b)
        ? say`Choose two units of one kind, or use MEASURE with a food.`
        : say`Choose two units of one kind.`,
    );
  }
  if (from === to) return ok(n);
  const value = ((n - a.zero) * a.size) / b.size + b.zero;
  if (!Number.isFinite(value)) {
    return refuse('not-a-number', say`the answer is too great for a number.`, say`Choose a greater unit.`);
  }
  return ok(roundSig(value, 15));
}

const massAndVolume = (a: Scaled, b: Scaled): boolean => [a.group, b.group].sort().join() === 'mass,volume';
