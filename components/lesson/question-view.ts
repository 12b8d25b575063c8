import { html, nothing, type TemplateResult } from 'lit';
import { type Checked, type LessonProblem, unitText } from '../../src/lessons/index.js';
import { say, spoken } from '../../src/words/index.js';
import { chartView } from './chart-view.js';

/** A question while somebody works at it. */
export interface Asked {
  readonly problem: LessonProblem;
  typed: string;
  checked: Checked | null;
  /** Steps of the working that are shown. */
  steps: number;
}

export const asked = (problem: LessonProblem): Asked => ({ problem, typed: '', checked: null, steps: 0 });

export interface QuestionEvents {
  readonly check: (at: number) => void;
  readonly type: (at: number, typed: string) => void;
  readonly hint: (at: number) => void;
}

const SOFT = new Set<Checked['kind']>(['not as asked', 'unit missing', 'wrong unit', 'unreadable']);

function blank({ problem, typed, checked }: Asked, at: number, on: QuestionEvents, writeUnits: boolean) {
  const { key } = problem;
  const unit = writeUnits ? '' : unitText(key);
  const label = unit
    ? say`Answer to question ${at + 1}, in ${unit === '%' ? say`percent` : unit}`
    : say`Answer to question ${at + 1}`;
  const wrong = checked !== null && checked.kind !== 'right' && checked.kind !== 'blank';
  if (key.kind === 'choice' || key.kind === 'yes-no') {
    const choices = key.kind === 'choice' ? key.choices : [say`yes`, say`no`];
    return html`<select
      class="blank"
      id="a${at}"
      aria-label=${label}
      aria-describedby="t${at} f${at}"
      aria-invalid=${wrong ? 'true' : nothing}
      @change=${(event: Event) => on.type(at, (event.target as HTMLSelectElement).value)}
    >
      <option value="" ?selected=${typed === ''}>${say`Choose…`}</option>
      ${choices.map((choice) => html`<option value=${choice} ?selected=${choice === typed}>${choice}</option>`)}
    </select>`;
  }
  return html`<input
      class="blank ${key.kind === 'date' ? 'day' : ''}"
      id="a${at}"
      type="text"
      autocomplete="off"
      autocapitalize="off"
      spellcheck="false"
      maxlength="80"
      aria-label=${label}
      aria-describedby="t${at} f${at}"
      aria-invalid=${wrong ? 'true' : nothing}
      placeholder=${key.kind === 'date' ? say`as in 8 May 2026` : key.kind === 'ratio' ? say`as in 3 : 2` : nothing}
      .value=${typed}
      @input=${(event: Event) => on.type(at, (event.target as HTMLInputElement).value)}
      @keydown=${(event: KeyboardEvent) => {
        if (event.key === 'Enter') on.check(at);
      }}
    />${unit ? html`<span class="unit" aria-hidden="true">${unit}</span>` : nothing}`;
}

function hintFor(steps: number, left: number, question: number): string {
  if (steps === 0) return say`Hint for question ${question}`;
  return left === 1 ? say`Last step for question ${question}` : say`Next step for question ${question}`;
}

/** One question: its text, its blank, what came of the answer, and the steps that were asked for. */
export function questionView(
  each: Asked,
  at: number,
  on: QuestionEvents,
  writeUnits: boolean,
): TemplateResult {
  const { problem, checked, steps } = each;
  const done = checked?.kind === 'right';
  const left = problem.steps.length - steps;
  const tone = done ? 'right' : checked && SOFT.has(checked.kind) ? 'soft' : 'wrong';
  // An answer is checked when the blank and its buttons are left; on the way to 'Check' it is not checked twice.
  const leave = ({ currentTarget, relatedTarget }: FocusEvent): void => {
    const stays = relatedTarget instanceof Node && (currentTarget as Element).contains(relatedTarget);
    if (!stays && each.checked === null && each.typed.trim() !== '') on.check(at);
  };
  return html`<li class="question ${done ? 'done' : ''}">
    <p class="text" id="t${at}">${problem.text}</p>
    ${problem.chart ? chartView(problem.chart) : nothing}
    <div class="answer" @focusout=${leave}>
      ${blank(each, at, on, writeUnits)}
      <button class="button check" type="button" aria-label=${say`Check question ${at + 1}`} @click=${() => on.check(at)}>
        ${say`Check`}
      </button>
      ${
        left > 0
          ? html`<button
              class="button plain"
              type="button"
              aria-label=${hintFor(steps, left, at + 1)}
              @click=${() => on.hint(at)}
            >
              ${steps === 0 ? say`Hint` : left === 1 ? say`Last step` : say`Next step`}
            </button>`
          : nothing
      }
    </div>
    <p class="feedback ${tone}" id="f${at}">${spoken(checked?.message ?? '')}</p>
    ${
      steps > 0
        ? html`<ol class="steps" aria-label=${say`Working of question ${at + 1}`}>
            ${problem.steps.slice(0, steps).map((step) => html`<li>${step}</li>`)}
          </ol>`
        : nothing
    }
  </li>`;
}
