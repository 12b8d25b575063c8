import { html, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { BookDoc } from '../../src/book/index.js';
import { type BringBack, type BroughtBack, bringBack } from '../../src/live/doings/bring-back.js';
import type { BookComparison } from '../../src/live/doings/compare-books.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';
import type { BookVersions, VersionEntry } from '../../src/storage/index.js';
import { phrase, say } from '../../src/words/index.js';
import { bookAround } from '../book/find-book.js';
import { fillsTelephone } from '../look/dialog-styles.js';
import { icons } from '../look/icons.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import { broughtBackView } from './brought-back-view.js';
import { comparingStyles, comparingView } from './comparing-view.js';
import { comparisonStyles } from './comparison-styles.js';
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
    comparingStyles,
    fillsTelephone,
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

  protected override heading = phrase('Earlier versions');

  override connectedCallback(): void {
    super.connectedCallback();
    void this.#load();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#run = null;
  }

  protected override content(live: LiveBook): TemplateResult {
    const said = this.outcome(this.said);
    if (this.asked) return html`${said}${this.#asking(live)}`;
    return html`${said}${this.shown ? this.#comparing(live, this.shown) : this.#listing(live)}`;
  }

  #listing(live: LiveBook): TemplateResult {
    const { versions } = this;
    if (!versions) return html`<p class="quiet" aria-busy="true">${say`Looking…`}</p>${this.foot()}`;
    return html`
      ${
        versions.lasting
          ? html`<p class="small quiet">
              ${say`The book is kept by itself while you work: often just now, seldom long ago, ten in all. A version with a name stays until you remove it.`}
            </p>`
          : html`<p class="small">
              ${icons.care} <strong>${say`This book is not kept on this device`}</strong>${say`, so these versions are gone when the page is closed. Save a copy of what you want to keep.`}
            </p>`
      }
      <form class="naming" @submit=${this.#keepNow}>
        <input
          name="name"
          aria-label=${say`Name of the version to keep now`}
          placeholder=${say`A name, as in: before canning season`}
          maxlength="80"
          autocomplete="off"
        />
        <button class="button first">${say`Keep this version now`}</button>
      </form>
      ${
        this.entries.length === 0
          ? html`<p>${say`No earlier version is kept yet.`}</p>`
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
    const { entries, found, other, sheet, figures, progress, unfolded } = this;
    return html`
      ${comparingView(
        { entry, others: entries.filter(({ id }) => id !== entry.id), other: other?.entry ?? null },
        { found, sheet, figures, progress, unfolded },
        {
          compareWith: (id) => void this.#compareWith(id),
          onlySheet: (only) => {
            this.sheet = only;
          },
          withFigures: (wanted) => {
            this.figures = wanted;
          },
          unfold: (each) => {
            this.unfolded = new Set([...this.unfolded, each]);
          },
          bringBack: (what, called) => this.#ask(live, what, called),
        },
      )}
      <div class="row ends">
        <button class="button" type="button" @click=${this.#back}>${say`Back to the versions`}</button>
        <button class="button first" type="button" @click=${() => this.close()}>${say`Close`}</button>
      </div>
    `;
  }

  #asking(live: LiveBook): TemplateResult {
    const { called, back } = this.asked!;
    return html`
      ${broughtBackView(live, called, versionCalled(this.shown!.entry), back)}
      <div class="row ends">
        <button class="button" type="button" @click=${() => this.#unask()}>${say`Cancel`}</button>
        <button class="button first" type="button" @click=${() => this.#bringBack(live)}>${say`Bring it back`}</button>
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
    this.said = made.ok ? say`Kept as “${made.value.name}”.` : made.problem;
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
    this.said = done.ok ? say`Now called “${name.trim()}”; it stays until you remove it.` : done.problem;
    if (done.ok) this.naming = null;
    await this.#load();
  }

  /** Once asked with the same button again, for a version cannot be brought back from nowhere. */
  async #remove(entry: VersionEntry): Promise<void> {
    const words = say`Choose remove again to let go of “${versionCalled(entry)}” for good.`;
    if (entry.name !== undefined && this.said !== words) {
      this.said = words;
      return;
    }
    const done = await this.versions!.remove(entry.id);
    this.said = done.ok ? say`“${versionCalled(entry)}” is removed.` : done.problem;
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

  async #compareWith(id: number | null): Promise<void> {
    const entry = this.entries.find((each) => each.id === id);
    const read = entry && (await this.versions!.read(entry.id));
    if (read && !read.ok) this.said = read.problem;
    this.other = entry && read?.ok ? { entry, doc: read.value } : null;
    await this.#compare();
  }

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

  #ask(live: LiveBook, what: BringBack, called: string): void {
    const { entry, doc } = this.shown!;
    const back = bringBack(live, doc, what, versionCalled(entry));
    if (!back.ok) {
      this.said = back.problem;
      return;
    }
    this.said = null;
    this.asked = { called, back: back.value };
    void this.toTop();
  }

  #unask(): void {
    this.asked = null;
    void this.toTop();
  }

  #bringBack(live: LiveBook): void {
    const { back, called } = this.asked!;
    const outcome = live.apply(back.command);
    this.asked = null;
    this.said = outcome.ok
      ? (outcome.notes[0] ?? say`Brought back: ${called}. Undo takes it back.`)
      : outcome.problem;
    void this.toTop();
    void this.#compare();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-versions-dialog': VersionsDialog;
  }
}
