import { css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { LiveBook } from '../../../src/live/live-book.js';
import { phrase, say } from '../../../src/words/index.js';
import type { GridCell } from '../../grid/grid-view.js';
import { inWords } from '../../look/problems.js';
import { ActionDialog } from '../actions/action-dialog.js';

/** Writes a note on cells, or takes it away. */
@customElement('croft-note-dialog')
export class NoteDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    css`
      dialog {
        width: min(30rem, calc(100vw - 1.5rem));
      }
      textarea {
        resize: vertical;
      }
      p:empty {
        display: none;
      }
    `,
  ];

  @property() sheet = '';
  @property({ attribute: false }) cells: readonly GridCell[] = [];
  @state() private wrong = '';
  protected override heading = phrase('Note');

  protected override firstUpdated(changed: PropertyValues): void {
    super.firstUpdated(changed);
    this.renderRoot.querySelector('textarea')?.focus();
  }

  protected override content(live: LiveBook): TemplateResult {
    const [first] = this.cells;
    const note = (first && live.noteOf(this.sheet, first.row, first.column)) ?? '';
    const title = first && live.column(this.sheet, first.column)?.title;
    const row = first ? live.rowIds(this.sheet).indexOf(first.row) + 1 : 0;
    const { length } = this.cells;
    return html`<form class="stack" @submit=${(event: Event) => this.#keep(event, live)}>
      <div class="field">
        <label for="note">${length === 1 ? say`On ${title}, row ${row}` : say`On these ${length} cells`}</label>
        <textarea
          id="note"
          rows="4"
          aria-describedby="wrong how"
          aria-invalid=${this.wrong !== ''}
          .value=${note}
          @keydown=${this.#pressed}
        ></textarea>
        <p id="wrong" class="problem small" role="alert">${this.wrong}</p>
        <p id="how" class="small quiet">
          ${say`It stands beside what the cell holds and changes nothing in it. A blank one takes the note away.`}
        </p>
      </div>
      <div class="row ends">
        ${
          note === ''
            ? nothing
            : html`<button class="button" type="button" @click=${() => this.#write(live, null)}>${say`Take it away`}</button>`
        }
        <button class="button" type="button" @click=${() => this.close()}>${say`Cancel`}</button>
        <button class="button first">${say`Keep the note`}</button>
      </div>
    </form>`;
  }

  readonly #pressed = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' || !(event.ctrlKey || event.metaKey)) return;
    event.preventDefault();
    (event.target as HTMLTextAreaElement).form?.requestSubmit();
  };

  #keep(event: Event, live: LiveBook): void {
    event.preventDefault();
    this.#write(live, this.renderRoot.querySelector('textarea')?.value.trim() || null);
  }

  #write(live: LiveBook, note: string | null): void {
    const done = live.apply({ do: 'mark cells', sheet: this.sheet, cells: this.cells, note });
    if (done.ok) this.close(note === null ? say`Note taken away.` : say`Note kept.`);
    else this.wrong = inWords(done.problem);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-note-dialog': NoteDialog;
  }
}
