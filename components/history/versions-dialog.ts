import { css, html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { BookDoc } from '../../src/book/index.js';
import { type BringBack, type BroughtBack, bringBack } from '../../src/live/doings/bring-back.js';
import type { BookComparison } from '../../src/live/doings/compare-books.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import type { BookVersions, VersionEntry } from '../../src/storage/index.js';
import { bookAround } from '../book/find-book.js';
import { icons } from '../look/icons.js';
import { inWords } from '../look/problems.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import { broughtBackView } from './brought-back-view.js';
import { comparisonStyles, comparisonView } from './comparison-view.js';
import { runComparison } from './running-comparison.js';
import { versionCalled, versionsList, versionsListStyles } from './versions-list.js';

interface Shown {
  readonly entry: VersionEntry;
  readonly doc: BookDoc;
}

/** Earlier versions of the book: keep one by name, compare figure by figure, bring back all or a part. */
@customElement('croft-versions-dialog')
export class VersionsDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    versionsListStyles,
    comparisonStyles,
    css`
      .chosen {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(12rem, 1fr));
        gap: 0.625rem 1rem;
        align-items: end;
      }
      .told:not(:has(p)) {
        position: absolute;
      }
      .tick {
        display: flex;
        gap: 0.5rem;
        align-items: center;
        min-height: 2.125rem;
      }
    `,
  ];

  @state() private versions: BookVersions | null = null;
  @state() private entries: readonly VersionEntry[] = [];
  @state() private naming: number | null = null;
  @state() private said: Problem | string | null = null;
  @state() private shown: Shown | null = null;
  /** Null: the book as it is now. */
  @state() private other: Shown | null = null;
  @state() private found: BookComparison | null = null;
  @state() private progress = 0;
  @state() private figures = true;
  @state() private sheet: string | null = null;
  @state() private unfolded: ReadonlySet<string> = new Set();
  @state() private asked: { readonly called: string; readonly back: BroughtBack } | null = null;
  #run: object | null = null;

  protected override heading = 'Earlier versions';

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#load();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#run = null;
  }

  protected override content(live: LiveBook): TemplateResult {
    const said = html`<div role="status" class="told small">
      ${this.said === null ? nothing : html`<p class=${typeof this.said === 'string' ? '' : 'problem'}>${inWords(this.said)}</p>`}
    </div>`;
    if (this.asked) return html`${said}${this.#asking(live)}`;
    return html`${said}${this.shown ? this.#comparing(live, this.shown) : this.#listing(live)}`;
  }

  #listing(live: LiveBook): TemplateResult {
    const { versions } = this;
    if (!versions) return html`<p class="quiet" aria-busy="true">Looking…</p>${this.foot()}`;
    return html`
      ${
        versions.lasting
          ? html`<p class="small quiet">
              The book is kept by itself while you work: often just now, seldom long ago, ten in all. A version with a
              name stays until you remove it.
            </p>`
          : html`<p class="small">
              ${icons.care} <strong>This book is not kept on this device</strong>, so these versions are gone when the
              page is closed. Save a copy of what you want to keep.
            </p>`
      }
      <form class="naming" @submit=${this.#keepNow}>
        <input
          name="name"
          aria-label="Name of the version to keep now"
          placeholder="A name, as in: before canning season"
          maxlength="80"
          autocomplete="off"
        />
        <button class="button first">Keep this version now</button>
      </form>
      ${
        this.entries.length === 0
          ? html`<p>No earlier version is kept yet.</p>`
          : versionsList(this.entries, {
              naming: this.naming,
              title: live.title,
              compare: (entry) => void this.#open(entry),
              startNaming: (entry) => this.#startNaming(entry),
              rename: (entry, event) => void this.#rename(entry, event),
              remove: (entry) => void this.#remove(entry),
            })
      }
      ${this.foot()}
    `;
  }

  #comparing(live: LiveBook, { entry }: Shown): TemplateResult {
    const { found, other } = this;
    const called = versionCalled(entry);
    return html`
      <div class="chosen">
        <div class="field">
          <span class="small"><strong>Was:</strong> ${called}</span>
          <label for="other">Compared with</label>
          <select id="other" @change=${this.#chooseOther}>
            <option value="" ?selected=${other === null}>the book as it is now</option>
            ${this.entries
              .filter(({ id }) => id !== entry.id)
              .map(
                (each) =>
                  html`<option value=${each.id} ?selected=${other?.entry.id === each.id}>${versionCalled(each)}</option>`,
              )}
          </select>
        </div>
        <div class="field">
          <label for="only">Sheet</label>
          <select id="only" ?disabled=${!found} @change=${this.#chooseSheet}>
            <option value="">all sheets</option>
            ${(found?.sheets ?? []).map(
              ({ sheet, title }) =>
                html`<option value=${sheet} ?selected=${sheet === this.sheet}>${title}</option>`,
            )}
          </select>
        </div>
        <label class="tick"
          ><input
            type="checkbox"
            .checked=${this.figures}
            @change=${(event: Event) => {
              this.figures = (event.target as HTMLInputElement).checked;
            }}
          />Planning figures too</label
        >
      </div>
      ${
        found
          ? html`<p class="small quiet">
                Figures of both are worked out for the day that each is set to, else for today. The greatest differences
                come first; what is tinted is worked out.
              </p>
              ${
                other === null
                  ? html`<div>
                      <button class="button" type="button" @click=${() => this.#ask(live, null, 'the whole book')}>
                        ${icons.undo}Bring back the whole book…
                      </button>
                    </div>`
                  : nothing
              }
              ${comparisonView(found, {
                figures: this.figures,
                sheet: this.sheet,
                unfolded: this.unfolded,
                unfold: (sheet) => {
                  this.unfolded = new Set([...this.unfolded, sheet]);
                },
                ...(other === null && { bringBack: (what, name) => this.#ask(live, what, name) }),
              })}`
          : html`<div>
              <label for="progress">Comparing…</label>
              <progress id="progress" max="1" .value=${this.progress}></progress>
            </div>`
      }
      <div class="row ends">
        <button class="button" type="button" @click=${this.#back}>Back to the versions</button>
        <button class="button first" type="button" @click=${() => this.close()}>Close</button>
      </div>
    `;
  }

  #asking(live: LiveBook): TemplateResult {
    const { called, back } = this.asked!;
    return html`
      ${broughtBackView(live, called, versionCalled(this.shown!.entry), back)}
      <div class="row ends">
        <button class="button" type="button" @click=${() => this.#unask()}>Leave it as it is</button>
        <button class="button first" type="button" @click=${() => this.#bringBack(live)}>Bring it back</button>
      </div>
    `;
  }

  async #load(): Promise<void> {
    const past = bookAround(this)?.past;
    if (!past) return;
    this.versions ??= await past.versions();
    const listed = await this.versions.list();
    if (listed.ok) this.entries = listed.value;
    else this.said = listed.problem;
  }

  readonly #keepNow = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    const form = event.target as HTMLFormElement;
    const name = String(new FormData(form).get('name') ?? '');
    const made = await this.versions!.keepNow(name);
    this.said = made.ok ? `Kept as “${made.value.name}”.` : made.problem;
    if (made.ok) form.reset();
    await this.#load();
  };

  async #startNaming({ id }: VersionEntry): Promise<void> {
    this.naming = this.naming === id ? null : id;
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLInputElement>('li .naming input')?.select();
  }

  async #rename(entry: VersionEntry, event: SubmitEvent): Promise<void> {
    event.preventDefault();
    const name = String(new FormData(event.target as HTMLFormElement).get('name') ?? '');
    const done = await this.versions!.rename(entry.id, name);
    this.said = done.ok ? `Now called “${name.trim()}”; it stays until you remove it.` : done.problem;
    if (done.ok) this.naming = null;
    await this.#load();
  }

  /** Once asked with the same button again, for a version cannot be brought back from nowhere. */
  async #remove(entry: VersionEntry): Promise<void> {
    const words = `Choose remove again to let go of “${versionCalled(entry)}” for good.`;
    if (entry.name !== undefined && this.said !== words) {
      this.said = words;
      return;
    }
    const done = await this.versions!.remove(entry.id);
    this.said = done.ok ? `“${versionCalled(entry)}” is removed.` : done.problem;
    await this.#load();
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
  }

  async #open(entry: VersionEntry): Promise<void> {
    const read = await this.versions!.read(entry.id);
    if (!read.ok) {
      this.said = read.problem;
      return;
    }
    this.said = null;
    this.shown = { entry, doc: read.value };
    this.other = null;
    this.sheet = null;
    await this.#compare();
  }

  readonly #chooseOther = async (event: Event): Promise<void> => {
    const id = (event.target as HTMLSelectElement).value;
    const entry = this.entries.find((each) => String(each.id) === id);
    const read = entry && (await this.versions!.read(entry.id));
    if (read && !read.ok) this.said = read.problem;
    this.other = entry && read?.ok ? { entry, doc: read.value } : null;
    await this.#compare();
  };

  readonly #chooseSheet = (event: Event): void => {
    this.sheet = (event.target as HTMLSelectElement).value || null;
  };

  async #compare(): Promise<void> {
    const { live, shown } = this;
    if (!live || !shown) return;
    const run = {};
    this.#run = run;
    this.found = null;
    this.progress = 0;
    this.unfolded = new Set();
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
    const book = bookAround(this);
    const found = await runComparison(shown.doc, this.other?.doc ?? live, {
      progress: (done) => {
        this.progress = done;
      },
      stopped: () => this.#run !== run,
      engineLicenceKey: book?.engineLicenceKey ?? '',
    });
    if (found && this.#run === run) this.found = found;
  }

  readonly #back = (): void => {
    this.#run = null;
    this.shown = null;
    this.said = null;
    void this.#load();
  };

  #ask(live: LiveBook, what: { sheet: string; row?: string; column?: string } | null, called: string): void {
    const { entry, doc } = this.shown!;
    const back = bringBack(live, doc, partOf(what), versionCalled(entry));
    if (!back.ok) {
      this.said = back.problem;
      return;
    }
    this.said = null;
    this.asked = { called, back: back.value };
    this.#toTop();
  }

  #unask(): void {
    this.asked = null;
    this.#toTop();
  }

  #toTop(): void {
    void this.updateComplete.then(() => {
      this.dialog.scrollTop = 0;
      this.renderRoot.querySelector<HTMLElement>('h2')?.focus();
    });
  }

  #bringBack(live: LiveBook): void {
    const { back, called } = this.asked!;
    const outcome = live.apply(back.command);
    this.asked = null;
    this.said = outcome.ok
      ? (outcome.notes[0] ?? `Brought back: ${called}. Undo takes it back.`)
      : outcome.problem;
    this.#toTop();
    void this.#compare();
  }
}

function partOf(what: { sheet: string; row?: string; column?: string } | null): BringBack {
  if (what === null) return { part: 'book' };
  const { sheet, row, column } = what;
  if (row === undefined) return { part: 'sheet', sheet };
  return column === undefined ? { part: 'row', sheet, row } : { part: 'cell', sheet, row, column };
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-versions-dialog': VersionsDialog;
  }
}
