import { html, LitElement } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import limewash from '../../components/look/themes/limewash.css?url&no-inline';
import peat from '../../components/look/themes/peat.css?url&no-inline';
import slate from '../../components/look/themes/slate.css?url&no-inline';

/** Themes of the package by their names; '' is its usual look. */
const THEMES: Readonly<Record<string, string>> = { limewash, peat, slate };
const SCHEMES = { '': 'As the device', light: 'Light', dark: 'Dark' } as const;
const KEPT = 'croftsheet-demo-look';

interface Look {
  readonly theme: string;
  readonly scheme: string;
}

function kept(): Look {
  try {
    const { theme = '', scheme = '' } = JSON.parse(localStorage.getItem(KEPT) ?? '{}') as Partial<Look>;
    return { theme: Object.hasOwn(THEMES, theme) ? theme : '', scheme: scheme in SCHEMES ? scheme : '' };
  } catch {
    return { theme: '', scheme: '' };
  }
}

/** A theme is a style sheet that the page links; light and dark are the page's own `color-scheme`. */
function show({ theme, scheme }: Look): void {
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

/** How the demo looks: one of the package's themes, light or dark; remembered in this browser. */
@customElement('croft-demo-looks')
export class DemoLooks extends LitElement {
  @state() private look = kept();

  protected override createRenderRoot() {
    return this;
  }

  protected override render() {
    const { theme, scheme } = this.look;
    return html`<div class="look">
      <label>Look
        <select @change=${(event: Event) => this.#choose({ theme: chosen(event), scheme })}>
          <option value="" .selected=${theme === ''}>Usual</option>
          ${Object.keys(THEMES).map(
            (each) => html`<option value=${each} .selected=${each === theme}>${named(each)}</option>`,
          )}
        </select>
      </label>
      <label><span class="unseen">Light or dark</span>
        <select @change=${(event: Event) => this.#choose({ theme, scheme: chosen(event) })}>
          ${Object.entries(SCHEMES).map(
            ([each, words]) => html`<option value=${each} .selected=${each === scheme}>${words}</option>`,
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
