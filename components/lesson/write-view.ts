import { html, nothing, type TemplateResult } from 'lit';
import { cautions } from '../../src/facts/index.js';
import type { TaskSheet } from '../../src/lessons/formula-task-rows.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { say } from '../../src/words/index.js';

/** One formula for every row, while it is written. */
export interface WriteAsked {
  readonly title: string;
  readonly written: string;
  readonly tone: 'right' | 'wrong' | '';
  readonly message: string;
  readonly isBusy: boolean;
  readonly hints: readonly string[];
  /** How many of them are shown. */
  readonly steps: number;
  readonly onType: (formula: string) => void;
  readonly onCheck: () => void;
  readonly onHint: () => void;
  readonly onColumn: (name: string) => void;
}

/** The blank for a formula, its buttons, the columns to put into it, what came of it, and hints. */
export function writeView(live: LiveBook, { task, sheet }: TaskSheet, asked: WriteAsked): TemplateResult {
  const { title, written, tone, message, isBusy, hints, steps } = asked;
  return html`<div class="write">
      <div class="field">
        <label for="formula">${say`Formula for every row of “${title}”`}</label>
        <input
          id="formula"
          type="text"
          autocomplete="off"
          autocapitalize="off"
          spellcheck="false"
          maxlength="400"
          placeholder="=…"
          aria-describedby="asks feedback"
          aria-invalid=${tone === 'wrong' ? 'true' : nothing}
          .value=${written}
          @input=${(event: Event) => asked.onType((event.target as HTMLInputElement).value)}
          @keydown=${(event: KeyboardEvent) => {
            if (event.key === 'Enter') asked.onCheck();
          }}
        />
      </div>
      <button class="button first" type="button" aria-disabled=${String(isBusy)} @click=${asked.onCheck}>${say`Check`}</button>
      ${hintButton(asked)}
    </div>
    <div class="names small" role="group" aria-label=${say`Columns, to put into the formula`}>
      <span class="quiet">${say`Columns:`}</span>
      ${task.from.map((id) => {
        const column = live.column(sheet, id);
        return column
          ? html`<button class="button" type="button" @click=${() => asked.onColumn(column.name)}>
              ${column.title}
            </button>`
          : nothing;
      })}
    </div>
    <p class="feedback ${tone}" id="feedback">${isBusy ? say`Trying it with many numbers…` : message}</p>
    ${
      steps === 0
        ? nothing
        : html`<ol class="steps" aria-label=${say`Hints`}>
            ${hints.slice(0, steps).map((step) => html`<li>${step}</li>`)}
          </ol>`
    }`;
}

function hintButton({ hints, steps, onHint }: WriteAsked): TemplateResult {
  const left = hints.length - steps;
  if (left <= 0) return html`<span></span>`;
  const label = steps === 0 ? say`Hint` : left === 1 ? say`The formula` : say`Next hint`;
  return html`<button class="button" type="button" @click=${onHint}>${label}</button>`;
}

/** The usual cautions, where rows are of food in jars. */
export function taskCautions(live: LiveBook, { sheet, rows }: TaskSheet): TemplateResult | typeof nothing {
  return rows.some((row) => live.value(sheet, row, 'way') === 'canned')
    ? html`<p class="caution small">
        <strong>${say`With care:`}</strong> ${cautions('canned').map(({ text }) => `${text} `)}
      </p>`
    : nothing;
}
