import { readdirSync, readFileSync } from 'node:fs';
import { afterEach, describe, expect, it } from 'vitest';
import { answerText } from '../../src/lessons/answer-text.js';
import { checkAnswer, type Lesson, lessonInWords, makeSheet, parseLesson } from '../../src/lessons/index.js';
import { speak } from '../../src/words/index.js';
import { demoNumbers } from '../support/lesson-books.js';

afterEach(() => speak('en'));

const school = demoNumbers('school-garden');
const HOME = 'demo/data/lessons';
const read = (json: unknown): Lesson => {
  const found = parseLesson(json);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.lesson;
};
const LESSONS = readdirSync(HOME).map((file) => read(readFileSync(`${HOME}/${file}`, 'utf8')));

/** Every text of a lesson that its author wrote, but for answers. */
const textsOf = ({ title, goals, introduction, hands, discuss, questions, tasks }: Lesson): string[] => [
  title,
  ...goals,
  ...introduction,
  ...hands,
  ...discuss,
  ...questions.flatMap(({ text, steps }) => [text, ...steps]),
  ...tasks.flatMap(({ text = '', hints }) => [text, ...hints]),
];

/** Numbers of a text in order, whichever sign they are written with. */
const numbersOf = (text: string): string[] =>
  [...text.matchAll(/\d+(?:[.,]\d+)?/g)].map(([n]) => n.replace(',', '.')).sort();

const ENGLISH =
  /\b(?:the|of|and|how|many|what|which|is|are|jars?|pounds?|weeks?|feet|inch(?:es)?|cups|lids|loads)\b/i;

describe('the ready lessons in German', () => {
  it.each(LESSONS)('$id: every text, with the numbers of the English one', async (lesson) => {
    const english = textsOf(lessonInWords(lesson));
    expect(english).toEqual(textsOf(lesson));
    await speak('de-AT');
    const german = textsOf(lessonInWords(lesson));
    expect(german.length).toBe(english.length);
    for (const [at, text] of german.entries()) {
      if (english[at] === '') continue;
      expect(text).not.toBe(english[at]);
      expect(text, english[at]!).not.toMatch(ENGLISH);
      expect(numbersOf(text), text).toEqual(numbersOf(english[at]!));
    }
  });

  it.each(LESSONS)('$id: the sheet that the seed draws in English, and its answers', async (lesson) => {
    const said = () => {
      const shown = lessonInWords(lesson);
      const { problems } = makeSheet(school, { ...shown });
      return [...shown.questions, ...problems];
    };
    const english = said();
    await speak('de');
    const german = said();
    expect(german.map(({ id }) => id)).toEqual(english.map(({ id }) => id));
    for (const [at, { key, canning }] of german.entries()) {
      expect(canning).toBe(english[at]!.canning);
      expect(answerText(key)).not.toMatch(ENGLISH);
      expect(numbersOf(answerText(key)).length).toBe(numbersOf(answerText(english[at]!.key)).length);
      expect(checkAnswer(key, answerText(key)).kind, answerText(key)).toBe('right');
    }
  });
});

describe('the words of a lesson in another language', () => {
  const lesson = (de: object) => ({
    format: 'croftsheet-lesson',
    version: 1,
    id: 'test',
    title: 'Test',
    questions: [
      { text: 'Which is heavier?', answer: 'potatoes', choices: ['carrots', 'potatoes'] },
      { text: 'How many legs?', answer: 8, unit: 'legs' },
    ],
    in: { de },
  });
  const twoLegs = { text: 'Wie viele Beine?', unit: 'Beine' };
  const heavier = { text: 'Was ist schwerer?', choices: ['Möhren', 'Kartoffeln'] };

  it('go with its answers', async () => {
    const { questions } = read(lesson({ title: 'Probe', questions: [heavier, twoLegs] }));
    await speak('de');
    const [first, second] = lessonInWords({
      ...read(lesson({ title: 'Probe', questions: [heavier, twoLegs] })),
    }).questions;
    expect(answerText(first!.key)).toBe('Kartoffeln');
    expect(first!.id).toBe(questions[0]!.id);
    expect(checkAnswer(first!.key, 'Möhren').kind).toBe('wrong');
    expect(answerText(second!.key)).toBe('8 Beine');
    expect(second!.steps.at(-1)).toContain('8 Beine');
  });

  it('leave what they do not speak of', async () => {
    await speak('de');
    const { title, questions } = lessonInWords(read(lesson({ title: 'Probe' })));
    expect([title, questions[0]!.text]).toEqual(['Probe', 'Which is heavier?']);
  });

  it('are refused where they do not go with it, with where and how to mend it', () => {
    for (const [de, path] of [
      [{ questions: [heavier, twoLegs] }, 'in.de.title'],
      [{ title: 'Probe', questions: [heavier] }, 'in.de.questions'],
      [{ title: 'Probe', questions: [twoLegs, twoLegs] }, 'in.de.questions.0.choices'],
      [{ title: 'Probe', questions: [heavier, twoLegs], tasks: [{}] }, 'in.de.tasks'],
      [{ title: 'Probe', questions: [heavier, twoLegs], titel: 'x' }, 'in.de'],
    ] as const) {
      const found = parseLesson(lesson(de));
      expect(found.ok).toBe(false);
      if (found.ok) continue;
      expect(found.problems[0]).toMatchObject({ code: 'bad-lesson', where: { path } });
      expect(found.problems[0]!.mend).toMatch(/^Write the words of each/);
    }
  });
});
