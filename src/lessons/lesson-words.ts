import { say, spokenTag } from '../words/index.js';
import { z } from '../zod.js';
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

/** The words of a lesson in another language. A list stands for the lesson's own as a whole; what is left out stays. */
export const lessonWords = z.strictObject({
  title: words.max(120),
  goals: lines.optional(),
  introduction: lines.optional(),
  hands: lines.optional(),
  discuss: lines.optional(),
  questions: z.array(questionWords).optional(),
  tasks: z.array(taskWords).optional(),
});

export type LessonWords = z.infer<typeof lessonWords>;
export type QuestionWords = z.infer<typeof questionWords>;

/** Where the words do not go with the lesson: what is missing, and where. */
export function wordsLacking(
  { questions, tasks }: { questions: readonly AuthoredQuestion[]; tasks: readonly unknown[] },
  said: LessonWords,
): { readonly message: string; readonly path: string } | null {
  if (said.questions && said.questions.length !== questions.length)
    return { message: say`there are ${questions.length} questions`, path: 'questions' };
  if (said.tasks && said.tasks.length !== tasks.length)
    return { message: say`there are ${tasks.length} tasks`, path: 'tasks' };
  for (const [at, { choices = [] }] of (said.questions ?? []).entries()) {
    const answer = questions[at]?.answer;
    const has = answer?.kind === 'choice' ? answer.choices.length : 0;
    if (choices.length !== has)
      return { message: say`there are ${has} choices`, path: `questions.${at}.choices` };
  }
  return null;
}

/** The lesson in the language spoken now; as it is written where it has no words in that language. */
export function lessonInWords(lesson: Lesson): Lesson {
  const tag = spokenTag();
  const said = lesson.in[tag] ?? lesson.in[tag.split('-')[0]!];
  if (!said) return lesson;
  const { title, goals, introduction, hands, discuss, questions, tasks } = said;
  return {
    ...lesson,
    title,
    goals: goals ?? lesson.goals,
    introduction: introduction ?? lesson.introduction,
    hands: hands ?? lesson.hands,
    discuss: discuss ?? lesson.discuss,
    questions: questions?.map((each, at) => questionIn(lesson.questions[at]!, each)) ?? lesson.questions,
    tasks:
      tasks?.map(({ text, hints }, at) => ({
        ...lesson.tasks[at]!,
        hints,
        ...(text !== undefined && { text }),
      })) ?? lesson.tasks,
  };
}
