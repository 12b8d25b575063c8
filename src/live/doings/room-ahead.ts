import { planRoom, type RoomPlan } from '../../planning/garden/index.js';
import type { BookReading } from '../book-reading.js';
import { roomLines } from '../garden-stage.js';

/** Shelf and freezer room over the coming year, week by week; null before the book has planned. */
export function roomAhead(live: BookReading): RoomPlan | null {
  const { garden } = live;
  if (!garden) return null;
  return planRoom({
    lines: roomLines(live.foodLines, live.household.asOf),
    batches: garden.batches,
    household: garden.household,
    figures: garden.figures,
    guide: garden.guide,
  });
}
