import { css, html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { placeInWords } from '../../src/live/doings/describe-merge.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { Problem, Result } from '../../src/problem.js';
import type { BookCopy, BookEntry, Conflict, Decision, MergePlan } from '../../src/storage/index.js';
import { phrase, say } from '../../src/words/index.js';
import type { BookPast } from '../book/book-past.js';
import { download } from '../book/copies.js';
import { bookAround } from '../book/find-book.js';
import { loadStorage } from '../book/keeping.js';
import { fillsTelephone } from '../look/dialog-styles.js';
import { icons } from '../look/icons.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import { conflictStyles, conflictView } from './conflict-view.js';
import { planView } from './plan-view.js';

type Storage = Awaited<ReturnType<typeof loadStorage>>;

/** Merges another copy of the book: what comes in, and what both changed, to decide side by side. */
@customElement('croft-merge-dialog')
export class MergeDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    conflictStyles,
    css`
      .standing {
        gap: 0.5rem;
      }
      .ways {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(13rem, 1fr));
        gap: 1rem;
      }
      .ways > * {
        display: grid;
        gap: 0.5rem;
        align-content: start;
      }
      h3 {
        margin-top: 0.25rem;
      }
    `,
    fillsTelephone,
  ];

  @state() private others: readonly BookEntry[] = [];
  @state() private copy: BookCopy | null = null;
  @state() private plan: MergePlan | null = null;
  @state() private decisions: ReadonlyMap<string, Decision> = new Map();
  /** Chosen for conflicts that stand on the list. */
  @state() private later: ReadonlyMap<string, Decision> = new Map();
  @state() private said: Problem | string | null = null;
  @state() private busy = false;
  #storage: Storage | null = null;

  protected override heading = phrase('Merge a copy');

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#load();
  }

  get #past(): BookPast | null {
    return bookAround(this)?.past ?? null;
  }

  async #load(): Promise<void> {
    this.#storage = await loadStorage();
    this.others = (await this.#past?.others(bookAround(this)?.key ?? null)) ?? [];
    this.requestUpdate();
  }

  protected override content(live: LiveBook): TemplateResult {
    return html`
      ${this.outcome(this.said)}
      ${this.plan && this.#storage ? this.#planned(live, this.plan, this.#storage) : this.#choosing(live)}
    `;
  }

  #choosing(live: LiveBook): TemplateResult {
    return html`
      ${this.#standing(live)}
      <p class="small quiet">
        ${say`A copy that was edited elsewhere comes in row by row and cell by cell: what was drawn on both is drawn from both. Nothing changes before you have seen what comes in.`}
      </p>
      <div class="ways">
        <section aria-labelledby="from-file">
          <h3 id="from-file">${say`From a file`}</h3>
          <label for="file">${say`A copy of this book`}</label>
          <input id="file" type="file" accept=".json,application/json" ?disabled=${this.busy} @change=${this.#chooseFile} />
          <p class="small quiet">${say`Best is one that was saved for merging; a plain copy does too, and may ask more.`}</p>
        </section>
        ${
          this.others.length === 0
            ? nothing
            : html`<section aria-labelledby="from-kept">
                <h3 id="from-kept">${say`From this browser`}</h3>
                <label for="kept">${say`A book kept here that is a copy of this one`}</label>
                <select id="kept">
                  ${this.others.map(({ id, title }) => html`<option value=${id}>${title}</option>`)}
                </select>
                <button class="button" type="button" ?disabled=${this.busy} @click=${this.#chooseKept}>${say`Look at it`}</button>
              </section>`
        }
        <section aria-labelledby="to-file">
          <h3 id="to-file">${say`Give a copy away to edit`}</h3>
          <div class="row">
            <button class="button" type="button" @click=${this.#save}>${icons.save}${say`Save for merging`}</button>
            <button class="button" type="button" @click=${() => void bookAround(this)?.saveACopy()}>
              ${icons.save}${say`Save a copy`}
            </button>
          </div>
          <p class="small quiet">
            ${say`Saved for merging, the file has what is needed to merge it again without guessing; it still holds what was removed. A plain copy holds only what the book shows.`}
          </p>
        </section>
      </div>
      ${this.foot()}
    `;
  }

  /** What is still to be decided from merges before, and from copies that are joined by a provider. */
  #standing(live: LiveBook): TemplateResult | typeof nothing {
    const open = this.#past?.conflicts ?? [];
    const storage = this.#storage;
    if (open.length === 0 || !storage) return nothing;
    return html`<section class="stack standing" aria-labelledby="standing">
      <h3 id="standing">${say`Still to decide`}</h3>
      <p class="small quiet">
        ${say`Both copies changed these. They stay on this list until you decide or let go of each, for as long as the page is open; a merge also keeps the version “before merging”.`}
      </p>
      <div class="conflicts">
        ${open.map((conflict, i) =>
          conflictView(conflict, i, {
            where: (each) => placeInWords(live, each.path),
            column: (sheet, id) => live.column(sheet, id),
            both: storage.bothOf,
            decision: (each) => this.later.get(storage.conflictKey(each)),
            choose: (each, decision) => {
              this.later = new Map([...this.later, [storage.conflictKey(each), decision]]);
            },
            foot: (each) => html`<div class="row">
              <button
                class="button"
                type="button"
                ?disabled=${!this.later.has(storage.conflictKey(each))}
                @click=${() => this.#decide(each, storage)}
              >
                ${say`Write this`}
              </button>
              <button class="button plain" type="button" @click=${() => this.#letGo(each)}>
                ${say`Let go: leave the book as it is`}
              </button>
            </div>`,
          }),
        )}
      </div>
    </section>`;
  }

  #planned(live: LiveBook, plan: MergePlan, storage: Storage): TemplateResult {
    const { conflicts, edits } = plan;
    const open = conflicts.filter((each) => !this.decisions.has(storage.conflictKey(each))).length;
    return html`
      ${planView(live, plan, {
        both: storage.bothOf,
        decision: (each) => this.decisions.get(storage.conflictKey(each)),
        choose: (each, decision) => {
          this.decisions = new Map([...this.decisions, [storage.conflictKey(each), decision]]);
        },
      })}
      <p class="small quiet" role="status">
        ${open === 0 ? '' : say`${open} left open. `}${say`The book as it is now is kept first, as the version “before merging”.`}
      </p>
      <div class="row ends">
        <button class="button" type="button" @click=${this.#another}>${say`Cancel`}</button>
        ${
          edits.length + conflicts.length === 0
            ? nothing
            : html`<button class="button first" type="button" ?disabled=${this.busy} @click=${this.#merge}>
                ${say`Merge it in`}
              </button>`
        }
      </div>
    `;
  }

  readonly #chooseFile = async (event: Event): Promise<void> => {
    const field = event.target as HTMLInputElement;
    const [file] = field.files ?? [];
    field.value = '';
    if (file) await this.#look((past) => past.readFile(file));
  };

  readonly #chooseKept = async (): Promise<void> => {
    const id = this.renderRoot.querySelector<HTMLSelectElement>('#kept')?.value;
    if (id) await this.#look((past) => past.readKept(id));
  };

  async #look(read: (past: BookPast) => Promise<Result<BookCopy>>): Promise<void> {
    const past = this.#past;
    if (!past) return;
    this.busy = true;
    this.said = say`Reading the copy…`;
    await this.updateComplete;
    const copy = await read(past);
    const plan = copy.ok ? await past.planMerge(copy.value) : copy;
    this.busy = false;
    this.said = plan.ok ? null : plan.problem;
    if (!copy.ok || !plan.ok) return;
    this.copy = copy.value;
    this.plan = plan.value;
    this.decisions = new Map();
    void this.toTop();
  }

  readonly #merge = async (): Promise<void> => {
    const { copy, plan } = this;
    const past = this.#past;
    if (!copy || !plan || !past) return;
    this.busy = true;
    const merged = await past.merge(copy, this.decisions);
    this.busy = false;
    const outcome = merged.ok ? merged.value : merged;
    if (!outcome.ok) {
      this.said = outcome.problem;
      void this.toTop();
      return;
    }
    const words = say`“${plan.theirs.title}” is merged in. Undo takes it back as one step.`;
    if (past.conflicts.length === 0) return this.close(outcome.notes[0] ?? words);
    this.said = words;
    this.#another();
  };

  readonly #another = (): void => {
    this.plan = null;
    this.copy = null;
    void this.toTop();
  };

  async #decide(conflict: Conflict, storage: Storage): Promise<void> {
    const decision = this.later.get(storage.conflictKey(conflict));
    const outcome = decision && (await this.#past?.decide(conflict, decision));
    if (outcome) this.said = outcome.ok ? say`Written. Undo takes it back.` : outcome.problem;
    this.requestUpdate();
    void this.toTop();
  }

  #letGo(conflict: Conflict): void {
    this.#past?.letGo(conflict);
    this.said = say`Let go; the book stays as it is.`;
    void this.toTop();
  }

  readonly #save = async (): Promise<void> => {
    const file = await this.#past?.forMerging();
    if (!file) return;
    download(file);
    this.said = say`Saved as ${file.name}.`;
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-merge-dialog': MergeDialog;
  }
}
