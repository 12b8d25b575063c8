import type { ColumnView } from './columns.js';
import type { KnownFigure } from './known-figures.js';
import type { LiveBook } from './live-book.js';
import { type Showing, type ShownCell, shownCell, weightOf } from './shown.js';

const PENDING: ShownCell = { text: '…', unit: '', kind: 'pending' };

/**
 * What a reader sees in a cell, without waiting for figures: those that are known already show, others as being
 * worked out, and what is wrong at a cell is said once they are there. The book then tells of a change.
 */
export function shownSoFar(
  live: LiveBook,
  sheet: string,
  row: string,
  column: ColumnView,
  pending: boolean,
): ShownCell {
  if (live.isPlanned) return shownCell(live, sheet, row, column, pending);
  live.showsSoFar();
  if (column.role !== 'planning') return shownCell(withoutFigures(live), sheet, row, column, pending);
  const known = live.known(sheet, row, column.id);
  return known ? figure(known, column) : PENDING;
}

function figure({ text, unit = '', range, iso }: KnownFigure, column: ColumnView): ShownCell {
  const kind = kindOf(text, iso, column);
  const weight = weightOf(column, { kind, text });
  return { text, unit, kind, ...(iso && { iso }), ...(range && { range }), ...(weight && { weight }) };
}

function kindOf(text: string, iso: string | undefined, { type }: ColumnView): ShownCell['kind'] {
  if (text === '') return 'blank';
  if (iso !== undefined) return 'date';
  return type === 'number' ? 'number' : type === 'tick' ? 'tick' : 'text';
}

/** The book as it is asked about cells that people fill, as long as nothing is worked out. */
const withoutFigures = (live: LiveBook): Showing => ({
  value: (sheet, row, column) => live.value(sheet, row, column),
  isFormula: (sheet, row, column) => live.isFormula(sheet, row, column),
  lotLabel: (lot) => live.lotLabel(lot),
  noteOf: (sheet, row, column) => live.noteOf(sheet, row, column),
  colourOf: (sheet, row, column) => live.colourOf(sheet, row, column),
  unit: (sheet, _row, column) => {
    const view = live.column(sheet, column);
    return view?.role === 'own' ? view.measure : view?.unit;
  },
  problem: () => undefined,
});
