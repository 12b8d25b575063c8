import { type CellAddress, type CellValue, isCellError } from '../book/index.js';
import { DATE, likeness, type Quantity, quantityOf } from '../formulas/quantity.js';
import { quantityInWords } from '../formulas/quantity-words.js';
import type { PlanValue, Working, WorkingInput } from '../planning/types.js';
import { unitTold } from '../planning/unit-told.js';
import { excerpt, type Problem } from '../problem.js';
import { phrase, say, spoken } from '../words/index.js';
import type { BookReading } from './book-reading.js';
import { countedInColumn } from './counted-in.js';
import { areaOf } from './doings/formula-areas.js';
import { FormulaSteps, type FormulaValues } from './formula-working-steps.js';
import { type FormulaPart, partsOf, rowAt } from './formula-working-tree.js';
import { FormulaUnits, readUnit, type UnitsOfBook } from './formula-working-units.js';
import { FormulaWords } from './formula-working-words.js';

/** Of a range, no more cells than these are looked at one by one. */
const MOST_CELLS = 20_000;
const MOST_INPUTS = 24;

type Cells = Extract<FormulaPart, { is: 'cells' }>;

/** Explains the formulas of a book, and says where their units do not go together. */
export class FormulaWorkings {
  readonly #live: BookReading;
  readonly #evaluate: (stored: string) => CellValue;
  readonly #parts = new Map<string, FormulaPart | undefined>();
  readonly #ofColumns = new Map<string, readonly Quantity[]>();

  /** `evaluate` works out a stored formula that stands nowhere. */
  constructor(live: BookReading, evaluate: (stored: string) => CellValue) {
    this.#live = live;
    this.#evaluate = evaluate;
  }

