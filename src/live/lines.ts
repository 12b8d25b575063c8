import { suggestUse } from '../planning/garden/index.js';
import type { Guide } from '../planning/guide.js';
import { planLine } from '../planning/line.js';
import type {
  Draw,
  FoodRow,
  Household,
  LineInput,
  LinePlan,
  Lot,
  SuggestedUse,
  WayKept,
} from '../planning/types.js';
import { lineKey } from './food-key.js';

/** The planned kinds of row. */
export type PlannedKind = 'shelf' | 'draws' | 'foods';

interface Members {
  readonly shelf: Map<string, Lot>;
  readonly draws: Map<string, Draw>;
  readonly foods: Map<string, FoodRow>;
}

export interface PlannedLine {
  readonly input: LineInput;
  readonly plan: LinePlan;
  /** Use per week by the week plan, in counted-in containers. */
  readonly weekPlan: number | null;
}

const splitKey = (key: string): [food: string, way: WayKept] => {
  const at = key.lastIndexOf('|');
  return [key.slice(0, at), key.slice(at + 1) as WayKept];
};

/**
 * Which rows belong to which food line, and each line's plan. Only the lines whose rows changed are planned
 * again, so that an edit costs as much as its own food, however large the book.
 */
export class Lines {
  readonly #members = new Map<string, Members>();
  readonly #lineOf: Record<PlannedKind, Map<string, string>> = {
    shelf: new Map(),
    draws: new Map(),
    foods: new Map(),
  };
  readonly #planned = new Map<string, PlannedLine>();
  readonly #dirty = new Set<string>();
  readonly #weekly = new Map<string, number>();
  /** Position of a Foods row, so that the first of two rows for one line counts. */
  readonly #placeOf: (foodRow: string) => number;

  constructor(placeOf: (foodRow: string) => number) {
    this.#placeOf = placeOf;
  }

  /** Puts a row where it belongs; null food or way takes it out of every line. */
  place(kind: PlannedKind, id: string, row: Lot | Draw | FoodRow | null): void {
    const key = row?.food && row.way ? lineKey(row.food, row.way) : null;
    const was = this.#lineOf[kind].get(id);
    if (was !== undefined && was !== key) {
      this.#members.get(was)?.[kind].delete(id);
      this.#lineOf[kind].delete(id);
      this.#dirty.add(was);
    }
    if (key === null || row === null) return;
    let members = this.#members.get(key);
    if (!members) {
      members = { shelf: new Map(), draws: new Map(), foods: new Map() };
      this.#members.set(key, members);
    }
    if (members[kind].get(id) === row) return;
    (members[kind] as Map<string, Lot | Draw | FoodRow>).set(id, row);
    this.#lineOf[kind].set(id, key);
    this.#dirty.add(key);
  }

  /** What the week plan would use of each line a week; lines for which that is another now are planned again. */
  setWeekAverages(averages: ReadonlyMap<string, { readonly perWeek: number }>): void {
    for (const key of this.#members.keys()) {
      const now = averages.get(key)?.perWeek ?? null;
      if (now === (this.#weekly.get(key) ?? null)) continue;
      if (now === null) this.#weekly.delete(key);
      else this.#weekly.set(key, now);
      this.#dirty.add(key);
    }
  }

  /** Every line as the planners would take it. */
  inputs(): LineInput[] {
    return [...this.#members.keys()].sort().map((key) => this.#input(key));
  }

  get hasDirty(): boolean {
    return this.#dirty.size > 0;
  }

  /** Every line is to be planned again: the day, the table or the basis changed. */
  allDirty(): void {
    for (const key of this.#members.keys()) this.#dirty.add(key);
  }

  lineOf(kind: PlannedKind, id: string): PlannedLine | undefined {
    const key = this.#lineOf[kind].get(id);
    return key === undefined ? undefined : this.#planned.get(key);
  }

  keyOf(kind: PlannedKind, id: string): string | undefined {
    return this.#lineOf[kind].get(id);
  }

  all(): Iterable<PlannedLine> {
    return this.#planned.values();
  }

  /** The only way in which a food is kept, or undefined when it is none or several. */
  onlyWayOf(food: string): WayKept | undefined {
    let only: WayKept | undefined;
    for (const [key, { shelf, foods }] of this.#members) {
      const [lineFood, way] = splitKey(key);
      if (lineFood !== food || shelf.size + foods.size === 0) continue;
      if (only !== undefined) return undefined;
      only = way;
    }
    return only;
  }

  /** A second Foods row for a line that another row plans already. */
  isSecond(foodRow: string): boolean {
    const key = this.#lineOf.foods.get(foodRow);
    return key !== undefined && this.#planned.get(key)?.input.row?.id !== foodRow;
  }

  /** Plans the lines that need it; gives those planned, each with what was planned before. */
  plan(
    household: Household,
    guide: Guide,
  ): { before: PlannedLine | undefined; after: PlannedLine | undefined }[] {
    const done: { before: PlannedLine | undefined; after: PlannedLine | undefined }[] = [];
    for (const key of this.#dirty) {
      const before = this.#planned.get(key);
      const members = this.#members.get(key)!;
      if (members.shelf.size + members.draws.size + members.foods.size === 0) {
        this.#members.delete(key);
        this.#planned.delete(key);
        done.push({ before, after: undefined });
        continue;
      }
      const input = this.#input(key);
      const suggested = suggestion(input, household);
      const weekPlan = this.#weekly.get(key) ?? null;
      const full = suggested ? { ...input, suggested } : input;
      const after = { input: full, plan: planLine(full, household, guide, weekPlan), weekPlan };
      this.#planned.set(key, after);
      done.push({ before, after });
    }
    this.#dirty.clear();
    return done;
  }

  #input(key: string): LineInput {
    const [food, way] = splitKey(key);
    const members = this.#members.get(key)!;
    // By id, so that a plan does not depend on the order in which rows came to be.
    return {
      food,
      way,
      row: this.#first(members.foods),
      lots: sorted(members.shelf),
      draws: sorted(members.draws),
    };
  }

  #first(rows: ReadonlyMap<string, FoodRow>): FoodRow | null {
    let first: FoodRow | null = null;
    for (const row of rows.values()) {
      if (!first || this.#placeOf(row.id) < this.#placeOf(first.id)) first = row;
    }
    return first;
  }
}

/** A household without a single draw gets a published amount to begin with, where there is one. */
function suggestion(input: LineInput, household: Household): SuggestedUse | null {
  const { row, food, way, lots } = input;
  const countedIn = row?.countedIn ?? lots[0]?.container ?? null;
  if (household.ledgerFrom !== null || !row || row.ownUse !== null || countedIn === null) return null;
  const found = suggestUse({ food, way, countedIn, crops: row.crops }, household);
  if (!found.ok) return null;
  const { perWeek, low, high, source, steps } = found.value;
  return { low, usual: perWeek, high, source, steps };
}

const sorted = <T extends { readonly id: string }>(rows: ReadonlyMap<string, T>): T[] =>
  [...rows.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
