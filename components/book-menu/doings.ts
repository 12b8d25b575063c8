import { html, type TemplateResult } from 'lit';
import { phrase } from '../../src/words/index.js';
import { icons } from '../look/icons.js';

/** Something to do with the whole book, offered in its menu. */
export interface BookDoing {
  /** In English: it is told in the language spoken when it is shown; so is `title`. */
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
    label: phrase('New sheet…'),
    title: phrase(
      'Adds a sheet of your own: blank, like a sheet of the book, a copy of one, or a table you have.',
    ),
    icon: icons.newSheet,
    group: 'sheets',
    open: async () => {
      await import('../sheets/new-sheet-dialog.js');
      return html`<croft-new-sheet-dialog></croft-new-sheet-dialog>`;
    },
  },
  {
    label: phrase('Formulas and errors…'),
    title: phrase(
      'Lists every formula of the book, what it gives and what is wrong, and mends what is broken.',
    ),
    icon: icons.formulas,
    group: 'sheets',
    open: async () => {
      await import('../formulas/formulas-dialog.js');
      return html`<croft-formulas-dialog></croft-formulas-dialog>`;
    },
  },
  {
    label: phrase('Functions…'),
    title: phrase(
      'Every function for formulas: what it gives, its arguments, its source, and an example to change.',
    ),
    icon: icons.functions,
    group: 'sheets',
    open: async () => {
      await import('../functions/functions-dialog.js');
      return html`<croft-functions-dialog></croft-functions-dialog>`;
    },
  },
  {
    label: phrase('What if…'),
    title: phrase('Tries other values on a copy of the book, and shows which planning figures would change.'),
    icon: icons.whatIf,
    group: 'sheets',
    open: async () => {
      await import('../what-if/what-if-dialog.js');
      return html`<croft-what-if-dialog></croft-what-if-dialog>`;
    },
  },
  {
    label: phrase('Food math…'),
    title: phrase(
      'Makes worksheets of school mathematics from this book’s own numbers, with an answer key to print.',
    ),
    icon: icons.lesson,
    group: 'sheets',
    open: async () => {
      await import('../lesson/lesson-dialog.js');
      return html`<croft-lesson-dialog></croft-lesson-dialog>`;
    },
  },
  {
    label: phrase('Bring in a table…'),
    title: phrase(
      'Brings rows in from a file (CSV, TSV, workbook) or from what you paste, after showing where they go.',
    ),
    icon: icons.bringIn,
    group: 'copies',
    open: async () => {
      await import('../tables/bring-in-dialog.js');
      return html`<croft-bring-in-dialog></croft-bring-in-dialog>`;
    },
  },
  {
    label: phrase('Take out…'),
    title: phrase('Takes a sheet, or all of them, out as files for other programs.'),
    icon: icons.takeOut,
    group: 'copies',
    open: async () => {
      await import('../tables/take-out-dialog.js');
      return html`<croft-take-out-dialog></croft-take-out-dialog>`;
    },
  },
  {
    label: phrase('Earlier versions…'),
    title: phrase(
      'Keeps a version by name, compares versions figure by figure, and brings back all or a part.',
    ),
    icon: icons.versions,
    group: 'copies',
    open: async () => {
      await import('../history/versions-dialog.js');
      return html`<croft-versions-dialog></croft-versions-dialog>`;
    },
  },
  {
    label: phrase('Merge a copy…'),
    title: phrase('Brings in what was changed on another copy, and saves a copy that can be merged again.'),
    icon: icons.merge,
    group: 'copies',
    open: async () => {
      await import('../merging/merge-dialog.js');
      return html`<croft-merge-dialog></croft-merge-dialog>`;
    },
  },
  {
    label: phrase('For a web page…'),
    title: phrase('Makes a sheet ready for a page of your own, with cells that readers may try.'),
    icon: icons.web,
    group: 'copies',
    open: async () => {
      await import('../embed/embed-dialog.js');
      return html`<croft-embed-dialog></croft-embed-dialog>`;
    },
  },
];
