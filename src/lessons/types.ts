import type { DayNumber } from '../planning/types.js';
import type { BookNumbers } from './book-numbers.js';
import type { Exact, Rounding } from './exact.js';
import type { Random } from './random.js';
import type { StandardCode } from './standards.js';

export const LEVELS = [1, 2, 3] as const;
export type Level = (typeof LEVELS)[number];

/** What is counted or measured in an answer: names in English, or as an author wrote them. */
export interface AnswerUnit {
  readonly one: string;
  readonly many: string;
  /** Id of a unit of `src/units`, where answers in other units of its kind can be compared. */
  readonly measure?: string;
  /** After 'a' or 'per': the 'week' of 'pounds a week'. */
  readonly per?: string;
}

/** What is right. Chances and percents are parts of 1; words to choose from are in the language spoken. */
export type Answer =
  | {
      readonly kind: 'amount';
      readonly value: Exact;
      readonly unit: AnswerUnit | null;
      readonly rounding: Rounding;
      /** True where the question is about the unit: the same amount in another one is not what it asks. */
      readonly unitMatters?: boolean;
    }
  | { readonly kind: 'percent'; readonly value: Exact; readonly rounding: Rounding }
  | { readonly kind: 'chance'; readonly value: Exact }
  | { readonly kind: 'date'; readonly day: DayNumber }
  | { readonly kind: 'yes-no'; readonly yes: boolean }
  | { readonly kind: 'choice'; readonly word: string; readonly choices: readonly string[] }
  /** In simplest form. */
  | { readonly kind: 'ratio'; readonly parts: readonly [number, number] };

/** A bar chart: bars from 0, a line at every `step`; its words are in the language spoken. */
export interface Chart {
  readonly title: string;
  readonly unit: string;
  readonly step: number;
  /** True where a bar's number stands on it: its height alone could not be read from the lines. */
  readonly numbered: boolean;
  readonly bars: readonly { readonly label: string; readonly value: number }[];
}

/** What a form of problem makes: the answer by the way in which the problem was built. */
export interface Made<G> {
  readonly text: string;
  readonly answer: Answer;
  /** The working, one step a line; the last one states the answer. */
  readonly steps: readonly string[];
  /** What `key` works from. */
  readonly given: G;
  readonly chart?: Chart;
  /** True where jars, seals or canning are spoken of: the usual caution stands beside it. */
  readonly canning?: boolean;
}

/** A problem as a sheet shows it. */
export interface LessonProblem extends Omit<Made<unknown>, 'given'> {
  /** Topic and form, as in `units/larger-to-smaller`. */
  readonly kind: string;
  /** The same in every language: of those of a book its English text. What is written is kept by it. */
  readonly id: string;
  /** The answer worked out by another way than the one in which the problem was built. */
  readonly key: Answer;
}

/** One form of problem of a topic. */
export interface Form {
  readonly id: string;
  readonly levels: readonly Level[];
  /** A problem from the book's numbers, or null where the book has none that fit (or this draw had none). */
  readonly problem: (
    numbers: BookNumbers,
    level: Level,
    random: Random,
  ) => Omit<LessonProblem, 'kind' | 'id'> | null;
}

/** A form whose answer is worked out twice: as it is built, and by `key` from what it gives. */
export function form<G>(of: {
  readonly id: string;
  readonly levels: readonly Level[];
  readonly make: (numbers: BookNumbers, level: Level, random: Random) => Made<G> | null;
  readonly key: (given: G) => Answer;
}): Form {
  return {
    id: of.id,
    levels: of.levels,
    problem(numbers, level, random) {
      const made = of.make(numbers, level, random);
      if (!made) return null;
      const { given, ...rest } = made;
      return { ...rest, key: of.key(given) };
    },
  };
}

/** A topic of school mathematics that a book has numbers for. */
export interface Topic {
  readonly id: string;
  readonly title: string;
  /** What a child can do afterwards, in plain words. */
  readonly goals: readonly string[];
  /** What a level asks. */
  readonly levels: Readonly<Record<Level, string>>;
  readonly standards: readonly StandardCode[];
  /** Rows that a book needs for it, in words: said where it has none. */
  readonly needs: string;
  readonly forms: readonly Form[];
}
