import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { ImportPlan } from '../../src/tables/plan.js';
import { phrase, say } from '../../src/words/index.js';
import { BookController } from '../book/find-book.js';
import { undoKey } from '../book/undo-keys.js';
import { inWords } from '../look/problems.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import { columnsView, placeView } from './columns-view.js';
import { findingsView, firstRows, inFigures, progressView } from './findings-view.js';
import { ImportRun } from './import-run.js';
import { readingView, sourceView } from './source-view.js';
import { tablesStyles } from './tables-styles.js';

const LISTED = 20;

const leftOut = ({ columns }: ImportPlan): string[] =>
  columns.filter(({ target }) => target.to === 'leave out').map(({ heading }) => heading);

/** Brings a table into the book from a file or from what is pasted, after showing where everything would go. */
@customElement('croft-bring-in-dialog')
export class BringInDialog extends ActionDialog {
  static override styles = [...ActionDialog.styles, tablesStyles];

  protected override heading = phrase('Bring in a table');
  @state() private listed = LISTED;
  readonly #beside = new BookController(this);
  readonly #run = new ImportRun(this, () => this.live);

  constructor() {
    super();
    // Rows come in part by part: undo in the middle of it would take back a part that the next one builds on.
    this.addEventListener('keydown', (event) => {
      if (this.#run.busy?.what === 'bringing in' && undoKey(event)) event.preventDefault();
    });
  }

  protected override content(live: LiveBook): TemplateResult {
    const run = this.#run;
    if (run.busy?.what === 'bringing in') return progressView(run.busy, () => run.stop());
    if (!run.opened) {
      return html`${this.#problem()} ${
        run.busy
          ? progressView(run.busy, () => run.reset())
          : sourceView({
              files: (files) => void this.#take(() => run.take(files)),
              text: (text) => void this.#take(() => run.takeText(text)),
            })
      }
        ${this.foot()}`;
    }
    const { plan, settled } = run;
    return html`${readingView(run)} ${this.#problem()}
      ${plan ? html`${placeView(live, run)} ${columnsView(live, run)}` : nothing}
      ${run.busy ? progressView(run.busy, () => run.reset()) : nothing}
      ${
        settled && plan
          ? html`${firstRows(run, settled)}
              ${findingsView(settled, leftOut(plan), this.listed, () => {
                this.listed += 100;
              })}`
          : nothing
      }
      ${this.#foot(live)}`;
  }

  #problem(): TemplateResult | typeof nothing {
    const { problem, book } = this.#run;
    if (!problem) return nothing;
    return html`<div role="alert" class="stack-small">
      <p class="problem">${inWords(problem)}</p>
      ${
        book && this.#beside.book
          ? html`<div class="row">
              <button class="button" type="button" @click=${() => void this.#open(book)}>
                ${say`Open it as a copy beside this book`}
              </button>
            </div>`
          : nothing
      }
    </div>`;
  }

  #foot(live: LiveBook): TemplateResult {
    const { settled, plan, busy } = this.#run;
    const nothingTaken = plan?.columns.every(({ target }) => target.to === 'leave out') ?? true;
    if (!settled || !plan || busy || nothingTaken || settled.rows.length === 0) return this.foot();
    const rows = settled.rows.length;
    const wrong = settled.problems.length + settled.more;
    return this.foot(
      {
        label: rows === 1 ? say`Bring in 1 row` : say`Bring in ${inFigures(rows)} rows`,
        run: () => void this.#bring(live),
      },
      wrong === 0
        ? ''
        : wrong === 1
          ? say`1 thing to look at: see the end of this list.`
          : say`${inFigures(wrong)} things to look at: see the end of this list.`,
    );
  }

  async #take(work: () => Promise<void>): Promise<void> {
    this.listed = LISTED;
    try {
      await work();
    } catch (error) {
      console.error(error);
      this.#run.reset();
      this.#run.problem = {
        code: 'not-read',
        message: phrase('This file could not be read.'),
        mend: phrase('Look whether it is still where it was, and try again.'),
      };
      this.requestUpdate();
    }
    // What was focused is gone; reading goes on from the top of what came.
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
  }

  async #bring(live: LiveBook): Promise<void> {
    const run = this.#run;
    const { name } = run;
    const work = run.bring();
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('.stop')?.focus();
    const done = await work;
    if (done === null) {
      this.requestUpdate();
      await this.updateComplete;
      this.renderRoot.querySelector<HTMLElement>('.ends .first')?.focus();
      return;
    }
    const title = live.sheets().find(({ id }) => id === done.sheet)?.title ?? '';
    this.close(
      done.rows === 1
        ? say`1 row of ${name} now stands in “${title}”. Undo takes them back in one step.`
        : say`${inFigures(done.rows)} rows of ${name} now stand in “${title}”. Undo takes them back in one step.`,
    );
    const row = live.rowIds(done.sheet).at(-done.rows) ?? '';
    const column = live.columns(done.sheet).find(({ hidden }) => !hidden)?.id ?? '';
    const detail = { sheet: done.sheet, row, column };
    this.dispatchEvent(new CustomEvent('croft-show', { detail, bubbles: true, composed: true }));
  }

  async #open(file: File): Promise<void> {
    const opened = await this.#beside.book!.openACopy(file);
    if (opened.ok) return this.close();
    this.#run.problem = opened.problems[0] ?? null;
    this.#run.book = null;
    this.requestUpdate();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-bring-in-dialog': BringInDialog;
  }
}
