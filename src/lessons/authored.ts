import { fromIsoDay } from '../planning/dates.js';
import { parseDay } from '../planning/parse-date.js';
import { ok, type Result, refuse } from '../problem.js';
import { findUnit } from '../units/index.js';
import { say } from '../words/index.js';
import { answerText } from './answer-text.js';
import type { Rounding } from './exact.js';
import type { QuestionWords } from './lesson-words.js';
import { readNumber } from './read-number.js';
import type { Answer, AnswerUnit, LessonProblem } from './types.js';

/** A question that an author wrote, as a sheet shows it. */
export type AuthoredQuestion = LessonProblem;

/** A question as it is written in a lesson's JSON, or on a list item of an element. */
export interface WrittenQuestion {
  readonly text: string;
  readonly answer: string | number | boolean;
  readonly unit?: string | undefined;
  readonly round?: Rounding | undefined;
  readonly hints: readonly string[];
  readonly choices?: readonly string[] | undefined;
}

function unitFrom(written: string | undefined): AnswerUnit | null {
  if (!written) return null;
  const [of = written, per] = written.split(/\s+(?:an?|per)\s+|\s*\/\s*/);
  const known = findUnit(of);
  const unit = known.ok
    ? { one: known.value.id, many: known.value.plural, measure: known.value.id }
    : { one: of.replace(/([^s])s$/, '$1'), many: of };
  return per === undefined ? unit : { ...unit, per };
}

/** What kind of answer it is follows from how it is written. */
function answerFrom({ answer, unit, round = 'exact', choices }: WrittenQuestion): Answer | null {
  const text = String(answer).trim();
  if (choices) return choices.includes(text) ? { kind: 'choice', word: text, choices } : null;
  if (/^(?:yes|true)$/i.test(text)) return { kind: 'yes-no', yes: true };
  if (/^(?:no|false)$/i.test(text)) return { kind: 'yes-no', yes: false };
  const day = fromIsoDay(text).ok ? fromIsoDay(text) : /[a-z]{3}/i.test(text) ? parseDay(text) : null;
  if (day?.ok) return { kind: 'date', day: day.value };
  const ratio = /^(\d{1,6})\s*:\s*(\d{1,6})$/.exec(text);
  if (ratio) return { kind: 'ratio', parts: [Number(ratio[1]), Number(ratio[2])] };
  const number = readNumber(text, 'as stored');
  if (!number) return null;
  if (unit === '%' || number.isPercent)
    return {
      kind: 'percent',
      value: number.isPercent ? number.value : number.value.div(100),
      rounding: round,
    };
  return {
    kind: 'amount',
    value: number.value,
    unit: unitFrom(unit ?? (number.rest || undefined)),
    rounding: round,
  };
}

/** Reads one question. Refused (`bad-answer`) where its answer is not one that can be checked. */
export function readQuestion(written: WrittenQuestion, path: string): Result<AuthoredQuestion> {
  const answer = answerFrom(written);
  if (!answer) {
    const said = String(written.answer).slice(0, 60);
    return refuse(
      'bad-answer',
      written.choices
        ? say`The answer “${said}” is none of the choices.`
        : say`The answer “${said}” cannot be checked.`,
      written.choices
        ? say`Write it just as it stands among the choices.`
        : say`Write a number (12, 12.5, 17 2/3, 75 %), a date (2026-05-08), yes, no, or a ratio (3 : 2); or give choices.`,
      { path: `${path}.answer` },
    );
  }
  return ok({
    kind: 'own/question',
    id: written.text,
    text: written.text,
    answer,
    key: answer,
    // Said when it is asked for: a lesson is read once, and the language may come later.
    get steps() {
      return [...written.hints, say`The answer is ${answerText(answer)}.`];
    },
    canning: /\b(?:jars?|canning|canned)\b/i.test(written.text),
  });
}

/** The answer in other words: its choices, and what it is counted in. */
function answerIn(answer: Answer, { unit, choices }: QuestionWords): Answer {
  if (answer.kind === 'choice' && choices)
    return { ...answer, choices, word: choices[answer.choices.indexOf(answer.word)] ?? answer.word };
  if (answer.kind === 'amount' && answer.unit && unit !== undefined)
    return { ...answer, unit: { ...answer.unit, one: unit, many: unit } };
  return answer;
}

/** The same question in the words of another language: what was answered to the one is answered to the other. */
export function questionIn(question: AuthoredQuestion, said: QuestionWords): AuthoredQuestion {
  const answer = answerIn(question.answer, said);
  return {
    ...question,
    text: said.text,
    answer,
    key: answer,
    get steps() {
      return [...said.hints, say`The answer is ${answerText(answer)}.`];
    },
  };
}
