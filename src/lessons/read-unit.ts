import { foodKey } from '../live/food-key.js';
import { findUnit, inMeasure, UNITS, type Unit } from '../units/index.js';
import { spoken } from '../words/index.js';
import { type Exact, exact } from './exact.js';
import type { AnswerUnit } from './types.js';
import { manyOf, wordFor } from './words.js';

/** How a unit that was written stands to the one that is asked for. */
export type UnitRead =
  | { readonly is: 'same' | 'none' }
  /** Another unit of the same kind: the amount in the unit that is asked for. */
  | { readonly is: 'other'; readonly value: Exact; readonly called: string }
  | { readonly is: 'wrong'; readonly called: string };

/** 'lb/week', 'pounds a week', 'pounds per week' in two. */
function parted(text: string): { of: string; per: string | null } {
  const parts = /^(.*?)(?:\s*\/\s*|\s+an?\s+|(?:^|\s+)(?:per|each|every|je|pro)\s+)(.*)$/i.exec(text);
  return parts ? { of: parts[1]!.trim(), per: parts[2]!.trim() } : { of: text, per: null };
}

/** 'Bags' and 'freezer bags' for 'quart freezer bags'; 'carrots' for 'pounds of carrots' counts as nothing said. */
function isCalled(text: string, { one, many }: AnswerUnit): boolean {
  const key = foodKey(text);
  return [one, many, wordFor(exact(1), { one, many }), manyOf({ one, many })].some((name) => {
    const words = foodKey(name).split(' ');
    return words.some((_, at) => words.slice(at).join(' ') === key);
  });
}

/** Where a language puts no ‘of’ between, as in ‘3 Tassen Bohnen’: a unit of ours at the beginning. */
function unitSaid(text: string): Unit | undefined {
  const words = foodKey(text).split(' ');
  return UNITS.find(({ id, plural }) =>
    [id, plural].some((name) => {
      if (spoken(name) === name) return false;
      const said = foodKey(spoken(name)).split(' ');
      return said.some((_, at) => {
        const tail = said.slice(at);
        return tail.every((word, nth) => words[nth] === word);
      });
    }),
  );
}

/** Compares the unit that was written behind a number with the one asked for. */
export function readUnit(value: Exact, written: string, asked: AnswerUnit | null): UnitRead {
  const text = written
    .replace(/^of\s+/i, '')
    .replace(/[.!]+$/, '')
    .trim();
  if (text === '') return { is: 'none' };
  if (!asked) return { is: 'same' };
  const { of, per } = parted(text);
  const bare = of.replace(/\s+(?:of|von)\s+.*$/i, '').trim();
  if (
    asked.per !== undefined &&
    per !== null &&
    ![asked.per, spoken(asked.per)].some(
      (each) => foodKey(per.replace(/^(?:the|one)\s+/i, '')) === foodKey(each),
    )
  )
    return { is: 'wrong', called: text };
  if (asked.per === undefined && per !== null && per !== '') return { is: 'wrong', called: text };
  if (bare === '' || isCalled(bare, asked)) return { is: 'same' };
  if (asked.measure === undefined) return { is: 'wrong', called: bare };
  const found = findUnit(bare);
  const unit = found.ok ? found.value : unitSaid(bare);
  if (!unit) return { is: 'wrong', called: bare };
  if (unit.id === asked.measure) return { is: 'same' };
  // By whole numbers of the written unit, so that no digit is lost on the way.
  const one = inMeasure(1, unit.id, asked.measure);
  const back = inMeasure(1, asked.measure, unit.id);
  if (!one.ok || !back.ok) return { is: 'wrong', called: unit.plural };
  const factor = Number.isInteger(back.value) ? exact(1).div(exact(back.value)) : exact(one.value);
  return { is: 'other', value: value.mul(factor), called: unit.plural };
}
