import { baseRenderer } from 'handsontable/renderers/baseRenderer';
import { COLOURS } from '../../../src/book/index.js';
import type { ColumnView } from '../../../src/live/columns.js';
import { say } from '../../../src/words/index.js';
import { inWords, isNote } from '../../look/problems.js';
import { looksInWords } from '../../sheet/looks/in-words.js';
import { type ShownCell, shownSoFar } from '../../sheet/shown.js';
import type { CellMark, GridCell } from '../grid-view.js';
import type { SheetBinding } from './binding.js';
import { MARK_CLASSES, withMark } from './cell-mark.js';
import { contextOf } from './context.js';
import { bandInWords } from './groups.js';
import type { Line } from './line.js';
import type { Hot } from './registry.js';
import { wholeText } from './whole-text.js';

/** Longer text may be cut off at the cell's edge; its title then shows it whole. */
const ROOM = 24;

type Renderer =
  Parameters<typeof baseRenderer> extends [infer H, ...infer Rest] ? (hot: H, ...rest: Rest) => void : never;

/** What a cell shows, as far as its element goes. */
export interface Look {
  readonly text: string;
  readonly classes: readonly string[];
  readonly title: string;
  /** What is wrong and how to mend it, or what is worth knowing. */
  readonly problem: string;
  readonly invalid: boolean;
  /** What else is said of it to screen readers. */
  readonly note: string;
  /** The person's note. */
  readonly remark: string;
  /** Null where the cell is not one to tick. */
  readonly ticked: boolean | null;
  /** Before the text: what the element around has to say of it. */
  readonly sign?: string;
}

const OURS = [
  'croft-planning',
  'croft-own',
  'croft-number',
  'croft-note',
  'croft-problem',
  'croft-error',
  'croft-pending',
  'croft-quiet',
  'croft-strong',
  'croft-tint',
  'croft-noted',
  ...COLOURS.map((colour) => `croft-${colour}`),
  ...MARK_CLASSES,
];

/** Paints cells from the book. Text goes in as text, never as HTML. */
export class CellPainter {
  /** Cells in the page, with what they show: after a change only those that differ are touched. */
  readonly #painted = new Map<HTMLTableCellElement, { line: Line; column: ColumnView; key: string }>();

  /** Asked of the whole book, so only once after each change of it. */
  #pending: boolean | null = null;

  /** How many bands of groups stand above a line as seen. */
  bandsAbove: (row: number) => number = () => 0;

  constructor(
    readonly binding: SheetBinding,
    readonly markOf: (cell: GridCell) => CellMark | null = () => null,
  ) {}

  /** To be called after every change of the book, before anything is painted. */
  forget(): void {
    this.#pending = null;
  }

  #lookOf(column: ColumnView, line: Line): Look {
    this.#pending ??= this.binding.live.needsEngine;
    const look = lookOf(this.binding, column, line, this.#pending);
    const mark = line.id === null ? null : this.markOf({ row: line.id, column: column.id });
    return mark ? withMark(look, mark) : look;
  }

  /** For the library, which calls it for every cell that it draws anew. */
  readonly renderer: Renderer = (hot, td, row, col, prop, value, meta) => {
    baseRenderer(hot, td, row, col, prop, value, meta);
    const column = this.binding.columns[col];
    const line = this.binding.lines[hot.toPhysicalRow(row)];
    if (!column || !line) {
      td.textContent = '';
      return;
    }
    const look = this.#lookOf(column, line);
    wear(td, look);
    const bands = this.bandsAbove(row);
    td.classList.toggle('croft-first', bands > 0);
    if (bands > 0) td.style.setProperty('--_bands', String(bands));
    else td.style.removeProperty('--_bands');
    this.#painted.set(td, { line, column, key: JSON.stringify(look) });
  };

