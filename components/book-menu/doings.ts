import type { TemplateResult } from 'lit';

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
export const BOOK_DOINGS: readonly BookDoing[] = [];
