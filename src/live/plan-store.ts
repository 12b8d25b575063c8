import { type CellAddress, KINDS } from '../book/index.js';
import { figureIn } from '../planning/measured.js';
import type { PlanValue, RowPlan } from '../planning/types.js';
import { measureSystem } from '../units/index.js';
import type { ReadKind } from './typed-rows.js';

export type AnyPlan = RowPlan<object>;
type Loose = RowPlan<Record<string, unknown>>;

export const NO_PLAN: AnyPlan = { figures: {} };

/** Figures of Facts are in the unit that their row names. */
const IN_UNIT_OF_ROW = ['published', 'low', 'high', 'learned', 'in_use'] as const;

/**
 * A row’s figures in the measures written now. What is counted in containers stays in them: which ones is the
 * household’s own choice.
 */
function inMeasures(kind: ReadKind, plan: Loose): Loose {
  if (measureSystem() === 'US customary') return plan;
  const figures = { ...plan.figures } as Record<string, PlanValue>;
  const units: Record<string, string> = { ...(plan.units as Record<string, string> | undefined) };
  if (kind === 'facts') {
    const { unit } = figures;
    if (typeof unit !== 'string') return plan;
    for (const id of IN_UNIT_OF_ROW) figures[id] = figureIn(figures[id] ?? null, unit).value;
    return { ...plan, figures: { ...figures, unit: figureIn(null, unit).unit } };
  }
  for (const { id, role, unit } of KINDS[kind].columns) {
    const own = id === 'holds' ? units[id] : unit;
    if (role !== 'planning' || own === undefined || (units[id] !== undefined && id !== 'holds')) continue;
    const turned = figureIn(figures[id] ?? null, own);
    figures[id] = turned.value;
    if (id === 'holds') units[id] = turned.unit;
  }
  return { ...plan, figures, units };
}

/** What the planners answered last, row by row, and what of it is new. */
export class PlanStore {
  readonly #plans = new Map<string, AnyPlan>();
  /** What the planners answered, in the measures that they reckon in. */
  readonly #reckoned = new Map<string, AnyPlan>();
  #measures = measureSystem();

  /** Figures are kept in the measures written now: where those are others than before, all are turned anew. */
  turn(sheetOf: (kind: ReadKind) => string | undefined, changed: CellAddress[]): void {
    if (this.#measures === measureSystem()) return;
    this.#measures = measureSystem();
    for (const [key, plan] of [...this.#reckoned]) {
      const at = key.indexOf('/');
      const kind = key.slice(0, at) as ReadKind;
      const sheet = sheetOf(kind);
      this.#reckoned.delete(key);
      if (sheet !== undefined) this.keep(kind, sheet, key.slice(at + 1), plan, changed);
    }
  }

  get(kind: ReadKind, row: string): AnyPlan {
    return this.#plans.get(`${kind}/${row}`) ?? NO_PLAN;
  }

  forget(kind: ReadKind, row: string): void {
    this.#plans.delete(`${kind}/${row}`);
    this.#reckoned.delete(`${kind}/${row}`);
  }

  /** Keeps a row's plan and adds the cells that show something else than before to `changed`. */
  keep(kind: ReadKind, sheet: string, row: string, plan: AnyPlan, changed: CellAddress[]): void {
    const was = this.get(kind, row) as Loose;
    if (this.#reckoned.get(`${kind}/${row}`) === plan) return;
    const now = inMeasures(kind, plan as Loose);
    this.#reckoned.set(`${kind}/${row}`, plan);
    this.#plans.set(`${kind}/${row}`, now);
    for (const { id: column, role } of KINDS[kind].columns) {
      if (role !== 'planning') {
        if (was.kept?.[column]?.message !== now.kept?.[column]?.message) changed.push({ sheet, row, column });
        continue;
      }
      const same =
        (was.figures[column] ?? null) === (now.figures[column] ?? null) &&
        was.units?.[column] === now.units?.[column] &&
        was.problems?.[column]?.message === now.problems?.[column]?.message;
      if (!same) changed.push({ sheet, row, column });
    }
  }
}
