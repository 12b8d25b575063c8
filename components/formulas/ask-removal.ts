import { html, type TemplateResult } from 'lit';
import type { Command } from '../../src/book/index.js';
import { dependentsOf, removalOf } from '../../src/live/doings/dependents.js';
import type { LiveBook } from '../../src/live/live-book.js';

/**
 * The dialog to be shown before a removal on which formulas depend (it does the command itself, and says
 * `croft-dialog-done`); null where nothing depends on it, so that it can be done at once.
 */
export function removalDialog(
  live: LiveBook,
  command: Command,
  note = '',
): (() => Promise<TemplateResult>) | null {
  const removal = removalOf(command);
  const found = removal && dependentsOf(live, removal);
  if (!found) return null;
  return async () => {
    await import('./removal-dialog.js');
    return html`<croft-removal-dialog .command=${command} .found=${found} .note=${note}></croft-removal-dialog>`;
  };
}
