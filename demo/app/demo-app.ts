import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import type { CroftBook } from '../../components/book/croft-book.js';
import type { OwnBookAnswers } from '../../components/book/own-book.js';
import { openModal } from '../../components/look/modal.js';
import type { ShowEvent } from '../../components/pictures/show.js';
import type { Problem } from '../../src/problem.js';
import type { BookEntry } from '../../src/storage/index.js';
import bench from '../data/tamarack-bench.json?url';
import mark from '../mark.svg?url&no-inline';
import './looks.js';
import './start-dialog.js';
import { problemsDialog } from './dialogs.js';
import { PICTURES, tabGroups } from './groups.js';
import { newSheet, ownTools } from './own-tools.js';
import { isPicture, picturesView } from './pictures.js';
import { SaidAnew, say } from './said.js';
import type { StartDialog } from './start-dialog.js';
import { panelId, tabField, tabId, tabList } from './tabs.js';

const DEMO_TITLE = 'Tamarack Bench';
/** On such pages what is done with books is folded away; as in the page's style. */
const NARROW = matchMedia('(max-width: 48rem)');

/**
 * The demo: one household's book with a tab for each sheet, kept in this browser; a copy of it can be saved
 * and opened, and a household of one's own started beside it.
 */
@customElement('croft-demo')
export class DemoApp extends LitElement {
  @query('croft-book') private book!: CroftBook;
  @state() private books: readonly BookEntry[] = [];
  @state() private tab = decodeURIComponent(location.hash.slice(1)) || 'shelf';
  /** Sheets whose tab was shown: their grids stay. */
  @state() private opened: readonly string[] = [];
  @state() private problems: readonly Problem[] = [];
  /** A dialog about a sheet; null where nothing is asked. */
  @state() private asked: TemplateResult | null = null;
  /** The picture looked at last. */
  #picture = PICTURES;
  /** How far down each tab was looked at. */
  readonly #heights = new Map<string, number>();
  readonly #which = new URL(location.href).searchParams.get('book');

  constructor() {
    super();
    new SaidAnew(this);
  }

  protected override createRenderRoot() {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    NARROW.addEventListener('change', () => this.requestUpdate());
    // Going back: to the sheet before, as far down as it was.
    window.addEventListener('hashchange', async () => {
      const id = decodeURIComponent(location.hash.slice(1)) || 'shelf';
      if (id === this.tab) return;
      this.#show(id, true);
      await this.updateComplete;
      window.scrollTo({ top: this.#heights.get(id) ?? 0 });
    });
  }

  protected override render() {
    return html`
      <croft-book
        src=${bench}
        keep
        keep-as="tamarack-bench"
        which=${this.#which ?? nothing}
        grid-licence-key="non-commercial-and-evaluation"
        @croft-ready=${this.#ready}
        @croft-change=${this.#changed}
        @croft-problem=${this.#failed}
        @croft-show=${this.#goTo}
      >
        <header class="wide top">
          <a class="brand" href="./index.html"><img src=${mark} alt="" />Croftsheet</a>
          <nav aria-label=${say`Pages`}><a href="./guide/index.html" hreflang="en">${say`Guide`}</a> · <a href="./blog.html" hreflang="en">${say`In a blog post`}</a> · <a href="./lessons.html">${say`Lessons`}</a></nav>
          <croft-demo-looks></croft-demo-looks>
        </header>
        <main class="wide">${this.#title()} ${this.#sheets()}</main>
        <footer class="wide">
          ${say`Tamarack Bench and all its figures of stock, use and harvest are invented. Books stay in this browser; nothing is sent anywhere.`}
          <croft-demo-looks class="below"></croft-demo-looks>
        </footer>
        <croft-demo-start .use=${this.#start}></croft-demo-start> ${problemsDialog(this.problems)}
        ${
          this.asked === null
            ? nothing
            : html`<div @croft-dialog-done=${() => {
                this.asked = null;
              }}>${this.asked}</div>`
        }
      </croft-book>
    `;
  }

  #title() {
    const { live, key } = this.book ?? {};
    const isDemo = !live || key === this.book.sourceKey;
    return html`<div class="title">
      <div>
        <h1>${live?.title ?? DEMO_TITLE}</h1>
        <croft-figures-day></croft-figures-day>
        <p class="about">
          ${
            isDemo
              ? say`Six people on a short-season hill farm, invented for this page. Change anything: tinted columns follow at once.`
              : say`Your own book. It is kept in this browser; save a copy now and then.`
          }
        </p>
      </div>
      <details class="books-fold" ?open=${!NARROW.matches}>
        <summary>${say`Books`}</summary>
        <div class="books">${this.#bookTools()}</div>
      </details>
    </div>`;
  }

  #bookTools() {
    const key = this.book?.key ?? this.book?.sourceKey;
    const source = this.book?.sourceKey;
    const others = this.books.filter(({ id }) => id !== source);
    return html`
      ${
        others.length === 0
          ? nothing
          : html`<label for="which">${say`Book`}</label>
              <select id="which" @change=${this.#choose}>
                <option value="" .selected=${key === source}>${say`${DEMO_TITLE} (demo)`}</option>
                ${others.map(({ id, title }) => html`<option value=${id} .selected=${id === key}>${title}</option>`)}
              </select>`
      }
      <croft-book-menu></croft-book-menu>
      <button type="button" @click=${() => this.book.saveACopy()}>${say`Save a copy`}</button>
      <button type="button" @click=${() => this.querySelector<HTMLInputElement>('#file')?.click()}>${say`Open a copy`}</button>
      <input id="file" type="file" accept=".json,application/json" hidden aria-label=${say`Open a copy`} @change=${this.#openFile} />
      <button type="button" class="first" @click=${() => this.querySelector<StartDialog>('croft-demo-start')?.open()}>${say`Start your own book`}</button>
    `;
  }

  #sheets() {
    const live = this.book?.live;
    const sheets = live?.sheets() ?? [];
    if (!live) return html`<div class="panel"><croft-sheet sheet="shelf" read-only bare></croft-sheet></div>`;
    const shown = this.#shown(sheets);
    const groups = tabGroups(sheets);
    const show = (id: string) => this.#show(id);
    return html`
      <div class="tabs">
        ${tabList(say`Sheets of the book`, groups, shown, show)} ${tabField(say`Go to`, groups, shown, show)}
        <button type="button" @click=${() => this.#ask(() => newSheet())}>${say`+ Sheet`}</button>
      </div>
      ${sheets.map(({ id, kind }) =>
        this.#panel(
          id,
          shown,
          () => html`
        ${kind === 'own' ? ownTools(live, id, this.#ask) : nothing}
        <croft-sheet sheet=${id} view="edit" bare></croft-sheet>
      `,
        ),
      )}
      ${this.#panel(PICTURES, shown, () => picturesView(isPicture(this.tab) ? this.tab : this.#picture, show))}
    `;
  }

  /** What belongs to a tab; it is made when the tab is first shown, and stays. */
  #panel(id: string, shown: string, content: () => unknown) {
    if (!this.opened.includes(id) && id !== shown) return nothing;
    return html`<div
      class="panel"
      role="tabpanel"
      id=${panelId(id)}
      aria-labelledby=${tabId(id)}
      ?hidden=${id !== shown}
    >
      ${content()}
    </div>`;
  }

  readonly #ask = async (load: () => Promise<TemplateResult>): Promise<void> => {
    this.asked = await load();
  };

