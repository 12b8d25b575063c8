import type { Tool } from './bar.js';
import { phrase, say, spoken } from './said.js';

export const OPEN_GRID = phrase('Open as a grid');

/** How an embedded sheet stands, as far as it decides what is offered. */
export interface Standing {
  /** The reader has numbers of their own. */
  readonly tried: boolean;
  readonly canUndo: boolean;
  /** What is shown came from other figures than there are now. */
  readonly outdated: boolean;
  /** It is the reader's own book. */
  readonly own: boolean;
  /** The reader started over, and what they had can come back. */
  readonly canBringBack: boolean;
  readonly mayOpenGrid: boolean;
  readonly isGrid: boolean;
}

/** What the line under the table can do. */
export interface Doings {
  undo(): void;
  startOver(): void;
  takeHome(): void;
  bringBack(): void;
  openGrid(): void;
  fetchGrid(): void;
  leaveGrid(): void;
}

/** The buttons that are offered as things stand. */
export function toolsFor(standing: Standing, doings: Doings): Tool[] {
  const { tried, canUndo, outdated, own, canBringBack, mayOpenGrid, isGrid } = standing;
  const tools: (Tool | false)[] = [
    canUndo &&
      !isGrid && { label: say`Undo`, title: say`Takes back what you wrote last.`, run: () => doings.undo() },
    tried && {
      label: outdated ? say`Take the new figures` : say`Start over`,
      title: own ? say`Shows your book’s figures again.` : say`Shows the page’s own figures again.`,
      run: () => doings.startOver(),
    },
    tried && {
      label: say`Take home`,
      title: say`Saves your numbers as a file that Croftsheet opens.`,
      run: () => doings.takeHome(),
    },
    canBringBack && {
      label: say`Bring mine back`,
      title: say`Shows your own numbers again.`,
      run: () => doings.bringBack(),
    },
    mayOpenGrid &&
      !isGrid && {
        label: spoken(OPEN_GRID),
        title: say`Opens the sheet for editing.`,
        run: () => doings.openGrid(),
        near: () => doings.fetchGrid(),
      },
    isGrid && { label: say`Back to the table`, title: say`Closes the grid.`, run: () => doings.leaveGrid() },
  ];
  return tools.filter((tool) => tool !== false);
}
