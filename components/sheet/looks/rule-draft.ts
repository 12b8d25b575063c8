import { choiceMeant } from '../../../src/book/fixed-choices.js';
import {
  CONDITIONS,
  type Colour,
  type ColumnDeclaration,
  type ColumnType,
  type Condition,
  type Marking,
  type Raw,
  readTypedNumber,
} from '../../../src/book/index.js';
import { choiceShown } from '../../../src/live/choice-words.js';
import { decimalSign, phrase, say } from '../../../src/words/index.js';
import { typedText } from '../../look/typed-text.js';

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

/** A value of a rule as its field begins with it, in the language spoken. */
function valueInField(value: Raw | undefined, declaration: ColumnDeclaration | undefined): string {
  if (typeof value === 'boolean') return value ? say`yes` : say`no`;
  return typeof value === 'string' ? choiceShown(value, declaration) : typedText(value ?? null);
}

export const draftOfRule = (
  { when, colour, value, to }: Marking,
  declaration?: ColumnDeclaration,
): RuleDraft => ({
  when,
  colour,
  value: valueInField(value, declaration),
  to: valueInField(to, declaration),
});

const numeric = (text: string): string | number => {
  const trimmed = text.trim();
  const number = decimalSign() === '.' ? Number(trimmed) : (readTypedNumber(trimmed) ?? Number.NaN);
  return trimmed !== '' && Number.isFinite(number) ? number : trimmed;
};

/** The rule that is meant; null while a value is missing. A choice of ours is kept in English, as its cells are. */
export function ruleOf(
  { when, colour, value, to }: RuleDraft,
  type: ColumnType,
  declaration?: ColumnDeclaration,
): Marking | null {
  const count = valuesOf(when);
  const whole = (text: string): string => String(choiceMeant(text.trim(), declaration));
  const read = (text: string): string | number | boolean => {
    if (type === 'tick')
      return /^(yes|true|y|x)$/i.test(text.trim()) || text.trim().toLowerCase() === say`yes`;
    if (when === 'is' || when === 'is not') {
      const meant = choiceMeant(text.trim(), declaration);
      if (meant !== text.trim()) return String(meant);
    }
    // Only the whole word: a part of one, or several of the thing, is looked for as it is written.
    if (
      when === 'contains' &&
      choiceShown(whole(text), declaration).toLowerCase() === text.trim().toLowerCase()
    )
      return whole(text);
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
