import { html, nothing, type TemplateResult } from 'lit';
import { rowName } from '../../src/live/row-name.js';
import { say } from '../../src/words/index.js';
import type { GridWork, Standing } from './grid-work.js';

/** How a column stands, in a sentence or two. */
export function standingInWords(
  { copy, sheet }: GridWork,
  { rows, written, right, wrong, message }: Standing,
): string {
  if (message !== '') return message;
  if (written === 0) return say`Not written yet.`;
  const sofar = say`${right} of ${rows} rows right.`;
  if (!wrong) return right > 0 ? sofar : say`Trying it with many numbers…`;
  return `${sofar} ${rowName(copy, sheet, wrong.row)}: ${wrong.message}`;
}

export interface GridTaskAsked {
  readonly title: string;
  /** What is asked; empty where it stands above the grid. */
  readonly asks: string;
  readonly standing: Standing;
  readonly words: string;
  readonly hints: readonly string[];
  /** How many of them are shown. */
  readonly steps: number;
  readonly onHint: (steps: number) => void;
}

/** One column to be written: how it stands, and its hints a step at a time. */
export function gridTaskView(asked: GridTaskAsked): TemplateResult {
  const { title, asks, standing, words, hints, onHint } = asked;
  const steps = Math.min(asked.steps, hints.length);
  const left = hints.length - steps;
  const label = steps === 0 ? say`Hint` : left === 1 ? say`The formula` : say`Next hint`;
  const tone = standing.message ? 'right' : standing.wrong ? 'wrong' : '';
  const sign = { right: '✓ ', wrong: '✗ ', '': '' }[tone];
  return html`<section class="asked-task" aria-label=${title}>
    ${asks ? html`<p class="text">${asks}</p>` : nothing}
    <div class="stands">
      <p class="feedback ${tone}"><span aria-hidden="true">${sign}</span>${words}</p>
      ${
        left > 0
          ? html`<button class="button" type="button" aria-label="${label}: ${title}" @click=${() => onHint(steps + 1)}>
              ${label}
            </button>`
          : nothing
      }
    </div>
    ${
      steps > 0
        ? html`<ol class="steps" aria-label=${say`Hints: ${title}`}>
            ${hints.slice(0, steps).map((step) => html`<li>${step}</li>`)}
          </ol>`
        : nothing
    }
  </section>`;
}
