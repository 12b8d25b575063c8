import { BookState, isCellError, isFormula, StateLayout } from '../book/index.js';
import type { CellValue, Raw } from '../book/types.js';
import type { ColumnView } from '../live/columns.js';
import type { LiveBook } from '../live/live-book.js';
import { parseDay } from '../planning/parse-date.js';
import { say } from '../words/index.js';

export interface OutColumn {
  readonly id: string;
  readonly title: string;
  readonly role: ColumnView['role'];
  /** What every filled cell of it holds; `text` where they differ. */
  readonly holds: 'text' | 'number' | 'date' | 'tick';
  readonly unit: string | undefined;
  readonly help: string;
  /** Pixels. */
  readonly width: number | undefined;
}

export interface OutRow {
  readonly id: string;
  /** What the cells show, in the order of the columns. */
  readonly values: readonly CellValue[];
}

/** One sheet as it is taken out: what its cells show. */
export interface OutTable {
  readonly sheet: string;
  readonly title: string;
  readonly columns: readonly OutColumn[];
  readonly rows: readonly OutRow[];
}

const isPlanning = ({ role, taken }: ColumnView): boolean => role === 'planning' || taken !== undefined;

/** Columns that go out: all that hold what people entered, hidden or not; planning columns that are shown, if wanted. */
export const columnsOut = (live: LiveBook, sheet: string, planning: boolean): ColumnView[] =>
  live.columns(sheet).filter((each) => (isPlanning(each) ? planning && !each.hidden : true));

/** Reads a sheet for taking out. Yields how far it is, for `inSlices`. */
export function* tableOut(
  live: LiveBook,
  sheet: string,
  planning: boolean,
): Generator<number, OutTable, void> {
  const views = columnsOut(live, sheet, planning);
  const ids = live.rowIds(sheet);
  const rows: OutRow[] = [];
  const seen = views.map(() => new Set<OutColumn['holds']>());
  for (const [at, id] of ids.entries()) {
    if (at % 250 === 0) yield at / ids.length;
    const values = views.map(({ id: column }) => live.value(sheet, id, column));
    for (const [i, value] of values.entries()) {
      if (value !== null && value !== '') seen[i]!.add(kindOf(value, views[i]!));
    }
    rows.push({ id, values });
  }
  const columns = views.map((view, i): OutColumn => {
    const [only, other] = seen[i]!;
    return {
      id: view.id,
      title: view.title,
      role: isPlanning(view) ? 'planning' : view.role,
      holds: other !== undefined ? 'text' : (only ?? declared(view)),
      unit: view.unit ?? view.measure,
      help: view.declaration ? view.help : (view.note ?? ''),
      width: view.width,
    };
  });
  const title = live.sheets().find(({ id }) => id === sheet)?.title ?? say`Sheet`;
  return { sheet, title, columns, rows };
}

const declared = ({ type }: ColumnView): OutColumn['holds'] =>
  type === 'number' || type === 'date' || type === 'tick' ? type : 'text';

const ISO = /^\d{4}-\d{2}-\d{2}$/;

function kindOf(value: Exclude<CellValue, null>, view: ColumnView): OutColumn['holds'] {
  if (typeof value === 'number') return 'number';
  if (typeof value === 'boolean') return 'tick';
  if (isCellError(value) || view.type === 'text' || view.type === 'choice') return 'text';
  return ISO.test(value) && parseDay(value).ok ? 'date' : 'text';
}

/** What stands in the cells themselves: formulas in stored form, and the layout that they refer to. */
export class StoredCells {
  readonly layout: StateLayout;
  readonly #state: BookState;

  constructor(live: LiveBook) {
    this.#state = new BookState(live.toJSON());
    this.layout = new StateLayout(this.#state);
  }

  /** The stored formula that a cell shows, its column's included; undefined where it shows none. */
  formula(sheet: string, row: string, column: string): string | undefined {
    const raw: Raw | undefined = this.#state.raw(sheet, row, column) ?? this.#columnFormula(sheet, column);
    return isFormula(raw) ? raw : undefined;
  }

  #columnFormula(sheet: string, column: string): string | undefined {
    return this.#state.sheets.get(sheet)?.columns.get(column)?.formula;
  }
}
