import { ROUNDINGS, type Rounding } from '../../src/lessons/exact.js';
import { type AuthoredQuestion, readQuestion } from '../../src/lessons/index.js';
import type { Problem } from '../../src/problem.js';
import { say } from '../../src/words/index.js';

const parts = (text: string | undefined): string[] =>
  (text ?? '')
    .split(';')
    .map((each) => each.trim())
    .filter((each) => each !== '');

/**
 * Questions that a page writes inside the element: `<ol><li data-answer="8" data-unit="pints"
 * data-round="tenth" data-hints="first; second" data-choices="a; b">How many …?</li></ol>`.
 */
export function questionsIn(host: Element): {
  readonly questions: readonly AuthoredQuestion[];
  readonly problems: readonly Problem[];
} {
  const questions: AuthoredQuestion[] = [];
  const problems: Problem[] = [];
  host.querySelectorAll<HTMLLIElement>(':scope > ol > li').forEach((item, at) => {
    const { answer, unit, round, hints, hint, choices } = item.dataset;
    const text = (item.textContent ?? '').replace(/\s+/g, ' ').trim();
    const path = `question ${at + 1}`;
    if (answer === undefined || text === '') {
      problems.push({
        code: 'no-answer',
        message: text === '' ? say`Question ${at + 1} has no text.` : say`Question ${at + 1} has no answer.`,
        mend: say`Write <li data-answer="8" data-unit="pints">How many pints are 4 quarts?</li>.`,
        where: { path },
      });
      return;
    }
    const rounding = ROUNDINGS.find((each) => each === round);
    if (round !== undefined && !rounding) {
      problems.push({
        code: 'bad-rounding',
        message: say`Question ${at + 1} is to be rounded to “${round.slice(0, 20)}”.`,
        mend: say`Write data-round as one of: ${ROUNDINGS.join(', ')}.`,
        where: { path },
      });
      return;
    }
    const read = readQuestion(
      {
        text,
        answer,
        unit,
        round: rounding as Rounding | undefined,
        hints: parts(hints ?? hint),
        choices: choices === undefined ? undefined : parts(choices),
      },
      path,
    );
    if (read.ok) questions.push(read.value);
    else problems.push(read.problem);
  });
  return { questions, problems };
}