  #shown(sheets: readonly { id: string; kind: string }[]): string {
    if (isPicture(this.tab)) return PICTURES;
    const found = sheets.find(({ id }) => id === this.tab) ?? sheets.find(({ kind }) => kind === this.tab);
    return (found ?? sheets.find(({ kind }) => kind === 'shelf') ?? sheets[0])?.id ?? '';
  }

  /** `isBack`: the address says it already. */
  #show(id: string, isBack = false): void {
    const sheets = this.book.live?.sheets() ?? [];
    this.opened = [...new Set([...this.opened, this.#shown(sheets)])];
    this.#heights.set(this.tab, window.scrollY);
    this.tab = id;
    if (isPicture(id)) this.#picture = id;
    const hash = `#${encodeURIComponent(id)}`;
    if (!isBack && hash !== location.hash) history.pushState(null, '', hash);
  }

  #dialog(name: string): void {
    const dialog = this.querySelector<HTMLDialogElement>(`dialog#${name}`);
    if (dialog) openModal(dialog);
  }

  readonly #ready = async (event: Event): Promise<void> => {
    if (event.target !== this.book) return;
    const { key, live, sourceKey } = this.book;
    const url = new URL(location.href);
    if (key === null || key === sourceKey) url.searchParams.delete('book');
    else url.searchParams.set('book', key);
    history.replaceState(null, '', url);
    document.title = `${live?.title ?? DEMO_TITLE} · Croftsheet`;
    this.opened = [];
    this.requestUpdate();
    this.books = await this.book.keptBooks();
  };

  readonly #changed = (event: Event): void => {
    const { sheets, settings } = (event as CustomEvent<{ sheets: ReadonlySet<string>; settings: boolean }>)
      .detail;
    if (sheets.size > 0 || settings) this.requestUpdate();
  };

  readonly #failed = (event: CustomEvent<{ problems: readonly Problem[] }>): void => {
    this.problems = event.detail.problems;
    void this.updateComplete.then(() => this.#dialog('problems'));
  };

  /** A picture asks for the row behind something drawn. */
  readonly #goTo = async ({ detail: { sheet, row, column } }: ShowEvent): Promise<void> => {
    this.#show(sheet);
    await this.updateComplete;
    // A new sheet has no row to go to.
    if (row === '') return;
    const shown = this.querySelector<HTMLElementTagNameMap['croft-sheet']>(`#${panelId(sheet)} croft-sheet`);
    await shown?.showCell({ row, column });
  };

  readonly #choose = (event: Event): void => {
    this.book.which = (event.target as HTMLSelectElement).value || null;
  };

  readonly #openFile = async (event: Event): Promise<void> => {
    const field = event.target as HTMLInputElement;
    const [file] = field.files ?? [];
    field.value = '';
    if (file) await this.book.openACopy(file);
  };

  readonly #start = async (answers: OwnBookAnswers): Promise<void> => {
    const started = await this.book.startOwnBook(answers);
    if (started.ok) this.#show('shelf');
  };
}
