import { html, nothing, type TemplateResult } from 'lit';

export const tabId = (of: string): string => `tab-${of}`;
export const panelId = (of: string): string => `panel-${of}`;

export interface Tab {
  readonly id: string;
  readonly title: string;
}

/** Tabs that belong together, under a name that a narrow page shows. */
export interface TabGroup {
  readonly title: string;
  readonly tabs: readonly Tab[];
}

/** Chooses a tab and puts the keyboard on it. */
const keys =
  (all: readonly Tab[], shown: string, show: (id: string) => void) =>
  (event: KeyboardEvent): void => {
    const at = all.findIndex(({ id }) => id === shown);
    const onwards = getComputedStyle(event.currentTarget as Element).direction === 'rtl' ? -1 : 1;
    const to = { ArrowRight: at + onwards, ArrowLeft: at - onwards, Home: 0, End: all.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const { id } = all[(to + all.length) % all.length]!;
    show(id);
    document.getElementById(tabId(id))?.focus();
  };

/** A list of tabs as WAI-ARIA has it: one takes the Tab key, arrows choose among them. */
export function tabList(
  label: string,
  groups: readonly TabGroup[],
  shown: string,
  show: (id: string) => void,
): TemplateResult {
  const all = groups.flatMap(({ tabs }) => tabs);
  return html`<div role="tablist" aria-label=${label} @keydown=${keys(all, shown, show)}>
    ${groups.map(
      ({ title, tabs }) => html`<div class="group" role="presentation" title=${title || nothing}>
        ${tabs.map(
          (tab) => html`<button
            type="button"
            role="tab"
            id=${tabId(tab.id)}
            aria-controls=${panelId(tab.id)}
            aria-selected=${tab.id === shown}
            tabindex=${tab.id === shown ? 0 : -1}
            @click=${() => show(tab.id)}
          >
            ${tab.title}
          </button>`,
        )}
      </div>`,
    )}
  </div>`;
}

/** The same choice as one field, for narrow pages: styles show one of the two. */
export const tabField = (
  label: string,
  groups: readonly TabGroup[],
  shown: string,
  show: (id: string) => void,
): TemplateResult => html`<div class="tab-field">
  <label for="go-to">${label}</label>
  <select id="go-to" @change=${(event: Event) => show((event.target as HTMLSelectElement).value)}>
    ${groups.map(
      ({ title, tabs }) => html`<optgroup label=${title}>
        ${tabs.map(({ id, title }) => html`<option value=${id} .selected=${id === shown}>${title}</option>`)}
      </optgroup>`,
    )}
  </select>
</div>`;
