import { roomAhead } from '../../src/live/doings/room-ahead.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { EatFirst, RoomPlan, RoomWeek } from '../../src/planning/garden/index.js';
import type { DayNumber } from '../../src/planning/types.js';
import type { SelectedCell } from '../book/events.js';

export type Storey = 'shelf' | 'freezer';

/** One storey of the house over the coming year. */
export interface StoreyRoom {
  readonly storey: Storey;
  /** What it holds by the household's word; null where it does not say. */
  readonly room: number | null;
  readonly weeks: readonly { readonly from: DayNumber; readonly taken: number; readonly over: boolean }[];
  /** Index of the first week that does not fit; -1 where all do or no room is given. */
  readonly full: number;
  /** Index of the week in which most stands there. */
  readonly most: number;
}

/** A surplus to eat first, with its row of Foods. */
export interface EatFirstRow extends EatFirst {
  /** As Foods writes it. */
  readonly name: string;
  readonly cell: SelectedCell | null;
}

export interface RoomModel {
  readonly asOf: DayNumber;
  readonly storeys: readonly StoreyRoom[];
  readonly eatFirst: readonly EatFirstRow[];
  readonly leftOut: readonly { readonly name: string; readonly way: string; readonly why: string }[];
}

/** Room over the coming year as the picture draws it; null before the book has planned. */
export function readRoom(live: LiveBook): RoomModel | null {
  const plan = roomAhead(live);
  if (!plan) return null;
  const find = foodRows(live);
  const { asOf } = live.household;
  return {
    asOf,
    storeys: [storeyRoom('shelf', plan, plan.shelfRoom), storeyRoom('freezer', plan, plan.freezerRoom)],
    eatFirst: plan.eatFirst.map((each) => ({ ...each, ...find(each.food, each.way) })),
    leftOut: plan.leftOut.map(({ food, way, problem }) => ({
      name: find(food, way).name,
      way,
      why: `${problem.message} ${problem.mend}`.trim(),
    })),
  };
}

function storeyRoom(storey: Storey, plan: RoomPlan, room: number | null): StoreyRoom {
  const first = storey === 'shelf' ? plan.shelfFull : plan.freezerFull;
  const over = (week: RoomWeek): boolean => room !== null && week[storey] > room + 1e-9;
  const weeks = plan.weeks.map((week) => ({ from: week.from, taken: week[storey], over: over(week) }));
  const most = weeks.reduce((best, { taken }, i) => (taken > (weeks[best]?.taken ?? -1) ? i : best), 0);
  return { storey, room, weeks, full: first ? plan.weeks.indexOf(first) : -1, most };
}

/** Name and row of a food line, as Foods has it. */
function foodRows(
  live: LiveBook,
): (food: string, way: string) => { name: string; cell: SelectedCell | null } {
  const sheet = live.sheetOfKind('foods');
  const rows = new Map(live.foodLines.map(({ input }) => [`${input.food}/${input.way}`, input.row?.id]));
  return (food, way) => {
    const row = rows.get(`${food}/${way}`);
    if (sheet === undefined || row === undefined) return { name: food, cell: null };
    const written = live.value(sheet, row, 'food');
    return {
      name: typeof written === 'string' && written !== '' ? written : food,
      cell: { sheet, row, column: 'short_or_over' },
    };
  };
}
