import type { Problem } from '../../problem.js';
import { ceilSafe, containerWithId, findContainer } from '../../units/index.js';
import { phrase, say } from '../../words/index.js';
import type { RowPlan } from '../types.js';
import { isAmount, MOST } from '../words.js';
import type { BatchesPlan, BatchReckoning } from './batch-types.js';
import type { Mouth, SupplyFigures, SupplyRow } from './types.js';
import { problem, problemsOf, shown, TOO_MUCH } from './words.js';

/** What an item of Supplies is. */
export type SupplyItem =
  | { readonly is: 'lids' | 'rings'; readonly mouth: Mouth | null }
  | { readonly is: 'container'; readonly container: string }
  | { readonly is: 'ingredient' };

/** Items to choose from. */
export const SUPPLY_ITEMS: readonly string[] = [
  'lids',
  phrase('regular lids'),
  phrase('wide lids'),
  'rings',
  phrase('regular rings'),
  phrase('wide rings'),
  phrase('half-pint jar'),
  phrase('pint jar'),
  phrase('quart jar'),
  phrase('pint freezer bag'),
  phrase('quart freezer bag'),
  phrase('gallon freezer bag'),
  'vinegar',
  'sugar',
  'salt',
  'pectin',
  phrase('bottled lemon juice'),
  phrase('citric acid'),
];

/** Reads an item: lids and rings by mouth, a container by its name, else an ingredient. */
export function supplyItem(text: string): SupplyItem {
  const words = text.toLowerCase();
  const mouth = /\bwide\b/.test(words)
    ? 'wide'
    : /\b(regular|narrow|standard)\b/.test(words)
      ? 'regular'
      : null;
  if (/\blids?\b/.test(words)) return { is: 'lids', mouth };
  if (/\b(rings?|bands?)\b/.test(words)) return { is: 'rings', mouth };
  const container = findContainer(text);
  return container.ok ? { is: 'container', container: container.value.id } : { is: 'ingredient' };
}

/** A row of Supplies reckoned. */
export interface SupplyReckoning {
  readonly row: SupplyRow;
  readonly item: SupplyItem;
  readonly wanted: number | null;
  /** The batches that want it, with how much each. */
  readonly batches: readonly { readonly batch: BatchReckoning; readonly wants: number }[];
  readonly problem: Problem | null;
}

export interface SuppliesPlan {
  readonly rows: ReadonlyMap<string, RowPlan<SupplyFigures>>;
  readonly reckoned: ReadonlyMap<string, SupplyReckoning>;
}

const mouthOf = ({ row }: BatchReckoning): Mouth | null =>
  row.mouth ?? containerWithId(row.container ?? '')?.lidSize ?? null;

const isJar = ({ row }: BatchReckoning): boolean => containerWithId(row.container ?? '')?.lids === true;

function reckon(row: SupplyRow, open: readonly BatchReckoning[]): SupplyReckoning {
  const item = supplyItem(row.item);
  const mine = open.filter((batch) => row.usedFor === null || batch.row.food === row.usedFor);
  const of = (batches: readonly BatchReckoning[], wants: (batch: BatchReckoning) => number) =>
    batches.map((batch) => ({ batch, wants: wants(batch) }));
  const sum = (all: readonly { wants: number }[]) => all.reduce((total, { wants }) => total + wants, 0);
  if (item.is === 'lids' || item.is === 'rings') {
    const jars = mine.filter(isJar);
    const unsaid = item.mouth === null ? [] : jars.filter((batch) => mouthOf(batch) === null);
    const counted = jars.filter((batch) => item.mouth === null || mouthOf(batch) === item.mouth);
    const batches = of(counted, (batch) => (item.is === 'lids' ? (batch.lids ?? 0) : (batch.jars ?? 0)));
    // Rings come off once the jars have sealed, so the greatest batch wants the most.
    const wanted = item.is === 'lids' ? sum(batches) : Math.max(0, ...batches.map(({ wants }) => wants));
    return {
      row,
      item,
      wanted,
      batches,
      problem:
        unsaid.length > 0
          ? problem(
              'mouth-not-said',
              unsaid.length === 1
                ? say`A batch does not say whether the jars are regular or wide, and is left out.`
                : say`${unsaid.length} batches do not say whether the jars are regular or wide, and are left out.`,
              say`Choose the mouth in Batches, or keep one row for all lids.`,
            )
          : null,
    };
  }
  if (item.is === 'container') {
    const batches = of(
      mine.filter(({ row: { container } }) => container === item.container),
      (batch) => batch.jars ?? 0,
    );
    return { row, item, wanted: sum(batches), batches, problem: null };
  }
  const { perContainer } = row;
  if (perContainer === null || !isAmount(perContainer)) {
    const lacks = problem(
      'amount-per-container-missing',
      say`How much goes into one container depends on the recipe.`,
      say`Write it under “In one container”, by your tested recipe, in the measure that you keep it in.`,
    );
    return { row, item, wanted: null, batches: [], problem: mine.length > 0 ? lacks : null };
  }
  const batches = of(mine, (batch) => (batch.jars ?? 0) * perContainer);
  return { row, item, wanted: sum(batches), batches, problem: null };
}

/** The planning columns of Supplies, for the batches that are still to be put up. Blank on hand counts as none. */
export function planSupplies(rows: readonly SupplyRow[], batches: BatchesPlan): SuppliesPlan {
  const open = [...batches.reckoned.values()].filter(({ done, posted }) => !done && !posted);
  const reckoned = new Map<string, SupplyReckoning>();
  const plans = new Map<string, RowPlan<SupplyFigures>>();
  for (const row of rows) {
    if (row.item.trim() === '') {
      plans.set(row.id, { figures: { wanted: null, short: null } });
      continue;
    }
    const at = reckon(row, open);
    reckoned.set(row.id, at);
    const onHand = isAmount(row.onHand) ? row.onHand : 0;
    const tooMuch = at.wanted !== null && !(at.wanted <= MOST);
    const short = at.wanted === null || tooMuch ? null : Math.max(0, at.wanted - onHand);
    const problems = problemsOf<keyof SupplyFigures>({ wanted: tooMuch ? TOO_MUCH : at.problem });
    const whole = at.item.is !== 'ingredient';
    plans.set(row.id, {
      figures: {
        wanted: shown(at.wanted),
        short: shown(short !== null && whole ? ceilSafe(short) : short),
      },
      ...(problems ? { problems } : {}),
    });
  }
  return { rows: plans, reckoned };
}
