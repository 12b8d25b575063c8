import { isFormula, newId, type Typed } from '../../../src/book/index.js';
import { FormulaShift } from '../../../src/live/shift-formula.js';
import type { Problem } from '../../../src/problem.js';
import { say } from '../../../src/words/index.js';
import type { GridContext } from './context.js';
import type { Write } from './edits.js';
import { type Block, bookRow, selectedBlock } from './places.js';
import { plainText } from './show.js';
import { readTsv, writeTsv } from './tsv.js';

/** One copied cell: what was entered and, of a formula, where it stood in the book. */
interface Clip {
  readonly typed: Typed;
  readonly formula: { readonly kept: string; readonly row: number; readonly column: number } | null;
}

interface Copy {
  readonly text: string;
  /** Null where it comes from another program. */
  readonly sheet: string | null;
  readonly cells: readonly (readonly Clip[])[];
  /** Formulas that were cut move as they are; copied ones are shifted. */
  readonly cut: boolean;
}

/** The last copy from any grid of this page, recognised by its text when it is pasted. */
let lastCopy: Copy | null = null;

/** Copies a block: as shown for other programs, as entered for this one. */
export function copyBlock({ hot, binding, host }: GridContext, block: Block, cut = false): string {
  host.live.workOut();
  const shift = new FormulaShift(host.live, binding.sheet);
  const shown: string[][] = [];
  const cells: Clip[][] = [];
  for (let row = block.top; row <= block.bottom; row++) {
    const line = binding.lines[bookRow(hot, row)]!;
    if (line.id === null && row > block.top) break;
    const columns = binding.columns.slice(block.left, block.right + 1);
    const values = columns.map(({ id }) => binding.accessor(id)(line));
    shown.push(values.map((value, i) => plainText(value, columns[i]!)));
    cells.push(
      columns.map(({ id, role }, i) => {
        const typed = role === 'planning' ? (values[i] ?? null) : binding.typed(line, id);
        if (!isFormula(typed)) return { typed, formula: null };
        const place = { row: bookRow(hot, row), column: binding.letterIndex(id) };
        return { typed, formula: { kept: shift.keep(typed), ...place } };
      }),
    );
  }
  const text = writeTsv(shown);
  lastCopy = { text, sheet: binding.sheet, cells, cut };
  return text;
}

/** Plain text from the clipboard, or what was copied here if that is the same text. */
function toPaste(text: string): Copy {
  const plain = text.replaceAll(/\r\n?/g, '\n');
  if (lastCopy?.text === plain) return lastCopy;
  const cells = readTsv(text).map((row) => row.map((typed): Clip => ({ typed, formula: null })));
  return { text, sheet: null, cells, cut: false };
}

const times = (have: number, room: number): number => Math.max(1, Math.floor(room / have)) * have;

/** Pastes text at a block's top left corner: one command, and rows are made where they lack. */
export function pasteText({ hot, binding, host, edits }: GridContext, text: string, block: Block): void {
  const { cells, sheet, cut } = toPaste(text);
  const width = Math.max(...cells.map((row) => row.length));
  // A selection that holds what is pasted several times over is filled with it.
  const tall = times(cells.length, block.bottom - block.top + 1);
  const wide = times(width, block.right - block.left + 1);
  const lines = hot.countRows();
  const rowAt = (down: number): number => {
    const row = block.top + down;
    return row < lines ? bookRow(hot, row) : binding.rowCount + row - (lines - 1);
  };
  const ids = Array.from({ length: Math.max(0, rowAt(tall - 1) + 1 - binding.rowCount) }, () => newId('r'));
  const shift = new FormulaShift(host.live, binding.sheet, { sheet: binding.sheet, ids });
  const typedAt = ({ typed, formula }: Clip, row: number, column: number): Typed => {
    if (!formula) return typed;
    const text = sheet === binding.sheet ? formula.kept : String(typed);
    return cut ? text : shift.to(text, row - formula.row, column - formula.column);
  };
  const writes: Write[] = [];
  for (let down = 0; down < tall; down++) {
    const at = rowAt(down);
    for (let across = 0; across < wide; across++) {
      const column = binding.columns[block.left + across]?.id;
      const clip = cells[down % cells.length]![across % width];
      if (column !== undefined && clip)
        writes.push({ at, column, typed: typedAt(clip, at, binding.letterIndex(column)) });
    }
  }
  const last = binding.columns.length - 1;
  const over = block.left + width - 1 - last;
  edits.write(writes, over > 0 ? tooWide(over) : null, ids);
  hot.selectCell(
    block.top,
    block.left,
    Math.min(block.top + tall, hot.countRows()) - 1,
    Math.min(block.left + wide - 1, last),
    false,
  );
}