  /** To be called after every change. */
  forget(): void {
    this.#ofColumns.clear();
    if (this.#parts.size > 1000) this.#parts.clear();
  }

  /** What of the units in a cell's formula does not go together; undefined where nothing is known to. */
  unitProblem(home: CellAddress, stored: string): Problem | undefined {
    const parts = this.#partsOf(stored, home.sheet);
    return parts && new FormulaUnits(parts, this.#unitsAt(home)).problems[0];
  }

  /** The unit of what a cell's formula gives, in words in the plural; undefined where it is not known. */
  #unitWords(units: FormulaUnits, parts: FormulaPart, own: Quantity | undefined): string {
    const found = units.of(parts) ?? own;
    return found && !found.has(DATE) ? quantityInWords(found) : '';
  }

  /** How the value of a cell's formula came to be. */
  working(home: CellAddress, stored: string): Working {
    const live = this.#live;
    const words = new FormulaWords(live, home);
    const value = live.value(home.sheet, home.row, home.column);
    const title = words.column(home.sheet, home.column);
    const formula = String(live.typed(home.sheet, home.row, home.column) ?? '');
    const plain = {
      title,
      value: shownPlan(value),
      unit: '',
      rule: excerpt(formula, 300),
      inputs: [],
      steps: [],
    };
    if (live.needsEngine)
      return { ...plain, missing: say`The formula is not worked out yet.`, changes: [spoken(FORMULA)] };
    const parts = this.#partsOf(stored, home.sheet);
    if (!parts) return { ...plain, ...this.#lack(value), changes: [spoken(FORMULA)] };
    const units = new FormulaUnits(parts, this.#unitsAt(home));
    const found = new FormulaSteps(home, this.#values(), units, words);
    found.explain(parts);
    // What the engine makes of the parts must be what it makes of the whole; else nothing is explained by them.
    const agrees = isCellError(value) || same(found.value(parts), value);
    const own = readUnit(live.unit(home.sheet, home.row, home.column));
    const column = live.column(home.sheet, home.column);
    const inputs = this.#inputs(parts, home, units, words);
    return {
      title,
      value: shownPlan(value),
      unit: unitTold(this.#unitWords(units, parts, own)),
      rule: excerpt(words.part(parts), 300),
      inputs: [
        ...inputs,
        ...(agrees ? found.figures : [])
          .filter(({ answer }) => answer.origin !== 'computed' || answer.source !== 'arithmetic')
          .map(({ name, answer }) => figureInput(name, answer)),
      ].slice(0, MOST_INPUTS),
      steps: !agrees
        ? []
        : found.steps.length > 0
          ? found.steps
          : [{ text: `${words.part(parts)} = ${found.shown(parts)}` }],
      ...this.#lack(value),
      changes: [
        ...inputs
          .slice(0, 6)
          .map(({ name, origin }) =>
            origin === 'computed' ? say`whatever changes ${name}` : say`another entry in ${name}`,
          ),
        column?.formula === formula ? say`another formula for the column` : spoken(FORMULA),
        ...(agrees && found.figures.length > 0 ? [say`an own figure in place of a published one`] : []),
      ],
      ...(units.problems.length > 0 && { problems: units.problems }),
    };
  }

  #lack(value: CellValue): { readonly missing?: string } {
    if (isCellError(value)) return { missing: value.message };
    return value === null || value === ''
      ? { missing: say`The formula gives nothing here; the steps show why.` }
      : {};
  }

  #partsOf(stored: string, sheet: string): FormulaPart | undefined {
    const key = `${sheet} ${stored}`;
    if (!this.#parts.has(key)) this.#parts.set(key, partsOf(stored, sheet));
    return this.#parts.get(key);
  }

  #values(): FormulaValues {
    const { asOf, basis } = this.#live.household;
    return {
      valueOf: ({ sheet, row, column }) => this.#live.value(sheet, row, column),
      cellsOf: (part) => {
        const block = this.#block(part);
        return (
          block?.rows.map((row) =>
            block.columns.map((column) => this.#live.value(block.sheet, row, column)),
          ) ?? null
        );
      },
      evaluate: this.#evaluate,
      context: { asOf, basis },
    };
  }

  #block({ from, to }: Cells) {
    const { state, layout } = this.#live.inside;
    const sheet = from.sheet ?? '';
    const area = areaOf(
      { sheet, from: cornerOf(from), to: cornerOf(to), byName: from.byName, text: '', at: 0 },
      layout,
    );
    const found = state.sheets.get(sheet);
    if (!area || !found) return null;
    const rows = found.rowOrder.ids.slice(area.top, area.bottom + 1);
    const columns = found.columnOrder.ids.slice(area.left, area.right + 1);
    return rows.length * columns.length > MOST_CELLS ? null : { sheet, rows, columns };
  }

  #unitsAt(home: CellAddress): UnitsOfBook {
    const words = new FormulaWords(this.#live, home);
    return {
      words: (part) => words.brief(part),
      unitAt: (part) =>
        part.is === 'cell'
          ? this.#unitOfCell({ ...part.at, row: rowAt(part.at.row, home.row) })
          : this.#oneUnitOf(part),
      unitIn: (part, nth) => {
        const units = this.#unitsOfCells(part, nth);
        return units.length === 1 ? units[0] : undefined;
      },
      mixedIn: (part) => {
        const [a, b] = this.#unitsOfCells(part);
        return a && b && [a, b];
      },
    };
  }

  #oneUnitOf(part: Cells): Quantity | undefined {
    const units = this.#unitsOfCells(part);
    return units.length === 1 ? units[0] : undefined;
  }

  #unitOfCell({ sheet, row, column }: CellAddress): Quantity | undefined {
    const live = this.#live;
    const view = live.column(sheet, column);
    if (!view) return undefined;
    if (view.type === 'date') return quantityOf(DATE);
    if (view.type !== 'number' && view.type !== 'any') return undefined;
    const said = readUnit(live.unit(sheet, row, column));
    if (said) return said;
    const { kind } = live.inside.state.sheets.get(sheet)!;
    const counted = countedInColumn(kind, column);
    const measure = counted === undefined ? null : live.value(sheet, row, counted);
    return typeof measure === 'string' ? readUnit(measure) : undefined;
  }

  /**
   * The units of the cells of a column: one where all are in it, two where they differ; none where one is not known.
   * Of a range of several columns `nth` says which, from 1.
   */
  #unitsOfCells(part: Cells, nth?: number): readonly Quantity[] {
    const key = nth === undefined ? part.stored : `${part.stored} ${nth}`;
    const known = this.#ofColumns.get(key);
    if (known) return known;
    const block = this.#block(part);
    const columns = block?.columns ?? [];
    const column = nth === undefined && columns.length > 1 ? undefined : columns[(nth ?? 1) - 1];
    const units: Quantity[] = [];
    for (const row of column === undefined ? [] : block!.rows) {
      const cell = { sheet: block!.sheet, row, column: column! };
      const unit = this.#unitOfCell(cell);
      if (!unit) {
        // A blank cell is counted in nothing, and adds nothing.
        if (this.#live.value(cell.sheet, cell.row, cell.column) === null) continue;
        units.length = 0;
        break;
      }
      if (!units[0] || likeness(units[0], unit) !== 'alike') units.push(unit);
      if (units.length === 2) break;
    }
    this.#ofColumns.set(key, units);
    return units;
  }

  /** The cells that a formula uses, each once, with what they hold. */
  #inputs(parts: FormulaPart, home: CellAddress, units: FormulaUnits, words: FormulaWords): WorkingInput[] {
    const live = this.#live;
    const found = new Map<string, WorkingInput>();
    const look = (part: FormulaPart): void => {
      if (found.size > MOST_INPUTS) return;
      if (part.is === 'call') for (const arg of part.args) if (arg) look(arg);
      if (part.is === 'operator') for (const each of part.parts) look(each);
      const unit = part.is === 'cell' || part.is === 'cells' ? units.of(part) : undefined;
      const unitWords = unit && !unit.has(DATE) ? unitTold(quantityInWords(unit)) : '';
      if (part.is === 'cell') {
        const from = { ...part.at, row: rowAt(part.at.row, home.row) };
        const { role } = live.column(from.sheet, from.column) ?? {};
        const computed = role === 'planning' || live.isFormula(from.sheet, from.row, from.column);
        found.set(part.stored, {
          name: words.cell(from),
          value: inWords(shownPlan(live.value(from.sheet, from.row, from.column)), role === 'planning'),
          unit: unitWords,
          origin: computed ? 'computed' : 'entered',
          from,
        });
      }
      if (part.is === 'cells') {
        const block = this.#block(part);
        const [row, column] = [block?.rows[0], block?.columns[0]];
        const { role } = (column !== undefined && live.column(block!.sheet, column)) || {};
        found.set(part.stored, {
          name: words.cells(part),
          value: block ? say`${block.rows.length * block.columns.length} cells` : say`many cells`,
          unit: unitWords,
          origin: role === 'planning' ? 'computed' : 'entered',
          ...(block &&
            row !== undefined &&
            column !== undefined && { from: { sheet: block.sheet, row, column } }),
        });
      }
    };
    look(parts);
    return [...found.values()];
  }
}

const FORMULA = phrase('another formula in this cell');

const cornerOf = ({ column, row }: Cells['from']) => ({
  ...(column !== undefined && { column }),
  ...(row !== undefined && { row }),
});

const figureInput = (
  name: string,
  { value, unit, origin, source }: FormulaSteps['figures'][number]['answer'],
): WorkingInput => ({
  name,
  value: typeof value === 'object' ? null : typeof value === 'boolean' ? (value ? say`yes` : say`no`) : value,
  unit: unitTold(unit),
  origin,
  source,
});

/** What a planner answers in words is told; what a person wrote stands as it was written. */
const inWords = (value: PlanValue, planned: boolean): PlanValue =>
  planned && typeof value === 'string' ? spoken(value) : value;

/** A cell's value as a working shows it. */
function shownPlan(value: CellValue): PlanValue {
  if (value === null || value === '') return null;
  if (isCellError(value)) return value.error;
  return typeof value === 'boolean' ? (value ? say`yes` : say`no`) : value;
}

const same = (a: CellValue, b: CellValue): boolean =>
  a === b ||
  (a === '' && b === null) ||
  (typeof a === 'number' && typeof b === 'number' && Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(b)));
