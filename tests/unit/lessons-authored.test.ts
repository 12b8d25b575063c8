import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { answerText } from '../../src/lessons/answer-text.js';
import { checkAnswer, makeSheet, parseLesson } from '../../src/lessons/index.js';
import { demoNumbers } from '../support/lesson-books.js';

const school = demoNumbers('school-garden');
const HOME = 'demo/data/lessons';
const LESSONS = readdirSync(HOME).map((file) => ({ file, json: readFileSync(`${HOME}/${file}`, 'utf8') }));

const lesson = (more: object) => ({
  format: 'croftsheet-lesson',
  version: 1,
  id: 'test',
  title: 'Test',
  topics: ['units'],
  ...more,
});

describe('the twelve lessons', () => {
  it('are twelve', () => expect(LESSONS.length).toBe(12));

  it.each(LESSONS)('$file reads, is full, and has something for hands and mouths', ({ file, json }) => {
    const read = parseLesson(json);
    if (!read.ok) expect.fail(JSON.stringify(read.problems));
    const { lesson: of } = read;
    expect(`${of.id}.json`).toBe(file);
    for (const list of [of.goals, of.introduction, of.hands, of.discuss])
      expect(list.length).toBeGreaterThan(0);
    const sheet = makeSheet(school, { ...of });
    expect(sheet.notes).toEqual([]);
    expect(sheet.problems.length).toBe(of.count);
    expect(of.questions.length + of.count).toBeGreaterThanOrEqual(5);
    for (const { key } of of.questions) expect(checkAnswer(key, answerText(key)).kind).toBe('right');
  });

  it('hold no process times and no pressures', () => {
    for (const { json } of LESSONS)
      expect(json).not.toMatch(
        /\d+\s*(?:minutes?|min\b|hours?|psi|Minuten?|Stunden?)|°[CF]|water bath|Wasserbad/i,
      );
  });
});

describe('reading a lesson', () => {
  it('answers with what is wrong, where it is and how to mend it', () => {
    const cases: [unknown, string, string | undefined][] = [
      ['{ "format": ', 'lesson-not-json', ''],
      [{}, 'bad-lesson', 'format'],
      [lesson({ level: 4 }), 'bad-lesson', 'level'],
      [lesson({ topics: ['units', 'cheese'] }), 'no-such-topic', 'topics.1'],
      [lesson({ forms: ['cheese'] }), 'no-such-form', 'forms.0'],
      [lesson({ topics: [] }), 'empty-lesson', 'topics'],
      [lesson({ count: 400 }), 'bad-lesson', 'count'],
      [lesson({ titel: 'x' }), 'bad-lesson', ''],
      [lesson({ questions: [{ text: 'How many?', answer: 'lots' }] }), 'bad-answer', 'questions.0.answer'],
      [
        lesson({ questions: [{ text: 'Which?', answer: 'c', choices: ['a', 'b'] }] }),
        'bad-answer',
        'questions.0.answer',
      ],
      [null, 'bad-lesson', ''],
      [[], 'bad-lesson', ''],
    ];
    for (const [json, code, path] of cases) {
      const read = parseLesson(json);
      expect(read.ok, code).toBe(false);
      if (read.ok) continue;
      expect(read.problems[0]).toMatchObject({ code, where: { path } });
      expect(read.problems[0]!.mend).toMatch(/\w{3}.*\.$/);
    }
  });

  it('reads answers of every kind as they are written', () => {
    const questions = [
      { text: 'a', answer: 48, unit: 'inches' },
      { text: 'b', answer: '17 2/3 quarts' },
      { text: 'c', answer: '75 %' },
      { text: 'd', answer: '2026-05-08' },
      { text: 'e', answer: true },
      { text: 'f', answer: '3 : 2' },
      { text: 'g', answer: 'more', choices: ['more', 'fewer'] },
      { text: 'h', answer: '3.5', unit: 'pounds a week', round: 'tenth' },
    ];
    const read = parseLesson(lesson({ questions }));
    if (!read.ok) expect.fail(JSON.stringify(read.problems));
    expect(read.lesson.questions.map(({ key }) => answerText(key))).toEqual([
      '48 inches',
      '17⅔ quarts',
      '75 %',
      'May 8, 2026',
      'yes',
      '3 : 2',
      'more',
      '3.5 pounds a week',
    ]);
    expect(checkAnswer(read.lesson.questions[0]!.key, '4 feet').kind).toBe('right');
  });
});
