import {
  type BookDoc,
  type ColumnDoc,
  declarationOf,
  isFormula,
  type SheetDoc,
  takenOf,
  usesOf,
} from '../../book/index.js';
import type { ReadKind } from '../typed-rows.js';

const FOOD: readonly ReadKind[] = [
  'household',
  'shelf',
  'draws',
  'foods',
  'week',
  'dishes',
  'beds',
  'harvest',
  'facts',
];
const PUT_UP: readonly ReadKind[] = [...FOOD, 'batches'];

/** The kinds of sheet that the planning figures of a kind are worked out from. */
const NEEDS: { readonly [K in ReadKind]: readonly ReadKind[] } = {
  household: ['household'],
  shelf: FOOD,
  draws: FOOD,
  foods: FOOD,
  week: FOOD,
  dishes: FOOD,
  beds: FOOD,
  harvest: FOOD,
  facts: PUT_UP,
  batches: PUT_UP,
  supplies: [...PUT_UP, 'supplies'],
};

/** What of a book the shown columns of one sheet are worked out from. */
export interface Needed {
  /** Ids of sheets. */
  readonly sheets: ReadonlySet<string>;
  /** `SHEET/COLUMN` of everything shown or used by a formula; `SHEET/*` where a range may reach any column. */
  readonly columns: ReadonlySet<string>;
}

/** Follows formulas, planning columns taken onto own sheets, and what planners read, until nothing is added. */
export function neededBy(doc: BookDoc, sheet: string, columns: readonly string[]): Needed {
  const needed = new Need(doc);
  needed.addSheet(sheet);
  for (const column of columns) needed.addColumn(sheet, column);
  needed.follow();
  return needed;
}

class Need implements Needed {
  readonly sheets = new Set<string>();
  readonly columns = new Set<string>();
  readonly #doc: BookDoc;

  constructor(doc: BookDoc) {
    this.#doc = doc;
  }

  addSheet(id: string): void {
    const kind = this.#doc.sheets[id]?.kind;
    if (kind === undefined || this.sheets.has(id)) return;
    this.sheets.add(id);
    if (kind !== 'own') this.addKinds(NEEDS[kind]);
  }

  addKinds(kinds: readonly ReadKind[]): void {
    for (const [id, { kind }] of Object.entries(this.#doc.sheets))
      if (kinds.some((each) => each === kind)) this.addSheet(id);
  }

  addColumn(sheet: string, column: string): void {
    this.columns.add(`${sheet}/${column}`);
  }

  follow(): void {
    for (let before = -1; before < this.#size; ) {
      before = this.#size;
      for (const id of [...this.sheets]) this.#followSheet(id, this.#doc.sheets[id]!);
    }
  }

  get #size(): number {
    return this.sheets.size + this.columns.size;
  }

  #followSheet(id: string, sheet: SheetDoc): void {
    for (const [column, said] of Object.entries(sheet.columns)) {
      if (!isKept(this, sheet, id, column)) continue;
      this.#followFormula(said.formula, id);
      this.#followTaken(said, id);
    }
    for (const { cells } of Object.values(sheet.rows))
      for (const [column, raw] of Object.entries(cells))
        if (isFormula(raw) && isKept(this, sheet, id, column)) this.#followFormula(raw, id);
  }

  #followFormula(formula: unknown, home: string): void {
    if (!isFormula(formula)) return;
    for (const { sheet, from, to } of usesOf(formula, home)) {
      this.addSheet(sheet);
      this.addColumn(sheet, from.column !== undefined && from.column === to.column ? from.column : '*');
    }
  }

  #followTaken(column: ColumnDoc, home: string): void {
    const taken = takenOf(column);
    if (!taken) return;
    this.addColumn(home, taken.by);
    const found = Object.entries(this.#doc.sheets).find(([, { kind }]) => kind === taken.kind);
    if (!found) return;
    this.addSheet(found[0]);
    // Rows are found by name there.
    this.addColumn(found[0], '*');
  }
}

const declared = (sheet: SheetDoc, column: string) =>
  sheet.kind === 'own' ? undefined : declarationOf(sheet.kind, column);

/** Columns of a kind stay, for planners read them; of own ones those that are shown or that a formula uses. */
export const isKept = (needed: Needed, sheet: SheetDoc, id: string, column: string): boolean =>
  declared(sheet, column) !== undefined || isAsked(needed, id, column);

/** Whether a column is shown, or a formula uses it. */
export const isAsked = (needed: Needed, sheet: string, column: string): boolean =>
  needed.columns.has(`${sheet}/${column}`) || needed.columns.has(`${sheet}/*`);
