/**
 * Events of `<croft-embed>`; each bubbles and leaves shadow roots. Open as a grid it lets those of the book inside pass,
 * too: `croft-ready`, `croft-status`, `croft-select`, `croft-change`.
 */
export interface EmbedEvents {
  /** The table stands, or stands anew: which sheet, how many rows, and whether it is of the reader's own book. */
  'croft-shown': CustomEvent<{ readonly sheet: string; readonly rows: number; readonly own: boolean }>;
  /** A reader wrote something into a cell: ids of its row and column, and the text. */
  'croft-try': CustomEvent<{ readonly row: string; readonly column: string; readonly text: string }>;
}
