import { html, LitElement } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import limewash from '../../components/look/themes/limewash.css?url&no-inline';
import peat from '../../components/look/themes/peat.css?url&no-inline';
import slate from '../../components/look/themes/slate.css?url&no-inline';
import { LANGUAGES, spokenTag } from '../../src/words/index.js';
import { phrase, SaidAnew, say, spoken } from './said.js';

/** Themes of the package by their names; '' is its usual look. */
const THEMES: Readonly<Record<string, string>> = { limewash, peat, slate };
const SCHEMES = { '': phrase('As the device'), light: phrase('Light'), dark: phrase('Dark') } as const;
const KEPT = 'croftsheet-demo-look';

interface Look {
  readonly theme: string;
  readonly scheme: string;
  /** '' where the page's own counts. */
  readonly language: string;
}

function kept(): Look {
  try {
    const {
      theme = '',
      scheme = '',
      language = '',
    } = JSON.parse(localStorage.getItem(KEPT) ?? '{}') as Partial<Look>;
    return {
      theme: Object.hasOwn(THEMES, theme) ? theme : '',
      scheme: scheme in SCHEMES ? scheme : '',
      language: LANGUAGES.includes(language) ? language : '',
    };
  } catch {
    return { theme: '', scheme: '', language: '' };
  }
}

/** A theme is a style sheet that the page links; light and dark are the page's own `color-scheme`, its language its `lang`. */
function show({ theme, scheme, language }: Look): void {
  if (language !== '') document.documentElement.lang = language;
  document.documentElement.style.colorScheme = scheme;
  let link = document.querySelector<HTMLLinkElement>('link[data-theme]');
  if (theme === '') {
    link?.remove();
    return;
  }
  link ??= document.head.appendChild(document.createElement('link'));
  link.dataset.theme = theme;
  link.rel = 'stylesheet';
  link.href = THEMES[theme]!;
}

show(kept());

const named = (theme: string): string => theme.replace(/^./, (first) => first.toUpperCase());

/** What a language calls itself. */
const languageCalled = (tag: string): string =>
  new Intl.DisplayNames(tag, { type: 'language' }).of(tag) ?? tag;

/** How the demo looks: one of the package's themes, light or dark; and what it speaks. Remembered in this browser. */
@customElement('croft-demo-looks')
export class DemoLooks extends LitElement {
  @state() private look = kept();

  constructor() {
    super();
    new SaidAnew(this);
  }

  protected override createRenderRoot() {
    return this;
  }

  protected override render() {
    const { look } = this;
    const { theme, scheme } = look;
    const speaks = spokenTag().split('-')[0];
    return html`<div class="look">
      <label>${say`Look`}
        <select @change=${(event: Event) => this.#choose({ ...look, theme: chosen(event) })}>
          <option value="" .selected=${theme === ''}>${say`Usual`}</option>
          ${Object.keys(THEMES).map(
            (each) => html`<option value=${each} .selected=${each === theme}>${named(each)}</option>`,
          )}
        </select>
      </label>
      <label><span class="unseen">${say`Light or dark`}</span>
        <select @change=${(event: Event) => this.#choose({ ...look, scheme: chosen(event) })}>
          ${Object.entries(SCHEMES).map(
            ([each, words]) =>
              html`<option value=${each} .selected=${each === scheme}>${spoken(words)}</option>`,
          )}
        </select>
      </label>
      <label><span class="unseen">${say`Language`}</span>
        <select @change=${(event: Event) => this.#choose({ ...look, language: chosen(event) })}>
          ${LANGUAGES.map(
            (tag) =>
              html`<option value=${tag} lang=${tag} .selected=${tag === speaks}>${languageCalled(tag)}</option>`,
          )}
        </select>
      </label>
    </div>`;
  }

  #choose(look: Look): void {
    this.look = look;
    show(look);
    try {
      localStorage.setItem(KEPT, JSON.stringify(look));
    } catch {
      // Without storage the choice lasts as long as the page.
    }
  }
}

const chosen = (event: Event): string => (event.target as HTMLSelectElement).value;
