import { html, type TemplateResult } from 'lit';

export const tabId = (sheet: string): string => `tab-${sheet}`;
export const panelId = (sheet: string): string => `panel-${sheet}`;

/** One tab for each sheet, as WAI-ARIA has it: one takes the Tab key, arrows choose among them. */
export function tabs(
  sheets: readonly { readonly id: string; readonly title: string }[],
  shown: string,
  show: (id: string) => void,
  add: () => void,
): TemplateResult {
  const keys = (event: KeyboardEvent): void => {
    const at = sheets.findIndex(({ id }) => id === shown);
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: sheets.length - 1 }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const { id } = sheets[(to + sheets.length) % sheets.length]!;
    show(id);
    document.getElementById(tabId(id))?.focus();
  };
  return html`<div class="tabs">
    <div role="tablist" aria-label="Sheets of the book" @keydown=${keys}>
      ${sheets.map(
        ({ id, title }) =>
          html`<button
            type="button"
            role="tab"
            id=${tabId(id)}
            aria-controls=${panelId(id)}
            aria-selected=${id === shown}
            tabindex=${id === shown ? 0 : -1}
            @click=${() => show(id)}
          >
            ${title}
          </button>`,
      )}
    </div>
    <button type="button" @click=${add}>+ Sheet</button>
  </div>`;
}
