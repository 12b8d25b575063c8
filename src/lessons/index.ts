/** Worksheets from a book's own numbers: topics, sheets, answers and lessons. */
export { answerText, numberText, sameAnswer, unitText } from './answer-text.js';
export { type AuthoredQuestion, readQuestion, type WrittenQuestion } from './authored.js';
export { type BookNumbers, readNumbers } from './book-numbers.js';
export { checkAnswer } from './check-answer.js';
export type { Checked, CheckOptions } from './checked.js';
export { FORMULA_TASKS, type FormulaTask, formulaTaskWith, tasksNamed } from './formula-tasks.js';
export {
  LESSON_FORMAT,
  type Lesson,
  type LessonRead,
  type LessonTask,
  lessonSchema,
  parseLesson,
} from './lesson-schema.js';
export { lessonInWords } from './lesson-words.js';
export { type LessonSheet, MOST_PROBLEMS, makeSheet, problemOf, type SheetAsked } from './sheet.js';
export { STANDARDS, STANDARDS_NAME, type StandardCode, standardPage, standardShown } from './standards.js';
export { TOPICS, topicWithId } from './topics/index.js';
export {
  type Answer,
  type AnswerUnit,
  type Chart,
  LEVELS,
  type LessonProblem,
  type Level,
  type Topic,
} from './types.js';
