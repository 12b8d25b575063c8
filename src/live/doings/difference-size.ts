import { type CellValue, isCellError } from '../../book/index.js';
import { fromIsoDay } from '../../planning/dates.js';

/** Of words, ticks and errors, which have no size of their own. */
const WORDS = 0.5;
const MONTH = 30;

/** The same figure, but for what the last digits of arithmetic make of it. */
export function sameValue(a: CellValue, b: CellValue): boolean {
  if (a === b) return true;
  if (typeof a === 'number' && typeof b === 'number')
    return Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b));
  return a !== null && b !== null && isCellError(a) && isCellError(b) && a.error === b.error;
}

const dayOf = (value: CellValue): number | null => {
  if (typeof value !== 'string' || !/^\d{4}-\d{2}-\d{2}$/.test(value)) return null;
  const read = fromIsoDay(value);
  return read.ok ? read.value : null;
};

/** How big differences are, in what is usual for their column: so that jars, weeks and pounds compare. */
export class Sizes {
  readonly #values = new Map<string, number[]>();
  readonly #middles = new Map<string, number>();

  /** Every figure of a column that both books show, whether it differs or not. */
  note(column: string, ...values: readonly CellValue[]): void {
    const list = this.#values.get(column) ?? [];
    this.#values.set(column, list);
    for (const value of values) if (typeof value === 'number' && value !== 0) list.push(Math.abs(value));
  }

  /** 1 is as much as the column's middle figure; of dates, a month. */
  of(column: string, was: CellValue, is: CellValue): number {
    const [a, b] = [was ?? 0, is ?? 0];
    if (typeof a === 'number' && typeof b === 'number') return Math.abs(b - a) / this.#middle(column);
    const [from, to] = [dayOf(was), dayOf(is)];
    return from !== null && to !== null ? Math.abs(to - from) / MONTH : WORDS;
  }

  #middle(column: string): number {
    let middle = this.#middles.get(column);
    if (middle === undefined) {
      const sorted = [...(this.#values.get(column) ?? [])].sort((x, y) => x - y);
      middle = sorted[Math.floor(sorted.length / 2)] ?? 1;
      this.#middles.set(column, middle);
    }
    return middle;
  }
}
