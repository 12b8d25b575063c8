import { schemaWords } from '../book/schema-words.js';
import type { Problem, Result } from '../problem.js';
import { phrase, say } from '../words/index.js';
import { z } from '../zod.js';
import { type AuthoredQuestion, readQuestion } from './authored.js';
import { ROUNDINGS } from './exact.js';
import { FORMULA_TASKS, tasksNamed } from './formula-tasks.js';
import { type LessonWords, lessonWords, wordsLacking } from './lesson-words.js';
import { MOST_PROBLEMS } from './sheet.js';
import { TOPICS, topicWithId } from './topics/index.js';
import { LEVELS, type Level } from './types.js';

export const LESSON_FORMAT = 'croftsheet-lesson';
/** Most formulas that one lesson asks for. */
const MOST_TASKS = 6;

const words = z.string().trim().min(1).max(2000);
const lines = z.array(words).max(40).default([]);

const question = z.strictObject({
  text: words,
  /** `8`, `17 2/3`, `75 %`, `yes`, `2026-05-08`, `3 : 2`, or one of the choices. */
  answer: z.union([words, z.number(), z.boolean()]),
  unit: words.optional(),
  round: z.enum(ROUNDINGS).optional(),
  hints: lines,
  choices: z.array(words).min(2).max(12).optional(),
});

/** A planning column for which pupils write the formula. */
const task = z.strictObject({
  /** One, or several of one kind of sheet with commas between. */
  task: words,
  /** `grid`: written in the grid of the sheet, where the page has a licence key for it. */
  view: z.enum(['table', 'grid']).optional(),
  /** What is asked; the task's own sentence unless given. */
  text: words.optional(),
  /** Ids of rows; those that suit it unless given. */
  rows: z.array(words).max(40).optional(),
  hints: lines,
});

/** The form in which a lesson is written. Every text is plain words: no markup is read in it. */
export const lessonSchema = z.strictObject({
  format: z.literal(LESSON_FORMAT),
  version: z.literal(1),
  id: z.string().regex(/^[a-z0-9-]{1,60}$/, phrase('small letters, digits and hyphens')),
  title: words.max(120),
  goals: lines,
  topics: z.array(words).max(TOPICS.length).default([]),
  forms: z.array(words).optional(),
  level: z.union(LEVELS.map((level) => z.literal(level))).default(1),
  seed: z.union([words, z.number().int()]).default('1'),
  count: z.number().int().min(0).max(MOST_PROBLEMS).default(6),
  introduction: lines,
  hands: lines,
  discuss: lines,
  questions: z.array(question).max(MOST_PROBLEMS).default([]),
  tasks: z.array(task).max(MOST_TASKS).default([]),
  /** Its words in other languages, by their BCP 47 tags: `de`. */
  in: z.record(z.string().regex(/^[a-z]{2,3}(?:-[A-Za-z0-9]+)*$/), lessonWords).default({}),
});

/** A formula to be written, as a lesson asks for it. */
export interface LessonTask {
  /** Kind of sheet and column: `foods/weeks_of_supply`; several with commas between. */
  readonly task: string;
  readonly view?: 'table' | 'grid' | undefined;
  readonly text?: string | undefined;
  readonly rows?: readonly string[] | undefined;
  readonly hints: readonly string[];
}

/** A lesson, read and checked. */
export interface Lesson {
  readonly id: string;
  readonly title: string;
  readonly goals: readonly string[];
  readonly topics: readonly string[];
  readonly forms?: readonly string[];
  readonly level: Level;
  readonly seed: string;
  readonly count: number;
  /** Paragraphs before the sheet. */
  readonly introduction: readonly string[];
  /** What to do with hands: measure, count, weigh. */
  readonly hands: readonly string[];
  readonly discuss: readonly string[];
  /** The author's own questions, before those from the book. */
  readonly questions: readonly AuthoredQuestion[];
  /** Formulas to be written for planning columns of the book, after the questions. */
  readonly tasks: readonly LessonTask[];
  /** Its words in other languages. */
  readonly in: Readonly<Record<string, LessonWords>>;
}

export type LessonRead =
  | { readonly ok: true; readonly lesson: Lesson }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const bad = (code: string, message: string, mend: string, path: string): Problem => ({
  code,
  message,
  mend,
  where: { path },
});

