import {
  type BookDoc,
  type Change,
  type Command,
  differences,
  type StoredEdit,
  sameJson,
} from '../../book/index.js';
import { ok, type Result, refuse } from '../../problem.js';
import { say } from '../../words/index.js';
import type { BookReading } from '../book-reading.js';

/** What to bring back from an earlier version. */
export type BringBack =
  | { readonly part: 'book' }
  | { readonly part: 'settings' }
  | { readonly part: 'sheet'; readonly sheet: string }
  | { readonly part: 'row'; readonly sheet: string; readonly row: string }
  | { readonly part: 'cell'; readonly sheet: string; readonly row: string; readonly column: string };

export interface BroughtBack {
  /** One step, which can be taken back. */
  readonly command: Command;
  /** What it changes: entries only, never a planning figure. */
  readonly counts: {
    /** Rows that come back. */
    readonly rowsBack: number;
    /** Rows that were added since, and go. */
    readonly rowsGone: number;
    readonly cells: number;
    readonly rest: number;
  };
}

/** Fields of a book that say what it is, not what stands in it. */
const NOT_BROUGHT = new Set(['id', 'format', 'version', 'references']);

const within = (path: readonly string[], what: BringBack): boolean => {
  if (what.part === 'book') return !NOT_BROUGHT.has(path[0]!);
  if (what.part === 'settings') return path[0] === 'settings';
  if (path[0] !== 'sheets' || path[1] !== what.sheet) return false;
  if (what.part === 'sheet') return true;
  return path[2] === 'rows' && path[3] === what.row;
};

/**
 * What brings back the whole book, a sheet, a row or a cell from an earlier version: only what differs, as it
 * was stored, so that formulas, places of rows and allotments are right. Nothing is changed yet.
 */
export function bringBack(
  live: BookReading,
  version: BookDoc,
  what: BringBack,
  called: string,
): Result<BroughtBack> {
  const edits = what.part === 'cell' ? cellEdits(live, version, what) : partEdits(live, version, what);
  if (edits.length === 0)
    return refuse(
      'nothing-to-bring-back',
      say`Nothing differs there: it is as it was in that version.`,
      say`Choose something that the comparison lists.`,
    );
  const isRow = ({ path }: StoredEdit) => path.length === 4 && path[2] === 'rows';
  const isCell = ({ path }: StoredEdit) => path[2] === 'rows' && path[4] === 'cells';
  const rows = edits.filter(isRow);
  const cells = edits.filter(isCell).length;
  return ok({
    command: {
      do: 'take over',
      called: say`bringing back from “${called}”`,
      edits,
      ...(what.part !== 'cell' && { whole: true }),
    },
    counts: {
      rowsBack: rows.filter(({ to }) => to !== undefined).length,
      rowsGone: rows.filter(({ to }) => to === undefined).length,
      cells,
      rest: edits.length - rows.length - cells,
    },
  });
}

const bare = ({ path, to }: Change): StoredEdit => (to === undefined ? { path } : { path, to });

function partEdits(live: BookReading, version: BookDoc, what: BringBack): StoredEdit[] {
  const now = live.toJSON();
  if (what.part === 'sheet' || what.part === 'row') {
    // Only the sheet concerned is looked through.
    const [was, is] = [only(version, what.sheet), only(now, what.sheet)];
    return differences(is, was)
      .filter(({ path }) => within(path, what))
      .map(bare);
  }
  return differences(now, version)
    .filter(({ path }) => within(path, what))
    .map(bare);
}

const only = (doc: BookDoc, sheet: string): BookDoc => {
  const found = doc.sheets[sheet];
  return { ...doc, settings: {}, sheets: found ? { [sheet]: found } : {} };
};

function cellEdits(
  live: BookReading,
  version: BookDoc,
  { sheet, row, column }: Extract<BringBack, { part: 'cell' }>,
): StoredEdit[] {
  const [was, is] = [version, live.toJSON()].map((doc) => doc.sheets[sheet]?.rows[row]);
  if (!is) return was ? [{ path: ['sheets', sheet, 'rows', row], to: was as StoredEdit['to'] }] : [];
  const edits: StoredEdit[] = [];
  const [from, to] = [is.cells[column], was?.cells[column]];
  if (from !== to) edits.push(bare({ path: ['sheets', sheet, 'rows', row, 'cells', column], to, was: from }));
  for (const field of [`note:${column}`, `colour:${column}`] as const)
    if (!sameJson(is[field], was?.[field]))
      edits.push(bare({ path: ['sheets', sheet, 'rows', row, field], to: was?.[field], was: is[field] }));
  return edits;
}
