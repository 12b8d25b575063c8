/** Ids of `before` and `after` that keep their relative order: the longest such run, so that least is redone. */
export function staying(before: readonly string[], after: readonly string[]): Set<string> {
  const position = new Map(before.map((id, i) => [id, i] as const));
  const common = after.filter((id) => position.has(id));
  const inOrder = common.every((id, i) => i === 0 || position.get(common[i - 1]!)! < position.get(id)!);
  if (inOrder) return new Set(common);
  // Longest increasing run by patience: tails[k] ends the best run of length k + 1.
  const tails: number[] = [];
  const previous: number[] = [];
  for (const [i, id] of common.entries()) {
    const at = position.get(id)!;
    let low = 0;
    let high = tails.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (position.get(common[tails[middle]!]!)! < at) low = middle + 1;
      else high = middle;
    }
    previous[i] = low > 0 ? tails[low - 1]! : -1;
    tails[low] = i;
  }
  const stay = new Set<string>();
  for (let i = tails.at(-1) ?? -1; i >= 0; i = previous[i]!) stay.add(common[i]!);
  return stay;
}

export interface Span {
  readonly at: number;
  readonly count: number;
}

/**
 * What to remove from `before` (last first) and then insert (first first) to come to `after`: a thing that
 * moved is removed and inserted.
 */
export function rewriting(
  before: readonly string[],
  after: readonly string[],
): { removals: Span[]; insertions: Span[]; fresh: Set<string> } {
  const stay = staying(before, after);
  const removals = spans(before, (id) => !stay.has(id)).reverse();
  const insertions = spans(after, (id) => !stay.has(id));
  return { removals, insertions, fresh: new Set(after.filter((id) => !stay.has(id))) };
}

function spans(ids: readonly string[], wanted: (id: string) => boolean): Span[] {
  const found: { at: number; count: number }[] = [];
  for (const [at, id] of ids.entries()) {
    const last = found.at(-1);
    if (!wanted(id)) continue;
    if (last && last.at + last.count === at) last.count++;
    else found.push({ at, count: 1 });
  }
  return found;
}
