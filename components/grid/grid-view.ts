import type { Command } from '../../src/book/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { Problem } from '../../src/problem.js';

/** A cell of the sheet that a grid shows. */
export interface GridCell {
  readonly row: string;
  readonly column: string;
}

/** What the element around a grid gives it, and hears from it. */
export interface GridHost {
  readonly live: LiveBook;
  readonly sheet: string;
  /** The page's own licence key for the grid. */
  readonly licenceKey: string;
  readonly colourScheme: 'light' | 'dark';
  /** Accessible name of the grid. */
  readonly label: string;
  /** Loads the formula engine if need be; called when a formula is typed or pasted. */
  ensureEngine(): Promise<void>;
  /** A refusal or a note for the status line and the live region; null clears it. */
  say(message: Problem | string | null): void;
  /** The selected cell changed (null: the grid lost the selection). */
  selected(cell: GridCell | null): void;
  /** The rows are looked at in another way: sorted or filtered. */
  lookChanged?(): void;
  /** The person asks for what only the element shows: a title for a column, say. */
  ask(what: GridRequest): void;
  /** What the element has to say of a cell beside what the book does; null: nothing. */
  markOf?(cell: GridCell): CellMark | null;
}

/** What is said of one cell by a sign and in words, never by colour alone. */
export interface CellMark {
  readonly tone: 'asked' | 'right' | 'wrong';
  /** Stands before the cell's text; empty: only the tone is seen. */
  readonly sign: string;
  /** For the title and for screen readers. */
  readonly words: string;
}

export type GridRequest =
  | { readonly ask: 'add column'; readonly before: string | null }
  | { readonly ask: 'rename column'; readonly column: string }
  | { readonly ask: 'column formula'; readonly column: string }
  | { readonly ask: 'describe column'; readonly column: string; readonly field: 'type' | 'note' }
  | { readonly ask: 'colour' | 'note'; readonly cells: readonly GridCell[] }
  | { readonly ask: 'colour rules' | 'summary'; readonly column: string }
  | { readonly ask: 'working'; readonly cell: GridCell }
  /** A removal on which formulas depend; `note` is said once it is done. */
  | { readonly ask: 'removal'; readonly command: Command; readonly note: string };

/** How rows are looked at; never how they are stored. */
export interface GridLook {
  readonly sort: { readonly column: string; readonly ascending: boolean } | null;
  /** Number of rows that a filter hides. */
  readonly filteredOut: number;
}

/** A grid in the page. One implementation, by Handsontable, is loaded when an editing view opens. */
export interface GridView {
  /** Puts the selection on a cell, scrolls to it and takes the keyboard. */
  focus(cell?: GridCell): void;
  /**
   * Scrolls to a cell, just so that it is seen or until it stands at the top, and leaves the selection and the
   * keyboard where they are.
   */
  show(cell: GridCell, at?: 'top'): void;
  /** True where a filter leaves the row out. */
  hides(row: string): boolean;
  /** Starts editing the selected cell with this text, as if typed. */
  type(text: string): void;
  readonly selection: GridCell | null;
  /** Every selected cell of the book's rows, the focused one first. */
  readonly chosenCells: readonly GridCell[];
  readonly look: GridLook;
  sort(column: string, ascending: boolean | null): void;
  clearFilters(): void;
  /** Filters out the rows that show `value` in a column; null: every row of that column's filter again. */
  leaveOut(column: string, value: number | null): void;
  /** How far it is scrolled, in pixels. */
  scroll: { readonly left: number; readonly top: number };
  setColourScheme(scheme: 'light' | 'dark'): void;
  /** What `markOf` says has changed. */
  remark(): void;
  /** The element's size or visibility changed. */
  layOut(): void;
  destroy(): void;
}

/** Mounts a grid into an element that stands in a shadow root. */
export type MountGrid = (into: HTMLElement, host: GridHost) => Promise<GridView>;
