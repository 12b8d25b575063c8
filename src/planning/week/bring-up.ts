import { say } from '../../words/index.js';
import { mediumDay } from '../day-words.js';
import { isOpened, olderFirst } from '../stock.js';
import { tidy } from '../words.js';
import { OPENED, pastBestCaution, type WeekCaution } from './cautions.js';
import type { MealPlan } from './plan-week.js';
import type { Piece, WeekLot } from './shelf-copy.js';
import { amountWords, foodWords, isClosed, leftoverWords, perishesOpened } from './words.js';

/** One line of the bring-up list: containers of one lot. */
export interface BringUp {
  /** The lot's id: stays the same, so that a tick stays at its line. */
  readonly id: string;
  readonly place: string;
  readonly food: string;
  readonly lot: WeekLot;
  /** Whole containers to fetch; for what is kept loose or by weight, as much as is needed. */
  readonly amount: number;
  readonly measure: string;
  /** '2 quart jars of tomatoes (canned)'. */
  readonly words: string;
  /** 'put up 14 August 2025'. */
  readonly which: string;
  /** What stays over in the last one opened: '2 cups', or '' when nothing. */
  readonly leavesOver: string;
  /** Meals that it is for, by row id. */
  readonly meals: readonly string[];
  readonly cautions: readonly WeekCaution[];
}

/** Something opened before that the meals use first. */
export interface AlreadyOpen {
  readonly id: string;
  readonly food: string;
  readonly lot: WeekLot;
  /** '1½ cups'. */
  readonly uses: string;
  readonly leavesOver: string;
  readonly meals: readonly string[];
  readonly cautions: readonly WeekCaution[];
}

/** The places to walk to, each once, and what stands there to be fetched, oldest first. */
export interface BringUpList {
  readonly places: readonly { readonly place: string; readonly items: readonly BringUp[] }[];
  readonly open: readonly AlreadyOpen[];
}

interface Use {
  readonly lot: WeekLot;
  readonly name: string;
  readonly pieces: Piece[];
  readonly meals: Set<string>;
}

/** What the planned meals fetch from the shelf. `plans` must be in the order of eating. */
export function bringUp(plans: readonly MealPlan[]): BringUpList {
  const uses = new Map<string, Use>();
  for (const plan of plans) {
    for (const { pieces, foodName } of plan.needs) {
      for (const piece of pieces) {
        const use = uses.get(piece.lot.id) ?? {
          lot: piece.lot,
          name: foodName,
          pieces: [],
          meals: new Set(),
        };
        use.pieces.push(piece);
        use.meals.add(plan.meal.id);
        uses.set(piece.lot.id, use);
      }
    }
  }
  const places = new Map<string, BringUp[]>();
  const open: AlreadyOpen[] = [];
  for (const use of uses.values()) {
    const { item, already } = fetched(use);
    if (already) open.push(already);
    if (!item) continue;
    const at = places.get(item.place);
    if (at) at.push(item);
    else places.set(item.place, [item]);
  }
  const sorted = [...places].sort(([a], [b]) => (a === '' ? 1 : b === '' ? -1 : a.localeCompare(b)));
  return {
    places: sorted.map(([place, items]) => ({
      place,
      items: items.sort((a, b) => olderFirst(a.lot, b.lot)),
    })),
    open: open.sort((a, b) => olderFirst(a.lot, b.lot)),
  };
}

function fetched({ lot, name, pieces, meals }: Use): { item: BringUp | null; already: AlreadyOpen | null } {
  const before = pieces[0]!.before;
  const after = pieces.at(-1)!.after;
  const food = foodWords(name, lot.way);
  const over = after - Math.floor(after);
  const cautions: WeekCaution[] = lot.past ? [pastBestCaution()] : [];
  const common = { id: lot.id, food, lot, meals: [...meals] };
  const which = lot.putUpOn === null ? say`undated` : say`put up ${mediumDay(lot.putUpOn)}`;
  if (!isClosed(lot.container)) {
    const amount = tidy(before - after);
    const words = loose(amount, lot.container, food);
    return {
      item: {
        ...common,
        place: lot.place,
        amount,
        measure: lot.container,
        words,
        which,
        leavesOver: '',
        cautions,
      },
      already: null,
    };
  }
  const leavesOver = over > 0 ? leftoverWords(over, lot.container) : '';
  const whole = Math.floor(before) - Math.floor(after);
  const openBefore = isOpened(before) ? before - Math.floor(before) : 0;
  // The opened one is used first; what it still holds is only left over when no whole one was opened.
  const usedOpen = whole > 0 ? openBefore : Math.min(openBefore, before - after);
  const already =
    usedOpen > 0
      ? {
          ...common,
          uses: leftoverWords(usedOpen, lot.container),
          leavesOver: whole > 0 ? '' : leavesOver,
          cautions: perishesOpened(lot.way) ? [...cautions, OPENED] : cautions,
        }
      : null;
  if (whole === 0) return { item: null, already };
  return {
    item: {
      ...common,
      place: lot.place,
      amount: whole,
      measure: lot.container,
      words: say`${amountWords(whole, lot.container)} of ${food}`,
      which,
      leavesOver,
      cautions: over > 0 && perishesOpened(lot.way) ? [...cautions, OPENED] : cautions,
    },
    already,
  };
}

/** Loose food in words: what is counted by the piece comes up in whole pieces. */
function loose(amount: number, container: string, food: string): string {
  if (container === 'piece' || container === 'each') return `${Math.ceil(amount - 1e-9)} ${food}`;
  if (container === 'dozen') return `${Math.ceil(amount * 12 - 1e-9)} ${food}`;
  if (container === 'pound' || container === 'ounce' || container === 'kilogram') {
    return say`${amountWords(amount, container)} of ${food}`;
  }
  return amount < 1
    ? say`${leftoverWords(amount, container)} of ${food}`
    : say`${amountWords(amount, container)} of ${food}`;
}
