import { z } from 'zod';
import { say, spokenTag } from '../words/index.js';
import { type AuthoredQuestion, questionIn } from './authored.js';
import type { Lesson } from './lesson-schema.js';

const words = z.string().trim().min(1).max(2000);
const lines = z.array(words).max(40);

/** What is said of a question in another language; its answer is the one that the lesson has. */
const questionWords = z.strictObject({
  text: words,
  unit: words.optional(),
  hints: lines.default([]),
  /** In the order of the lesson's own. */
  choices: z.array(words).optional(),
});

const taskWords = z.strictObject({ text: words.optional(), hints: lines.default([]) });

/** The words of a lesson in another language. Lists stand for the lesson's own, each as a whole. */
export const lessonWords = z.strictObject({
  title: words.max(120),
  goals: lines.default([]),
  introduction: lines.default([]),
  hands: lines.default([]),
  discuss: lines.default([]),
  questions: z.array(questionWords).default([]),
  tasks: z.array(taskWords).default([]),
});

export type LessonWords = z.infer<typeof lessonWords>;

/** Where the words do not go with the lesson: what is missing, and where. */
export function wordsLacking(
  { questions, tasks }: { questions: readonly AuthoredQuestion[]; tasks: readonly unknown[] },
  said: LessonWords,
): { readonly message: string; readonly path: string } | null {
  if (said.questions.length !== questions.length)
    return { message: say`there are ${questions.length} questions`, path: 'questions' };
  if (said.tasks.length !== tasks.length)
    return { message: say`there are ${tasks.length} tasks`, path: 'tasks' };
  for (const [at, { answer }] of questions.entries()) {
    const has = answer.kind === 'choice' ? answer.choices.length : 0;
    if ((said.questions[at]?.choices?.length ?? 0) !== has)
      return { message: say`there are ${has} choices`, path: `questions.${at}.choices` };
  }
  return null;
}

/** The lesson in the language spoken now; as it is written where it has no words in that language. */
export function lessonInWords(lesson: Lesson): Lesson {
  const tag = spokenTag();
  const said = lesson.in[tag] ?? lesson.in[tag.split('-')[0]!];
  if (!said) return lesson;
  const { title, goals, introduction, hands, discuss } = said;
  return {
    ...lesson,
    title,
    goals,
    introduction,
    hands,
    discuss,
    questions: lesson.questions.map((each, at) => questionIn(each, said.questions[at]!)),
    tasks: lesson.tasks.map((each, at) => {
      const { text, hints } = said.tasks[at]!;
      return { ...each, hints, ...(text !== undefined && { text }) };
    }),
  };
}
