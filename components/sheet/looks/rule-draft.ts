import {
  CONDITIONS,
  type Colour,
  type ColumnType,
  type Condition,
  type Marking,
} from '../../../src/book/index.js';
import { phrase } from '../../../src/words/index.js';

/** A colour rule as it stands in the fields. */
export interface RuleDraft {
  readonly when: Condition;
  readonly colour: Colour;
  readonly value: string;
  readonly to: string;
}

export const CONDITION_WORDS: Readonly<Record<Condition, string>> = {
  above: phrase('is above'),
  below: phrase('is below'),
  between: phrase('is between'),
  is: phrase('is'),
  'is not': phrase('is not'),
  contains: phrase('has in it'),
  before: phrase('is before'),
  after: phrase('is after'),
  'within days': phrase('is within so many days from now'),
  blank: phrase('is blank'),
  filled: phrase('is filled'),
  double: phrase('stands there twice'),
};

/** Conditions that make sense for what a column holds; those of a rule that stands there already stay offered. */
export function conditionsFor(type: ColumnType, now: Condition): readonly Condition[] {
  const out: ReadonlySet<Condition> =
    type === 'number'
      ? new Set(['contains', 'before', 'after', 'within days'])
      : type === 'date'
        ? new Set(['above', 'below', 'contains'])
        : type === 'tick'
          ? new Set(['above', 'below', 'between', 'contains', 'before', 'after', 'within days', 'double'])
          : type === 'any'
            ? new Set()
            : new Set(['above', 'below', 'between', 'before', 'after', 'within days']);
  return CONDITIONS.filter((condition) => condition === now || !out.has(condition));
}

/** How many values a condition compares with. */
export const valuesOf = (when: Condition): 0 | 1 | 2 =>
  when === 'between' ? 2 : when === 'blank' || when === 'filled' || when === 'double' ? 0 : 1;

export const draftOfRule = ({ when, colour, value, to }: Marking): RuleDraft => ({
  when,
  colour,
  value: value === true ? 'yes' : value === false ? 'no' : String(value ?? ''),
  to: String(to ?? ''),
});

const numeric = (text: string): string | number => {
  const trimmed = text.trim();
  return trimmed !== '' && Number.isFinite(Number(trimmed)) ? Number(trimmed) : trimmed;
};

/** The rule that is meant; null while a value is missing. */
export function ruleOf({ when, colour, value, to }: RuleDraft, type: ColumnType): Marking | null {
  const count = valuesOf(when);
  const read = (text: string): string | number | boolean => {
    if (type === 'tick') return /^(yes|true|y|x)$/i.test(text.trim());
    return type === 'text' ? text.trim() : numeric(text);
  };
  if (count >= 1 && value.trim() === '') return null;
  if (count === 2 && to.trim() === '') return null;
  return {
    when,
    colour,
    ...(count >= 1 && { value: read(value) }),
    ...(count === 2 && { to: read(to) }),
  };
}
