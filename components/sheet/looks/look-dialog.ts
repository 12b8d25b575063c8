import { html, type TemplateResult } from 'lit';
import type { GridRequest } from '../../grid/grid-view.js';

export type LookRequest = Extract<GridRequest, { ask: 'colour' | 'note' | 'colour rules' | 'summary' }>;

/** The dialog that changes how cells or a column are looked at, loaded when it is asked for. */
export async function lookDialog(sheet: string, what: LookRequest): Promise<TemplateResult> {
  switch (what.ask) {
    case 'colour':
      await import('./colour-dialog.js');
      return html`<croft-colour-dialog .sheet=${sheet} .cells=${what.cells}></croft-colour-dialog>`;
    case 'note':
      await import('./note-dialog.js');
      return html`<croft-note-dialog .sheet=${sheet} .cells=${what.cells}></croft-note-dialog>`;
    case 'colour rules':
      await import('./rules-dialog.js');
      return html`<croft-rules-dialog .sheet=${sheet} .column=${what.column}></croft-rules-dialog>`;
    case 'summary':
      await import('./summary-dialog.js');
      return html`<croft-summary-dialog .sheet=${sheet} .column=${what.column}></croft-summary-dialog>`;
  }
}