/** Reads a lesson from JSON text or plain data. Never throws; says where it is wrong and how to mend it. */
export function parseLesson(json: unknown): LessonRead {
  let data = json;
  if (typeof json === 'string') {
    try {
      data = JSON.parse(json) as unknown;
    } catch (error) {
      const why = error instanceof Error ? error.message.slice(0, 120) : '';
      return {
        ok: false,
        problems: [
          bad(
            'lesson-not-json',
            say`The lesson is not JSON: ${why}.`,
            say`Mend the comma, quote or bracket there.`,
            '',
          ),
        ],
      };
    }
  }
  const read = lessonSchema.safeParse(data);
  if (!read.success) {
    return {
      ok: false,
      problems: read.error.issues.slice(0, 20).map(({ path, message }) => {
        const at = path.join('.');
        return bad('bad-lesson', say`${at || say`The lesson`}: ${inOurWords(message)}.`, mendFor(at), at);
      }),
    };
  }
  const { questions: asked, forms, level, seed, ...rest } = read.data;
  const problems: Problem[] = [];
  rest.topics.forEach((id, at) => {
    if (!topicWithId(id))
      problems.push(
        bad(
          'no-such-topic',
          say`There is no topic “${id.slice(0, 40)}”.`,
          say`Write one of: ${TOPICS.map((topic) => topic.id).join(', ')}.`,
          `topics.${at}`,
        ),
      );
  });
  const known = new Set(TOPICS.flatMap((topic) => topic.forms.map(({ id }) => id)));
  forms?.forEach((id, at) => {
    if (!known.has(id))
      problems.push(
        bad(
          'no-such-form',
          say`There is no form of problem “${id.slice(0, 40)}”.`,
          say`Leave it out, or write one that the topics have.`,
          `forms.${at}`,
        ),
      );
  });
  rest.tasks.forEach((each, at) => {
    if (!tasksNamed(each.task))
      problems.push(
        bad(
          'no-such-task',
          say`There is no column “${each.task.slice(0, 40)}” to write a formula for.`,
          say`Write one of: ${FORMULA_TASKS.map(({ id }) => id).join(', ')}; or several of one kind.`,
          `tasks.${at}.task`,
        ),
      );
  });
  const questions = asked.flatMap((each, at): AuthoredQuestion[] => {
    const one: Result<AuthoredQuestion> = readQuestion(each, `questions.${at}`);
    if (one.ok) return [one.value];
    problems.push(one.problem);
    return [];
  });
  if (rest.topics.length === 0 && asked.length === 0 && rest.tasks.length === 0)
    problems.push(
      bad(
        'empty-lesson',
        say`The lesson asks nothing.`,
        say`Write topics, questions of your own, or tasks.`,
        'topics',
      ),
    );
  for (const [tag, said] of Object.entries(rest.in)) {
    const lacks = problems.length === 0 ? wordsLacking({ questions, tasks: rest.tasks }, said) : null;
    if (lacks) {
      const at = `in.${tag}.${lacks.path}`;
      problems.push(
        bad(
          'bad-lesson',
          say`${at}: ${lacks.message}.`,
          say`Write the words of each, in the same order.`,
          at,
        ),
      );
    }
  }
  if (problems.length > 0) return { ok: false, problems };
  const lesson: Lesson = {
    ...rest,
    level: level as Level,
    seed: String(seed),
    questions,
    ...(forms && { forms }),
  };
  return { ok: true, lesson };
}

/** What the schema finds wrong: parts that no lesson has are told here, all else as of books. */
function inOurWords(message: string): string {
  const [, several, parts] = /^Unrecognized key(s?): (.+)$/.exec(message) ?? [];
  if (parts === undefined) return schemaWords(message);
  return several === '' ? say`Unrecognized key: ${parts}` : say`Unrecognized keys: ${parts}`;
}

/** How a part of a lesson is written, by its name. */
function mendFor(path: string): string {
  const part = path.split('.')[0] ?? '';
  const how: Readonly<Record<string, string>> = {
    format: say`Write "format": "${LESSON_FORMAT}".`,
    version: say`Write "version": 1.`,
    id: say`Write an id of small letters, digits and hyphens, as in "bed-and-row".`,
    title: say`Write a title.`,
    level: say`Write 1, 2 or 3.`,
    count: say`Write a whole number from 0 to ${MOST_PROBLEMS}.`,
    seed: say`Write a whole number or a word.`,
    questions: say`Write each question as { "text": "…", "answer": "…" }, with "unit", "round", "hints" or "choices" where wanted.`,
    in: say`Write the words of each language by its tag, as in "de": { "title": "…" }.`,
    tasks: say`Write each task as { "task": "foods/weeks_of_supply" }, with "text", "rows", "hints" or "view": "grid" where wanted.`,
  };
  return how[part] ?? say`Write it as a list of sentences, or take out what no lesson has.`;
}
