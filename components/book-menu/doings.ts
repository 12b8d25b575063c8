import { html, type TemplateResult } from 'lit';
import { icons } from '../look/icons.js';

/** Something to do with the whole book, offered in its menu. */
export interface BookDoing {
  readonly label: string;
  /** What it does, in a sentence. */
  readonly title: string;
  readonly icon: TemplateResult;
  /** Those of one group stand together. */
  readonly group: 'sheets' | 'look' | 'copies';
  /** Loads its dialog (an `ActionDialog`) and answers the element to show. */
  open(): Promise<TemplateResult>;
}

/** What the book's menu offers. A new doing is one more entry here. */
export const BOOK_DOINGS: readonly BookDoing[] = [
  {
    label: 'Formulas and errors…',
    title: 'Lists every formula of the book, what it gives and what is wrong, and mends what is broken.',
    icon: icons.formulas,
    group: 'sheets',
    open: async () => {
      await import('../formulas/formulas-dialog.js');
      return html`<croft-formulas-dialog></croft-formulas-dialog>`;
    },
  },
];