const tooWide = (over: number): Problem => ({
  code: 'past-last-column',
  message:
    over === 1
      ? say`One column of what was pasted did not fit: the sheet ends before.`
      : say`${over} columns of what was pasted did not fit: the sheet ends before.`,
  mend: say`Add columns of your own first, or paste further left.`,
});

/** What a menu copies or cuts at this moment: the keyboard is in the menu then, not in the grid. */
let byMenu: { readonly hot: GridContext['hot']; readonly cut: boolean } | null = null;

/** Copies or cuts what is selected, as chosen in the menu. A browser cuts by itself only where text is written. */
export function copyByMenu({ hot }: GridContext, how: 'copy' | 'cut'): void {
  byMenu = { hot, cut: how === 'cut' };
  try {
    hot.getPlugin('copyPaste').copy();
  } finally {
    byMenu = null;
  }
}

/**
 * Copying, cutting and pasting by the clipboard's own events, before the grid library sees them. Only plain
 * text is read: HTML of other programs and pages is never used.
 */
export function listenToClipboard(context: GridContext, wrapper: HTMLElement, signal: AbortSignal): void {
  const { hot } = context;
  const block = (event: ClipboardEvent): Block | null => {
    const inGrid = (node: unknown): boolean => node instanceof Node && hot.rootElement.contains(node);
    // WebKit tells of it where text was selected last, which is not in the grid, wherever the keyboard is.
    const home = hot.rootElement.getRootNode() as Document | ShadowRoot;
    const isHere = byMenu
      ? byMenu.hot === hot
      : inGrid(event.composedPath()[0]) || inGrid(home.activeElement);
    return isHere && !hot.getActiveEditor()?.isOpened() ? selectedBlock(hot) : null;
  };
  const take = (event: ClipboardEvent): void => {
    event.preventDefault();
    event.stopImmediatePropagation();
  };
  const copy = (event: ClipboardEvent): void => {
    const from = block(event);
    if (!from) return;
    take(event);
    const cut = byMenu?.cut ?? event.type === 'cut';
    event.clipboardData?.setData('text/plain', copyBlock(context, from, cut));
    if (cut) clearBlocks(context, [from]);
  };
  const options = { signal, capture: true };
  const page = wrapper.ownerDocument;
  page.addEventListener('copy', copy, options);
  page.addEventListener('cut', copy, options);
  page.addEventListener(
    'paste',
    (event) => {
      const at = block(event);
      if (!at) return;
      take(event);
      const text = event.clipboardData?.getData('text/plain') ?? '';
      if (text !== '') pasteText(context, text, at);
    },
    options,
  );
}

/** Blanks kept and own cells of blocks; of planning cells it says why not. */
export function clearBlocks({ hot, binding, edits }: GridContext, blocks: readonly Block[]): void {
  const writes: Write[] = [];
  for (const { top, left, bottom, right } of blocks) {
    for (let row = top; row <= bottom; row++) {
      const at = bookRow(hot, row);
      if (at >= binding.rowCount) continue;
      for (const { id } of binding.columns.slice(left, right + 1))
        writes.push({ at, column: id, typed: null });
    }
  }
  edits.write(writes);
}
