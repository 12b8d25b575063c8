import { html, type TemplateResult } from 'lit';
import { removalDialog } from '../../components/formulas/ask-removal.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { say } from './said.js';

/** Puts a dialog on the page, which takes itself off when it is done. */
export type Ask = (load: () => Promise<TemplateResult>) => void;

export const newSheet = async (copyOf = ''): Promise<TemplateResult> => {
  await import('../../components/sheets/new-sheet-dialog.js');
  return html`<croft-new-sheet-dialog .copyOf=${copyOf}></croft-new-sheet-dialog>`;
};

const rename = async (sheet: string): Promise<TemplateResult> => {
  await import('../../components/sheets/rename-dialog.js');
  return html`<croft-rename-sheet-dialog .sheet=${sheet}></croft-rename-sheet-dialog>`;
};

/** Removes it; asks before where formulas of other sheets depend on it. */
function remove(live: LiveBook, sheet: string, ask: Ask): void {
  const dialog = removalDialog(live, { do: 'remove sheet', sheet });
  if (dialog) ask(dialog);
  else live.apply({ do: 'remove sheet', sheet });
}

/** What is done with a sheet of one's own: another title, another place among them, a copy, away with it. */
export function ownTools(live: LiveBook, sheet: string, ask: Ask): TemplateResult {
  const own = live.sheets().filter(({ kind }) => kind === 'own');
  const at = own.findIndex(({ id }) => id === sheet);
  const move = (before: string | null) => live.apply({ do: 'move sheet', sheet, before });
  return html`<div class="own-tools">
    <button type="button" @click=${() => ask(() => rename(sheet))}>${say`Rename sheet`}</button>
    <button type="button" @click=${() => ask(() => newSheet(sheet))}>${say`Copy sheet`}</button>
    <button type="button" ?disabled=${at === 0} @click=${() => move(own[at - 1]!.id)}>${say`Move left`}</button>
    <button type="button" ?disabled=${at === own.length - 1} @click=${() => move(own[at + 2]?.id ?? null)}>${say`Move right`}</button>
    <button type="button" @click=${() => remove(live, sheet, ask)}>${say`Remove sheet`}</button>
  </div>`;
}
