import { say } from '../../words/index.js';
import { AT_RISK, type Candidate, FILLED, OVER, type SuggestModel } from './suggest-model.js';
import { eatenBy } from './suggest-stock.js';

/** How often each candidate is chosen, by class and candidate: `counts[class][candidate]`. */
export type Counts = readonly (readonly number[])[];

export interface Solved {
  readonly counts: Counts;
  /** Quarts and pounds eaten, at risk twice, and a little for each meal filled. */
  readonly worth: number;
  /** True when nothing better exists; false when the time ran out first. */
  readonly best: boolean;
}

/** What a choice is worth, or null when it is more than the stock, the meals or the repeats allow. */
export function worthOf(model: SuggestModel, counts: Counts): number | null {
  const perDish = new Map<string, number>();
  const uses: Candidate['uses'][number][] = [];
  let meals = 0;
  for (const [c, { candidates, meals: open }] of model.classes.entries()) {
    let ofClass = 0;
    for (const [d, { dish, uses: each }] of candidates.entries()) {
      const n = counts[c]?.[d] ?? 0;
      if (n === 0) continue;
      ofClass += n;
      perDish.set(dish.key, (perDish.get(dish.key) ?? 0) + n);
      for (const use of each) uses.push({ ...use, amount: use.amount * n });
    }
    if (ofClass > open.length) return null;
    meals += ofClass;
  }
  for (const [dish, n] of perDish) if (n > (model.room.get(dish) ?? 0)) return null;
  const eaten = eatenBy(uses);
  return eaten && AT_RISK * eaten.risk + OVER * eaten.over + FILLED * meals;
}

/** Adds the dish that gains most until none can be added: soon found, and the least that is answered. */
export function greedily(model: SuggestModel): Solved {
  const counts = model.classes.map(({ candidates }) => candidates.map(() => 0));
  let worth = 0;
  for (;;) {
    let best: { c: number; d: number; worth: number } | null = null;
    for (const [c, { candidates }] of model.classes.entries()) {
      for (const d of candidates.keys()) {
        counts[c]![d]! += 1;
        const found = worthOf(model, counts);
        counts[c]![d]! -= 1;
        if (found !== null && found > (best?.worth ?? worth)) best = { c, d, worth: found };
      }
    }
    if (!best) return { counts, worth, best: false };
    counts[best.c]![best.d]! += 1;
    worth = best.worth;
  }
}

const MAX_ZERO = { max: 0 } as const;

/**
 * The choice that eats most of what is at risk and over: an integer program, solved by a library that loads
 * now. Answers the best found when `milliseconds` are over.
 */
export async function solveSuggestion(model: SuggestModel, milliseconds: number): Promise<Solved> {
  const first = greedily(model);
  // Without the library (a page without a network that never loaded it) the first answer stands.
  const library = await import('yalps').catch(() => null);
  if (!library) return first;
  const variables = new Map<string, Map<string, number>>();
  const constraints = new Map<string, { max: number } | { equal: number }>();
  const integers = new Set<string>();
  for (const { key, worth, ways } of model.resources) {
    // What whichever way gives is exactly what dishes take of it.
    constraints.set(say`any ${key}`, { equal: 0 });
    for (const { way, stock, risk, over } of ways.values()) {
      const at = `${key} ${way}`;
      constraints.set(say`stock ${at}`, { max: stock });
      constraints.set(say`eaten ${at}`, MAX_ZERO);
      variables.set(
        say`any ${at}`,
        new Map([
          [say`any ${key}`, -1],
          [say`stock ${at}`, 1],
          [say`eaten ${at}`, -1],
        ]),
      );
      if (risk > 0) {
        constraints.set(say`risk ${at}`, { max: risk });
        variables.set(
          say`risk ${at}`,
          new Map([
            ['worth', AT_RISK * worth],
            [say`risk ${at}`, 1],
            [say`eaten ${at}`, 1],
          ]),
        );
      }
      if (over > 0) {
        constraints.set(say`over ${at}`, { max: over });
        variables.set(
          say`over ${at}`,
          new Map([
            ['worth', OVER * worth],
            [say`over ${at}`, 1],
            [say`eaten ${at}`, 1],
          ]),
        );
      }
    }
  }
  for (const [c, { meals, candidates }] of model.classes.entries()) {
    constraints.set(say`meals ${c}`, { max: meals.length });
    for (const [d, { dish, uses }] of candidates.entries()) {
      constraints.set(say`dish ${dish.key}`, { max: model.room.get(dish.key) ?? 0 });
      const name = say`take ${c} ${d}`;
      integers.add(name);
      const takes = new Map([
        ['worth', FILLED],
        [say`meals ${c}`, 1],
        [say`dish ${dish.key}`, 1],
      ]);
      for (const { resource, way, amount } of uses) {
        if (way === null) takes.set(say`any ${resource.key}`, amount);
        else {
          takes.set(say`stock ${resource.key} ${way}`, amount);
          takes.set(say`eaten ${resource.key} ${way}`, -amount);
        }
      }
      variables.set(name, takes);
    }
  }
  const found = library.solve(
    { direction: 'maximize', objective: 'worth', constraints, variables, integers },
    { timeout: Math.max(1, milliseconds), maxIterations: 1_000_000 },
  );
  const counts = model.classes.map(({ candidates }) => candidates.map(() => 0));
  for (const [name, n] of found.variables) {
    const at = /^take (\d+) (\d+)$/.exec(name);
    if (at) counts[Number(at[1])]![Number(at[2])] = Math.round(n);
  }
  const worth = Number.isFinite(found.result) ? worthOf(model, counts) : null;
  const best = found.status === 'optimal';
  return worth !== null && worth >= first.worth - 1e-9 ? { counts, worth, best } : { ...first, best: false };
}
