import type { GridHost } from '../grid-view.js';
import type { SheetBinding } from './binding.js';
import type { CellPopup } from './cell-popup.js';
import type { Edits } from './edits.js';
import type { Foot } from './foot.js';
import type { GroupBands } from './group-bands.js';
import type { Groups } from './groups.js';
import type { Hot } from './registry.js';
import type { CellPainter } from './renderer.js';
import type { TypingRun } from './typing-run.js';
import type { Views } from './views.js';

/** The parts of one grid, for the parts themselves. */
export interface GridContext {
  readonly hot: Hot;
  readonly host: GridHost;
  readonly binding: SheetBinding;
  readonly edits: Edits;
  readonly views: Views;
  readonly groups: Groups;
  readonly bands: GroupBands;
  readonly foot: Foot;
  readonly popup: CellPopup;
  readonly painter: CellPainter;
  readonly run: TypingRun;
  /** To be called when an editor has closed: changes of shape that waited for it follow now. */
  editorClosed(): void;
}

const contexts = new WeakMap<object, GridContext>();

/** Editors are made by the library, which hands them nothing but the instance. */
export const contextOf = (hot: object): GridContext | undefined => contexts.get(hot);

export const setContext = (hot: object, context: GridContext): void => {
  contexts.set(hot, context);
};
