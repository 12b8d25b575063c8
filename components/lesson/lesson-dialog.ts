import { css, html, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { TOPICS } from '../../src/lessons/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { asWritten, phrase, say, spoken } from '../../src/words/index.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import './croft-lesson.js';

/** Worksheets from the book that is open: which topics, and how many questions. */
@customElement('croft-lesson-dialog')
export class LessonDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    css`
      dialog {
        width: min(60rem, calc(100vw - 1.5rem));
      }
      .topics {
        display: grid;
        grid-template-columns: repeat(auto-fill, minmax(13rem, 1fr));
        gap: 0.125rem 1rem;
      }
      .topics label {
        display: flex;
        gap: 0.5rem;
        align-items: center;
        min-height: 2rem;
        font-weight: 400;
        font-size: 0.9375rem;
      }
      legend {
        font-weight: 600;
        font-size: 0.8125rem;
        padding: 0;
      }
      .count {
        width: 5rem;
      }
      /* The worksheet alone, as its own button prints it. */
      @media print {
        .stack:has(croft-lesson) > :not(croft-lesson) {
          display: none;
        }
      }
    `,
  ];

  @state() private topics: readonly string[] = ['units'];
  @state() private count = 6;

  protected override heading = phrase('Food math');

  protected override content(_live: LiveBook): TemplateResult {
    return html`
      <p class="quiet small">
        ${say`Worksheets of school mathematics from this book’s own numbers. Nothing that is written here goes into the book.`}
      </p>
      <fieldset>
        <legend>${say`Topics`}</legend>
        <div class="topics">
          ${TOPICS.map(
            ({ id, title }) => html`<label>
              <input type="checkbox" .checked=${this.topics.includes(id)} @change=${() => this.#turn(id)} />
              ${asWritten(() => spoken(title))}
            </label>`,
          )}
        </div>
      </fieldset>
      <div class="field count">
        <label for="count">${say`Questions`}</label>
        <input
          id="count"
          type="number"
          min="1"
          max="40"
          .value=${String(this.count)}
          @change=${(event: Event) => {
            this.count = Math.min(
              40,
              Math.max(1, Math.round(Number((event.target as HTMLInputElement).value)) || 6),
            );
          }}
        />
      </div>
      ${
        this.topics.length === 0
          ? html`<p>${say`Choose a topic.`}</p>`
          : html`<croft-lesson topics=${this.topics.join(' ')} count=${this.count}></croft-lesson>`
      }
      ${this.foot()}
    `;
  }

  /** Topics in the order of the list, whichever was chosen first. */
  #turn(id: string): void {
    const chosen = new Set(this.topics);
    if (!chosen.delete(id)) chosen.add(id);
    this.topics = TOPICS.map((topic) => topic.id).filter((each) => chosen.has(each));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-lesson-dialog': LessonDialog;
  }
}
