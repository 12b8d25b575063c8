import { phrase, say, spoken } from '../../words/index.js';
import type { Origin, PlanValue, WorkingInput } from '../types.js';
import { n } from './number.js';

const SIGNED = /[−-]?(?:\d(?:[\d.,\u00a0’]*\d)?[⅓⅔]?|[⅓⅔])/g;

/** Does a step end in this figure? What stands after its last `=` (or all of it, where there is none) names it. */
export function endsIn(step: string, value: number | string): boolean {
  const tail = step.slice(step.lastIndexOf('=') + 1);
  if (typeof value === 'string') return tail.includes(value);
  return [...tail.matchAll(SIGNED)].some(([text]) => text === n(value));
}

const WHENCE: Partial<Record<Origin, string>> = {
  own: phrase('your own figure'),
  published: phrase('as published'),
  'from memory': phrase('as recalled'),
  learned: phrase('as learned'),
  entered: phrase('as written'),
};

const isSame = (a: PlanValue, b: PlanValue): boolean =>
  typeof a === 'number' && typeof b === 'number' ? n(a) === n(b) : a === b;

/** The step that a working ends with where its steps do not end in the figure: a reader sees that it is all. */
export function closing(
  value: PlanValue,
  unit: string,
  inputs: readonly WorkingInput[],
  steps: readonly string[],
): string | null {
  if (value === null) return null;
  const last = steps.at(-1);
  if (last !== undefined && endsIn(last, value)) return null;
  const text =
    typeof value === 'number' ? `${n(value)}${unit === '' ? '' : ` ${spoken(unit)}`}` : spoken(value);
  const taken = steps.length === 0 ? inputs.find((each) => isSame(each.value, value)) : undefined;
  const whence = taken && WHENCE[taken.origin];
  return whence ? `${spoken(whence)} = ${text}` : taken ? `${spoken(taken.name)} = ${text}` : say`so ${text}`;
}

export { n };