  /** Paints what the book shows otherwise now, without drawing the table anew. */
  repaint(): void {
    for (const [td, before] of this.#painted) {
      if (!td.isConnected) {
        this.#painted.delete(td);
        continue;
      }
      const column = this.binding.column(before.column.id) ?? before.column;
      const look = this.#lookOf(column, before.line);
      const key = JSON.stringify(look);
      if (key === before.key) continue;
      wear(td, look);
      this.#painted.set(td, { line: before.line, column, key });
    }
  }
}

function lookOf({ live, sheet }: SheetBinding, column: ColumnView, { id }: Line, pending: boolean): Look {
  const classes: string[] = [];
  if (column.role !== 'kept') classes.push(`croft-${column.role}`);
  const blank = {
    text: '',
    classes,
    title: '',
    problem: '',
    invalid: false,
    note: '',
    remark: '',
    ticked: null,
  };
  if (id === null) return blank;
  const shown = shownSoFar(live, sheet, id, column, pending);
  if (shown.kind === 'number') classes.push('croft-number');
  if (shown.weight) classes.push(`croft-${shown.weight}`);
  if (shown.kind === 'pending') classes.push('croft-pending');
  const isNoted = shown.problem !== undefined && isNote(shown.problem);
  if (isNoted) classes.push('croft-note');
  else if (shown.problem) classes.push(shown.kind === 'error' ? 'croft-error' : 'croft-problem');
  if (shown.colour) classes.push('croft-tint', `croft-${shown.colour}`);
  if (shown.note) classes.push('croft-noted');
  const text = wholeText(shown);
  return {
    text,
    classes,
    title: text.length > ROOM ? text : '',
    problem: shown.problem ? inWords(shown.problem) : '',
    invalid: shown.problem !== undefined && !isNoted,
    note: shown.kind === 'pending' ? say`being worked out` : looksInWords(shown),
    remark: shown.note ?? '',
    ticked: tickOf(column, shown),
  };
}

function tickOf(column: ColumnView, { kind, text }: ShownCell): boolean | null {
  return column.type === 'tick' && (kind === 'tick' || kind === 'blank')
    ? kind === 'tick' && text !== say`no`
    : null;
}

function wear(
  td: HTMLTableCellElement,
  { text, classes, title, problem, invalid, note, remark, ticked, sign = '' }: Look,
): void {
  for (const name of OURS) td.classList.toggle(name, classes.includes(name));
  const set = (name: string, value: string): void => {
    if (value === '') td.removeAttribute(name);
    else td.setAttribute(name, value);
  };
  set('title', [problem || title, remark].filter(Boolean).join('\n'));
  set('data-sign', sign);
  set('aria-invalid', invalid ? 'true' : '');
  set('aria-description', [problem, note].filter(Boolean).join(' '));
  if (ticked === null) td.textContent = text;
  else td.replaceChildren(...tick(ticked));
}

function tick(on: boolean): HTMLElement[] {
  const box = document.createElement('span');
  box.className = on ? 'croft-box croft-on' : 'croft-box';
  const words = document.createElement('span');
  words.className = 'croft-unseen';
  words.textContent = on ? say`yes` : say`no`;
  return [box, words];
}

/** Writes a line's header: its number in the book, as formulas call it; the blank line has a sign of its own. */
export function paintLineHeader(
  hot: Hot,
  binding: SheetBinding,
  row: number,
  th: HTMLTableCellElement,
): void {
  const label = th.querySelector('.rowHeader');
  if (!label) return;
  const index = hot.toPhysicalRow(row);
  const isBlank = binding.lines[index]?.id === null;
  const bands = contextOf(hot)?.groups.above(row) ?? [];
  th.classList.toggle('croft-first', bands.length > 0);
  if (bands.length === 0) th.removeAttribute('aria-description');
  else th.setAttribute('aria-description', bands.map(bandInWords).join(' '));
  label.textContent = isBlank ? '+' : String(index + 1);
  if (isBlank) th.setAttribute('aria-label', say`new row`);
  else th.removeAttribute('aria-label');
}
