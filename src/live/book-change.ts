import type { CellAddress, Change } from '../book/index.js';
import type { Problem } from '../problem.js';

/** What a change came to, for views to repaint and storage to keep. */
export interface BookChange {
  /** `remote`: from another copy of the book; not in this one's history. */
  readonly origin: 'local' | 'undo' | 'redo' | 'remote' | 'engine';
  readonly changes: readonly Change[];
  /** Cells that may show something else: what was written, and what follows from it. */
  readonly cells: readonly CellAddress[];
  /** Sheets whose rows, columns or titles changed. */
  readonly sheets: ReadonlySet<string>;
  readonly settings: boolean;
  /** In words, for 'Undo …' and the live region. */
  readonly label: string;
  /** What was left as it is, with the reason: an undo that another copy's edit stands in the way of, say. */
  readonly notes?: readonly Problem[];
}

/** A change as it is told: the sheets in it, and what was said with it. `anew`: sheets that are shown anew whole. */
export function bookChange(
  origin: BookChange['origin'],
  changes: readonly Change[],
  cells: readonly CellAddress[],
  { label, notes, anew }: { label: string; notes: readonly Problem[]; anew: readonly string[] },
): BookChange {
  const sheets = new Set(anew);
  let settings = false;
  for (const { path } of changes) {
    if (path[0] === 'settings' || path[0] === 'title') settings = true;
    else if (path[2] !== 'rows' || path.length === 4 || path[4] === 'order') sheets.add(path[1]!);
  }
  return { origin, changes, cells, sheets, settings, label, ...(notes.length > 0 && { notes }) };
}
