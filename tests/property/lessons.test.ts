import { describe, expect, it } from 'vitest';
import { answerText, sameAnswer } from '../../src/lessons/answer-text.js';
import { checkAnswer } from '../../src/lessons/check-answer.js';
import { makeSheet } from '../../src/lessons/sheet.js';
import { TOPICS } from '../../src/lessons/topics/index.js';
import { LEVELS, type LessonProblem } from '../../src/lessons/types.js';
import { nameFor as nameOf } from '../../src/lessons/words.js';
import { demoNumbers } from '../support/lesson-books.js';
import { linesOf } from '../support/line-width.js';

const SEEDS = Number(process.env.CROFTSHEET_SEEDS ?? 300);
/** Points: the sheet is set in 11, on a column of 165 mm beside the number. */
const [SIZE, COLUMN] = [11, 467];

const school = demoNumbers('school-garden');
const farm = demoNumbers('tamarack-bench');
/** The same garden in the hands of somebody who writes very long names. */
const long = 'Grandmothers’ exceedinglyunhyphenatedlylongnamed tomatoes of the northern slope';
const wordy = {
  ...school,
  stock: school.stock.map((line, at) => ({ ...line, food: `${nameOf(long)} ${'abcdefghi'[at % 9]}` })),
  beds: school.beds.map((bed, at) => ({ ...bed, crop: `${nameOf(long)} ${'abcdefghi'[at % 9]}` })),
};

/** What nobody would want to answer. */
function silly({ key, text }: LessonProblem): string | null {
  if (/NaN|undefined|null|Infinity|\[object/.test(text)) return 'a number that is none';
  if (/ {2}|\s[,.?]|\b1 (?:pounds|bags|weeks|days|shares|cups|quarts|pints|seeds|plants)\b/.test(text))
    return 'words set wrongly';
  if (!/\?/.test(text)) return 'no question';
  if (key.kind === 'amount') {
    const n = key.value.valueOf();
    if (n < 0) return 'less than nothing';
    if (n > 100_000) return 'too great for a child';
    if (/^(?:plant|seed|basket|row|share|time|child)s?$/.test(key.unit?.many ?? '')) {
      const counted = key.unit?.per === undefined && key.rounding !== 'tenth' && key.rounding !== 'hundredth';
      if (counted && key.rounding === 'exact' && key.value.d !== 1n) return 'a part of a thing that is whole';
    }
    if (key.rounding === 'exact' && key.value.d > 4000n) return 'a fraction that nobody can read';
  }
  if (key.kind === 'percent' && key.value.lt(0)) return 'less than nothing';
  if (key.kind === 'chance' && (key.value.lt(0) || key.value.gt(1))) return 'a chance outside 0 to 1';
  if (
    key.kind === 'choice' &&
    (!key.choices.includes(key.word) || new Set(key.choices).size < key.choices.length)
  )
    return 'choices that do not hold the answer once';
  return null;
}

/** Everything that must hold of a problem; '' when it does. */
function wrongWith(problem: LessonProblem): string {
  const { answer, key, steps, text } = problem;
  const says = answerText(key);
  if (!sameAnswer(answer, key)) return `built as ${answerText(answer)}, worked out as ${says}`;
  const foolish = silly(problem);
  if (foolish) return foolish;
  if (steps.length < 2) return 'no working';
  if (checkAnswer(key, says).kind !== 'right') return `its own answer “${says}” is not taken as right`;
  for (const line of [text, ...steps]) {
    const { lines, widest } = linesOf(line, SIZE, COLUMN);
    if (widest > COLUMN / 2) return `a word that does not fit a line: ${line}`;
    if (lines > 5) return `${lines} lines long: ${line}`;
  }
  return '';
}

/** What is to be reckoned, whatever the foods are called: numbers and months in their order, and the answer. */
const reckoned = ({ kind, text, key }: LessonProblem): string =>
  `${kind}: ${text.match(/[\d.,/]*\d|\b(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)[a-z]*\b/g)} = ${answerText(key)}`;

describe.each(TOPICS)('$title', (topic) => {
  it(`has the right key, nothing twice and nothing silly on ${SEEDS} sheets`, () => {
    for (const [book, numbers] of Object.entries({ school, farm, wordy })) {
      const share = book === 'school' ? SEEDS : Math.ceil(SEEDS / 5);
      const sheets: { readonly level: number; readonly sums: readonly string[] }[] = [];
      for (let seed = 0; seed < share; seed++) {
        const level = LEVELS[seed % 3]!;
        const { problems } = makeSheet(numbers, { topics: [topic.id], level, seed: `${seed}`, count: 6 });
        expect(new Set(problems.map(({ text }) => text)).size, 'a problem twice').toBe(problems.length);
        for (const problem of problems) {
          const wrong = wrongWith(problem);
          if (wrong) expect.fail(`${book}, seed ${seed}, ${problem.kind}: ${wrong}\n${problem.text}`);
        }
        sheets.push({ level, sums: problems.map(reckoned) });
      }
      for (const { level, sums } of sheets) {
        const again = sums.find((sum, at) => sums.indexOf(sum) < at);
        if (again === undefined) continue;
        const others = new Set(sheets.filter((each) => each.level === level).flatMap((each) => each.sums));
        expect(others.size, `${book}, level ${level}, asked twice: ${again}`).toBeLessThan(sums.length);
      }
    }
  }, 600_000);

  it('gives a full sheet at every level from the school garden, and every form of it comes up', () => {
    const seen = new Set<string>();
    for (const level of LEVELS) {
      for (let seed = 0; seed < 12; seed++) {
        const sheet = makeSheet(seed % 2 ? farm : school, {
          topics: [topic.id],
          level,
          seed: `${seed}`,
          count: 8,
        });
        expect(sheet.problems.length).toBeGreaterThanOrEqual(6);
        for (const { kind } of sheet.problems) seen.add(kind.split('/')[1]!);
      }
    }
    expect([...seen].sort()).toEqual(topic.forms.map(({ id }) => id).sort());
  });
});
