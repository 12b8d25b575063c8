import { type CellAddress, KINDS } from '../book/index.js';
import type { RowPlan } from '../planning/types.js';
import type { ReadKind } from './typed-rows.js';

export type AnyPlan = RowPlan<object>;
type Loose = RowPlan<Record<string, unknown>>;

export const NO_PLAN: AnyPlan = { figures: {} };

/** What the planners answered last, row by row, and what of it is new. */
export class PlanStore {
  readonly #plans = new Map<string, AnyPlan>();

  get(kind: ReadKind, row: string): AnyPlan {
    return this.#plans.get(`${kind}/${row}`) ?? NO_PLAN;
  }

  forget(kind: ReadKind, row: string): void {
    this.#plans.delete(`${kind}/${row}`);
  }

  /** Keeps a row's plan and adds the cells that show something else than before to `changed`. */
  keep(kind: ReadKind, sheet: string, row: string, plan: AnyPlan, changed: CellAddress[]): void {
    const was = this.get(kind, row) as Loose;
    if (was === plan) return;
    const now = plan as Loose;
    this.#plans.set(`${kind}/${row}`, plan);
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
