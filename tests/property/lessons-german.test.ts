import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { answerText } from '../../src/lessons/answer-text.js';
import { checkAnswer } from '../../src/lessons/check-answer.js';
import { makeSheet } from '../../src/lessons/sheet.js';
import { TOPICS } from '../../src/lessons/topics/index.js';
import { type Answer, LEVELS, type LessonProblem } from '../../src/lessons/types.js';
import { speak } from '../../src/words/index.js';
import { catalogueOfSource } from '../support/catalogue.js';
import { demoNumbers } from '../support/lesson-books.js';
import { linesOf } from '../support/line-width.js';

const SEEDS = Number(process.env.CROFTSHEET_SEEDS ?? 25);
/** Points: the sheet is set in 11, on a column of 165 mm beside the number. */
const [SIZE, COLUMN] = [11, 467];
const books = [demoNumbers('school-garden'), demoNumbers('tamarack-bench')] as const;

/** Pieces of our English sentences, of two words or more, as they stand between holes. */
const catalogue = catalogueOfSource();
const ENGLISH = ['lessons', 'lessons/topics']
  .flatMap((part) => catalogue.get(part) ?? [])
  .flatMap((text) => text.split(/\{\d\}/))
  .map((piece) => piece.trim())
  .filter((piece) => /\p{L}{2,} \p{L}{2,}/u.test(piece));
/** Words of ours that stand in holes. */
const WORDS =
  /\b(?:pounds?|ounces?|cups?|inch|inches|feet|gallons?|weeks?|shares?|seeds?|plants?|rows?|squares?|baskets?|bags?|jars?|of|the)\b/;

/** All numbers of a text, however the language writes them, in the order of their size. */
const numbersOf = (text: string, decimal: '.' | ','): number[] =>
  [...text.matchAll(/\d+(?:[.,]\d+)*/g)]
    .map(([found]) =>
      Number(decimal === ',' ? found.replaceAll('.', '').replace(',', '.') : found.replaceAll(',', '')),
    )
    .sort((a, b) => a - b);

/** What is right, without the words in which it is told. */
function meant(answer: Answer): unknown {
  switch (answer.kind) {
    case 'amount':
      return [
        answer.value.toFraction(),
        answer.rounding,
        answer.unit?.measure ?? null,
        answer.unit?.per ?? null,
      ];
    case 'percent':
    case 'chance':
      return answer.value.toFraction();
    case 'date':
      return answer.day;
    case 'yes-no':
      return answer.yes;
    case 'choice':
      return [answer.choices.indexOf(answer.word), answer.choices.length];
    case 'ratio':
      return answer.parts;
  }
}

const sheetsOf = (topic: string): LessonProblem[][] =>
  books.flatMap((numbers, nth) =>
    Array.from({ length: nth === 0 ? SEEDS : Math.ceil(SEEDS / 5) }, (_, seed) => [
      ...makeSheet(numbers, { topics: [topic], level: LEVELS[seed % 3]!, seed: `${seed}`, count: 6 })
        .problems,
    ]),
  );

const linesIn = ({ text, steps, chart, key }: LessonProblem): string[] => [
  text,
  ...steps,
  answerText(key),
  ...(chart ? [chart.title, chart.unit, ...chart.bars.map(({ label }) => label)] : []),
];

describe.each(TOPICS)('$title in German', (topic) => {
  let english: LessonProblem[][] = [];
  beforeAll(async () => {
    english = sheetsOf(topic.id);
    await speak('de');
  }, 120_000);
  afterAll(async () => {
    await speak('en');
  });

  it(`has the numbers and answers of the English one on ${SEEDS} sheets, and none of its words`, () => {
    const german = sheetsOf(topic.id);
    expect(german.map((sheet) => sheet.map(({ id }) => id))).toEqual(
      english.map((sheet) => sheet.map(({ id }) => id)),
    );
    for (const [at, sheet] of german.entries()) {
      for (const [nth, problem] of sheet.entries()) {
        const other = english[at]![nth]!;
        expect(meant(problem.key), problem.text).toEqual(meant(other.key));
        expect(meant(problem.answer), problem.text).toEqual(meant(other.answer));
        expect(numbersOf(problem.text, ','), problem.text).toEqual(numbersOf(other.text, '.'));
        expect(numbersOf(problem.steps.join(' '), ','), problem.steps.join(' ')).toEqual(
          numbersOf(other.steps.join(' '), '.'),
        );
        expect(problem.chart?.bars.map(({ value }) => value)).toEqual(
          other.chart?.bars.map(({ value }) => value),
        );
        expect(problem.canning).toBe(other.canning);
        for (const line of linesIn(problem)) {
          expect(
            ENGLISH.filter((piece) => line.includes(piece)),
            line,
          ).toEqual([]);
          expect(line).not.toMatch(WORDS);
        }
        expect(checkAnswer(problem.key, answerText(problem.key)).kind, answerText(problem.key)).toBe('right');
        for (const line of [problem.text, ...problem.steps])
          expect(linesOf(line, SIZE, COLUMN).lines, line).toBeLessThanOrEqual(6);
      }
    }
  }, 600_000);
});
