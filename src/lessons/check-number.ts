import { phrase, say, spoken } from '../words/index.js';
import { unitText } from './answer-text.js';
import { type Checked, type CheckOptions, RIGHT, WRONG } from './checked.js';
import { type Exact, ends, exact, type Rounding, rounded } from './exact.js';
import type { ReadNumber } from './read-number.js';
import { readUnit } from './read-unit.js';
import type { Answer } from './types.js';

type NumberAnswer = Extract<Answer, { kind: 'amount' | 'percent' | 'chance' }>;

const ASKED: Readonly<Record<Rounding, string>> = {
  exact: phrase('Write it exactly, as a fraction or a mixed number, or to the nearest hundredth.'),
  whole: phrase('Now round it to the nearest whole number.'),
  up: phrase('Now round it up to a whole number.'),
  down: phrase('Now round it down to a whole number.'),
  tenth: phrase('Now round it to the nearest tenth.'),
  hundredth: phrase('Now round it to the nearest hundredth.'),
};

/** Near enough that only the rounding is at fault: within a hundredth of the value, or half a unit of it. */
function isNear(a: Exact, value: Exact, rounding: Rounding): boolean {
  const apart = a.sub(value).abs();
  if (rounding === 'whole' || rounding === 'up' || rounding === 'down')
    return apart.lt(a.d === 1n ? 1 : exact(0.06));
  const step = rounding === 'tenth' ? exact(0.1) : exact(0.01);
  return apart.lt(step) || (rounding !== 'exact' && apart.lt(value.abs().div(50)) && apart.lt(step.mul(5)));
}

/** Compares two numbers by the rounding that is asked for. */
function compared(written: ReadNumber, got: Exact, value: Exact, rounding: Rounding): Checked {
  const wanted = rounded(value, rounding);
  if (got.equals(wanted)) return RIGHT;
  if (rounding === 'exact') {
    // A decimal that never ends is right once it is rounded to hundredths or finer.
    const isRounded =
      written.form !== 'fraction' &&
      written.places >= 2 &&
      !ends(value, written.places) &&
      got.equals(value.round(written.places));
    if (isRounded) return RIGHT;
  }
  if (isNear(got, value, rounding))
    return { kind: 'not as asked', message: say`Close. ${spoken(ASKED[rounding])}` };
  return WRONG;
}

/** Compares a number that was read, with what stands behind it. */
export function checkNumber(answer: NumberAnswer, number: ReadNumber, { writeUnits }: CheckOptions): Checked {
  if (answer.kind === 'chance') {
    if (number.value.equals(answer.value)) return RIGHT;
    const inHundred = number.isPercent ? null : number.value.div(100);
    if (inHundred?.equals(answer.value))
      return {
        kind: 'unit missing',
        message: say`As a percent that is right: write % behind it, or a fraction.`,
      };
    // A percent of it is rounded to whole ones or finer.
    const places = number.places + (number.isPercent ? 2 : 0);
    if (number.form !== 'fraction' && places >= 2 && number.value.equals(answer.value.round(places)))
      return RIGHT;
    return WRONG;
  }
  if (answer.kind === 'percent') {
    const value = answer.value.mul(100);
    const got = number.isPercent ? number.value.mul(100) : number.value;
    const asPercent = compared(number, got, value, answer.rounding);
    if (asPercent.kind === 'right' || number.isPercent) return asPercent;
    // A decimal or a fraction of the whole is the same thing said another way.
    const asPart = compared(number, number.value.mul(100), value, answer.rounding);
    return asPart.kind === 'right' && number.value.lte(1)
      ? { kind: 'right', message: say`Right, as a part of 1.` }
      : asPercent;
  }
  const asked = unitText(answer);
  if (number.isPercent)
    return {
      kind: 'wrong unit',
      message:
        asked === ''
          ? say`No percent is asked for.`
          : say`The question asks for ${asked}, not for a percent.`,
    };
  const unit = readUnit(number.value, number.rest, answer.unit);
  if (unit.is === 'wrong') {
    const { kind } = compared(number, number.value, answer.value, answer.rounding);
    return kind === 'right'
      ? { kind: 'wrong unit', message: say`The number is right, but the question asks for ${asked}.` }
      : WRONG;
  }
  if (unit.is === 'other') {
    const { kind } = compared({ ...number, form: 'fraction' }, unit.value, answer.value, answer.rounding);
    if (kind !== 'right') return WRONG;
    return answer.unitMatters
      ? { kind: 'wrong unit', message: say`The amount is right, but the question asks for ${asked}.` }
      : { kind: 'right', message: say`Right. The question asks for ${asked}, but it is the same amount.` };
  }
  const checked = compared(number, number.value, answer.value, answer.rounding);
  if (checked.kind === 'right' && unit.is === 'none' && writeUnits && answer.unit)
    return { kind: 'unit missing', message: say`The number is right. Write the unit behind it, too.` };
  return checked;
}
