import { holdsOf } from '../measure.js';
import { countedInOf } from '../reckon.js';
import type { Need } from './needs.js';
import type { WeekPlan } from './plan-week.js';
import type { Use } from './suggest-model.js';
import type { ShelfLine } from './types.js';

/** Stock of one food kept in one way, after the planned meals. In the resource's base measure. */
export interface Way {
  readonly way: string;
  stock: number;
  /** What of it will not be eaten by its best-by at the usual use. */
  risk: number;
  /** What of it is over at the next harvest, what is at risk left out. */
  over: number;
}

/** Stock of a food whose measures all meet. Ways share the base, so that a dish may take of whichever. */
export interface Resource {
  readonly key: string;
  readonly food: string;
  readonly base: string;
  /** Quarts, or pounds where it is reckoned by weight, in one base; 1 where neither is known. */
  readonly worth: number;
  readonly ways: Map<string, Way>;
}

/**
 * The stock that suggestions may draw on: what is left after every planned meal, of lots that are not past
 * their best quality.
 */
export class Resources {
  readonly #byFood = new Map<string, Resource[]>();
  readonly #week: WeekPlan;

  constructor(week: WeekPlan, shelfLines: Iterable<ShelfLine>) {
    this.#week = week;
    for (const lot of week.after.lots) {
      if (lot.past) continue;
      const resource = this.#of(lot.food, lot.container);
      const factor = week.after.measures(lot.food).factorOrNull(lot.container, resource.base) ?? 0;
      const way = wayOf(resource, lot.way);
      const left = week.after.left(lot.id);
      way.stock += left * factor;
      // What planned meals eat of a line is that much less at risk, whichever lot stands to be too old.
      way.risk += (lot.atRisk - (lot.left - left)) * factor;
    }
    for (const { ways } of this.all) {
      for (const way of ways.values()) way.risk = Math.min(way.stock, Math.max(0, way.risk));
    }
    for (const line of shelfLines) this.#addOver(line);
  }

  get all(): readonly Resource[] {
    return [...this.#byFood.values()].flat();
  }

  #of(food: string, measure: string): Resource {
    const ofFood = this.#byFood.get(food) ?? [];
    this.#byFood.set(food, ofFood);
    const measures = this.#week.after.measures(food);
    const known = ofFood.find(({ base }) => measures.factorOrNull(measure, base) !== null);
    if (known) return known;
    const holds = holdsOf(measure, 1, this.#week.after.guide.bridges(food));
    const made: Resource = {
      key: `${food}#${ofFood.length}`,
      food,
      base: measure,
      worth: holds.ok ? holds.value.amount : 1,
      ways: new Map(),
    };
    ofFood.push(made);
    return made;
  }

  #addOver({ input, plan }: ShelfLine): void {
    const said = plan.food?.figures.short_or_over;
    const counted = countedInOf(input);
    if (typeof said !== 'number' || said <= 0 || counted === null) return;
    const resource = this.#byFood
      .get(input.food)
      ?.find(({ base }) => this.#week.after.measures(input.food).factorOrNull(counted, base) !== null);
    const way = resource?.ways.get(input.way);
    if (!resource || !way) return;
    const factor = this.#week.after.measures(input.food).factorOrNull(counted, resource.base) ?? 0;
    const planned = this.#plannedOf(input.food, input.way, resource.base);
    const over = Math.min(way.stock, Math.max(0, said * factor - planned));
    way.over = Math.max(0, over - way.risk);
  }

  /** What the planned meals take of a food line, in `base`. */
  #plannedOf(food: string, way: string, base: string): number {
    const { after } = this.#week;
    return after.of(food).reduce((sum, lot) => {
      const factor = after.measures(food).factorOrNull(lot.container, base);
      return lot.way === way && factor !== null ? sum + (lot.left - after.left(lot.id)) * factor : sum;
    }, 0);
  }

  /** What needs come to, resource by resource; null where one is of a food that is not on the shelf. */
  usesOf(needs: readonly Need[]): Use[] | null {
    const uses: Use[] = [];
    for (const need of needs) {
      if (need.from === 'bought' || !(need.amount > 0)) continue;
      const measures = this.#week.after.measures(need.food);
      const resource = this.#byFood
        .get(need.food)
        ?.find(({ base }) => measures.factorOrNull(need.measure, base) !== null);
      if (!resource) return null;
      const amount = need.amount * (measures.factorOrNull(need.measure, resource.base) ?? 0);
      const same = uses.findIndex((use) => use.resource === resource && use.way === need.way);
      if (same >= 0) uses[same] = { resource, way: need.way, amount: uses[same]!.amount + amount };
      else uses.push({ resource, way: need.way, amount });
    }
    return uses;
  }

  /** True where the stock holds these uses, by themselves. */
  hold(uses: readonly Use[]): boolean {
    return eatenBy(uses) !== null;
  }
}

function wayOf(resource: Resource, way: string): Way {
  let known = resource.ways.get(way);
  if (!known) {
    known = { way, stock: 0, risk: 0, over: 0 };
    resource.ways.set(way, known);
  }
  return known;
}

const ROOM = 1e-7;

/** What uses eat of what is at risk and over, in quarts or pounds; null when the stock does not hold them. */
export function eatenBy(uses: readonly Use[]): { risk: number; over: number } | null {
  const byResource = new Map<Resource, Use[]>();
  for (const use of uses) {
    const of = byResource.get(use.resource);
    if (of) of.push(use);
    else byResource.set(use.resource, [use]);
  }
  let risk = 0;
  let over = 0;
  for (const [resource, of] of byResource) {
    let any = 0;
    const named = new Map<string, number>();
    for (const { way, amount } of of) {
      if (way === null) any += amount;
      else named.set(way, (named.get(way) ?? 0) + amount);
    }
    for (const [way, amount] of named) {
      if (amount > (resource.ways.get(way)?.stock ?? 0) * (1 + ROOM) + ROOM) return null;
    }
    let free = any;
    // Of what may come from any way, what is at risk is eaten first, then what is over, then the rest.
    const rests = [...resource.ways.values()].map((way) => {
      const own = Math.min(named.get(way.way) ?? 0, way.stock);
      const ownRisk = Math.min(own, way.risk);
      const ownOver = Math.min(own - ownRisk, way.over);
      risk += ownRisk * resource.worth;
      over += ownOver * resource.worth;
      return { risk: way.risk - ownRisk, over: way.over - ownOver, stock: way.stock - own };
    });
    for (const part of ['risk', 'over'] as const) {
      for (const rest of rests) {
        const takes = Math.min(free, rest[part], rest.stock);
        free -= takes;
        rest.stock -= takes;
        if (part === 'risk') risk += takes * resource.worth;
        else over += takes * resource.worth;
      }
    }
    const stock = rests.reduce((sum, rest) => sum + rest.stock, 0);
    if (free > stock * (1 + ROOM) + ROOM) return null;
  }
  return { risk, over };
}
