import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { readTypedNumber } from '../../src/book/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import { turnedUnit } from '../../src/units/index.js';
import { decimalSign, say, spoken } from '../../src/words/index.js';
import { base } from '../look/base.js';
import { inWords } from '../look/problems.js';
import { shownNumber } from './shown.js';
import { type Answer, ASKED, type Asked, answersOf, eggsAWeek } from './what-it-takes-answers.js';

/** An amount in the measures that the household reads, in those that are reckoned with. */
const inCustomary = (n: number, unit: string): number =>
  Number((n / (turnedUnit(unit)?.factor ?? 1)).toPrecision(12));

/** An answer in the measures that the household reads. */
function asRead(answer: Answer): Answer {
  const turned = turnedUnit(answer.unit);
  if (!turned) return answer;
  const [low, usual, high] = [answer.low, answer.usual, answer.high].map((n) => n * turned.factor);
  return { ...answer, low: low!, usual: usual!, high: high!, unit: turned.unit };
}

const range = ({ low, usual, high }: Answer): string =>
  low === high
    ? shownNumber(usual, 1)
    : say`${shownNumber(usual, 1)} (${shownNumber(low, 1)} to ${shownNumber(high, 1)})`;

/**
 * Inside `<croft-sheet>`, under the people of the table: hens for the eggs, what an animal brings, flour from grain,
 * dry food cooked; each with its range and source, and as a formula. Nothing of it is kept.
 */
@customElement('croft-what-it-takes')
export class WhatItTakes extends LitElement {
  static override styles = [
    base,
    css`
      :host {
        margin-top: 1.25rem;
      }
      summary {
        cursor: pointer;
        width: fit-content;
        font-weight: 600;
      }
      .cards {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 17rem), 1fr));
        gap: 0.75rem;
        margin-top: 0.75rem;
      }
      section {
        border: 1px solid var(--line);
        border-radius: var(--radius);
        background: var(--raised);
        padding: 0.75rem 1rem;
        display: grid;
        gap: 0.625rem;
        align-content: start;
      }
      .asks {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(7rem, 1fr));
        gap: 0.5rem;
      }
      dl {
        display: grid;
        gap: 0.5rem;
      }
      dt {
        font-size: 0.8125rem;
        color: var(--quiet);
      }
      dd strong {
        font-size: 1.0625rem;
      }
      .from {
        margin-top: 0.375rem;
        color: var(--quiet);
        overflow-wrap: anywhere;
      }
      .from dt,
      section summary {
        font-size: 0.8125rem;
        font-weight: 600;
      }
      section summary {
        text-decoration: underline;
        text-underline-offset: 2px;
      }
      section details {
        margin-top: 0.5rem;
      }
      ul.from,
      .cautions {
        display: grid;
        gap: 0.25rem;
      }
      .cautions {
        margin-top: 0.5rem;
        border-inline-start: 3px solid var(--problem);
        padding-inline-start: 0.625rem;
      }
      code {
        font:
          0.8125rem/1.4 ui-monospace,
          'Cascadia Mono',
          Menlo,
          'DejaVu Sans Mono',
          monospace;
      }
    `,
  ];

  @property({ attribute: false }) live!: LiveBook;
  @state() private opened = false;
  @state() private given: Readonly<Record<string, string>> = {};

  protected override render() {
    return html`<details
      @toggle=${(event: Event) => {
        this.opened = (event.target as HTMLDetailsElement).open;
      }}
    >
      <summary>${say`What it takes: eggs, meat, flour, dry beans`}</summary>
      ${this.opened ? html`<div class="cards">${ASKED.map((asked) => this.#card(asked))}</div>` : nothing}
    </details>`;
  }

  #card(asked: Asked): TemplateResult {
    const { id, title, choices, choice, number, unit } = asked;
    const chosen = this.given[`${id}-of`] ?? choices[0] ?? '';
    const typed = this.given[id] ?? this.#usual(asked, chosen);
    const n = readTypedNumber(typed.trim());
    return html`<section aria-labelledby="${id}-title">
      <h3 id="${id}-title">${spoken(title)}</h3>
      <div class="asks">
        ${
          choices.length === 0
            ? nothing
            : html`<div class="field">
                <label for="${id}-of">${spoken(choice)}</label>
                <select id="${id}-of" @change=${(event: Event) => this.#give(`${id}-of`, event)}>
                  ${choices.map((each) => html`<option value=${each} .selected=${each === chosen}>${spoken(each)}</option>`)}
                </select>
              </div>`
        }
        <div class="field">
          <label for=${id}>${spoken(number)} <span class="quiet">${spoken(turnedUnit(unit)?.unit ?? unit)}</span></label>
          <input
            id=${id}
            inputmode="decimal"
            autocomplete="off"
            .value=${typed}
            @input=${(event: Event) => this.#give(id, event)}
          />
        </div>
      </div>
      <div role="status">${this.#answers(asked, chosen, typed, n)}</div>
    </section>`;
  }

  #answers(asked: Asked, chosen: string, typed: string, n: number | undefined) {
    if (typed.trim() === '') return html`<p class="quiet small">${spoken(asked.blank)}</p>`;
    if (n === undefined) return wrong(say`Write a number, as in 12 or 2.5.`);
    const found = answersOf(asked.id, chosen, inCustomary(n, asked.unit), this.live.garden?.figures);
    if (!found.ok) return wrong(found.problem);
    const { formula, notes, cautions } = found.value;
    const answers = found.value.answers.map(asRead);
    return html`<dl>
        ${answers.map(
          (answer) => html`<div>
            <dt>${spoken(answer.name)}</dt>
            <dd class="figures"><strong>${range(answer)}</strong> ${spoken(answer.unit)}</dd>
          </div>`,
        )}
      </dl>
      ${cautions.length === 0 ? nothing : html`<ul class="cautions small">${cautions.map((text) => html`<li>${spoken(text)}</li>`)}</ul>`}
      <details class="small">
        <summary>${say`Sources`}</summary>
        <dl class="from">
          ${answers.map(
            (answer) => html`<div>
              <dt>${spoken(answer.name)}</dt>
              <dd>${answer.from}</dd>
            </div>`,
          )}
        </dl>
        ${notes.length === 0 ? nothing : html`<ul class="from">${notes.map((note) => html`<li>${note}</li>`)}</ul>`}
        ${formula ? html`<p class="from">${say`As a formula:`} <code>${formula}</code></p>` : nothing}
      </details>`;
  }

  /** What a field begins with: by the book where it says, else a usual amount. */
  #usual({ id, usual, unit }: Asked, chosen: string): string {
    const eggs = id === 'hens' ? eggsAWeek(this.live) : null;
    const begin = usual[chosen] ?? usual[''] ?? '';
    const turned = turnedUnit(unit);
    if (eggs !== null) return typedNumber(eggs);
    return turned && begin !== '' ? typedNumber(Number(begin) * turned.factor) : begin;
  }

  #give(id: string, event: Event): void {
    const { value } = event.target as HTMLInputElement;
    const { [id.replace(/-of$/, '')]: _number, ...rest } = this.given;
    // Another animal has another weight.
    this.given = id.endsWith('-of') ? { ...rest, [id]: value } : { ...this.given, [id]: value };
  }
}

/** A number as one would type it into a field. */
const typedNumber = (n: number): string => String(Math.round(n * 10) / 10).replace('.', decimalSign());

const wrong = (problem: Problem | string): TemplateResult =>
  html`<p class="problem small">${inWords(problem)}</p>`;

declare global {
  interface HTMLElementTagNameMap {
    'croft-what-it-takes': WhatItTakes;
  }
}
