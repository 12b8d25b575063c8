import type { Problem } from '../../problem.js';
import { inMeasure } from '../../units/index.js';
import { isDay } from '../dates.js';
import { defaultGuide, type Guide } from '../guide.js';
import { type Season, weeksOutside } from '../season.js';
import type { DayNumber, WayKept } from '../types.js';
import { isAmount } from '../words.js';
import type { BatchesPlan, RoomNow } from './batch-types.js';
import { type OwnFigures, publishedOnly } from './own-figures.js';
import { roomOf, type Storey } from './room-measures.js';
import type { GardenHousehold } from './types.js';
import { orNull } from './words.js';

/** A food line as room sees it. */
export interface RoomLine {
  readonly food: string;
  readonly way: WayKept;
  readonly countedIn: string | null;
  /** What stands there now, by container. */
  readonly lots: readonly { readonly container: string | null; readonly left: number }[];
  /** Counted-in containers a week; null where not known: nothing is eaten down then. */
  readonly use: number | null;
  readonly season: Season | null;
  readonly harvest: { readonly begins: DayNumber; readonly ends: DayNumber } | null;
  /** Counted-in containers. */
  readonly toPutUp: number | null;
  /** Over what is to be carried past the harvest, in counted-in containers. */
  readonly over: number | null;
}

export interface RoomInput {
  readonly lines: readonly RoomLine[];
  readonly batches: BatchesPlan;
  readonly household: GardenHousehold;
  readonly figures?: OwnFigures;
  readonly guide?: Guide;
}

/** Room taken at the end of a week that begins on `from`: quart jars, cubic feet. */
export interface RoomWeek {
  readonly from: DayNumber;
  readonly shelf: number;
  readonly freezer: number;
}

/** A surplus that would make room if it were eaten first. */
export interface EatFirst {
  readonly food: string;
  readonly way: WayKept;
  readonly storey: Exclude<Storey, null>;
  /** Counted-in containers over. */
  readonly over: number;
  readonly countedIn: string | null;
  /** Quart jars or cubic feet that it takes. */
  readonly frees: number;
  /** Containers a week, on top of usual use, to have it eaten by the first week that does not fit. */
  readonly pace: number | null;
}

export interface RoomPlan {
  readonly now: RoomNow;
  readonly weeks: readonly RoomWeek[];
  readonly shelfRoom: number | null;
  readonly freezerRoom: number | null;
  /** The first week that does not fit; null where all do or no room is given. */
  readonly shelfFull: RoomWeek | null;
  readonly freezerFull: RoomWeek | null;
  /** What to eat first, that which makes most room before all; empty where everything fits. */
  readonly eatFirst: readonly EatFirst[];
  /** What could not be reckoned in, with why. */
  readonly leftOut: readonly { readonly food: string; readonly way: WayKept; readonly problem: Problem }[];
}

/** Weeks looked ahead. */
export const ROOM_WEEKS = 53;

interface Track {
  readonly line: RoomLine;
  readonly storey: Exclude<Storey, null>;
  /** Room of one counted-in container of what stands there, and of what comes. */
  readonly eachNow: number;
  readonly eachNew: number;
  old: number;
  fresh: number;
  readonly arrivals: Float64Array;
}

/** Adds `containers` to the week of `day`; what comes sooner counts in the first week, what later not at all. */
function arrive(track: Track, containers: number, day: DayNumber, asOf: DayNumber): void {
  const week = Math.max(0, Math.floor((day - asOf) / 7));
  if (week < ROOM_WEEKS) track.arrivals[week] = (track.arrivals[week] ?? 0) + containers;
}

/** What is still to put up comes in evenly over the days of the harvest. */
function spread(track: Track, containers: number, begins: DayNumber, ends: DayNumber, asOf: DayNumber): void {
  const from = Math.max(begins, asOf);
  const days = Math.min(Math.max(from, ends) - from + 1, ROOM_WEEKS * 7);
  for (let day = 0; day < days; day++) arrive(track, containers / days, from + day, asOf);
}

function trackOf(
  line: RoomLine,
  figures: OwnFigures,
  guide: Guide,
  leave: (problem: Problem) => void,
): Track | null {
  const { food, way, countedIn } = line;
  let storey: Storey = null;
  let taken = 0;
  let stock = 0;
  const container = countedIn ?? line.lots.find((lot) => lot.container !== null)?.container ?? null;
  if (container === null) return null;
  for (const lot of line.lots) {
    if (lot.container === null || !isAmount(lot.left) || lot.left === 0) continue;
    const room = roomOf(food, way, lot.container, figures, guide);
    if (!room.ok) {
      leave(room.problem);
      continue;
    }
    storey ??= room.value.storey;
    taken += lot.left * room.value.each;
    const counted =
      lot.container === container
        ? lot.left
        : orNull(inMeasure(lot.left, lot.container, container, guide.bridges(food)));
    stock += counted ?? 0;
  }
  const each = roomOf(food, way, container, figures, guide);
  if (!each.ok) leave(each.problem);
  storey ??= each.ok ? each.value.storey : null;
  if (storey === null) return null;
  return {
    line,
    storey,
    // What cannot be turned into counted-in containers still stands there, and is not eaten down.
    eachNow: stock > 0 ? taken / stock : 0,
    eachNew: each.ok ? each.value.each : 0,
    old: stock,
    fresh: 0,
    arrivals: new Float64Array(ROOM_WEEKS),
  };
}

function comingIn(tracks: readonly Track[], { batches, household }: RoomInput, guide: Guide): void {
  const { asOf } = household;
  for (const track of tracks) {
    const { line } = track;
    let planned = 0;
    for (const batch of batches.reckoned.values()) {
      const { row, jars, posted } = batch;
      if (posted || jars === null || row.food !== line.food || row.way !== line.way) continue;
      const container = row.container ?? '';
      const counted = line.countedIn ?? container;
      const count =
        container === counted ? jars : orNull(inMeasure(jars, container, counted, guide.bridges(line.food)));
      if (count === null || !isDay(row.date)) continue;
      planned += count;
      arrive(track, count, row.date, asOf);
    }
    const rest = Math.max(0, (line.toPutUp ?? 0) - planned);
    if (rest > 0 && line.harvest && isAmount(rest)) {
      spread(track, rest, line.harvest.begins, line.harvest.ends, asOf);
    }
  }
}

/** One week of one line: eaten down at the usual use outside its season, oldest first, then what comes in. */
function pass(track: Track, from: DayNumber, week: number): number {
  const { line } = track;
  const use = isAmount(line.use) ? line.use * weeksOutside(from, from + 7, line.season) : 0;
  const ofOld = Math.min(track.old, use);
  track.old -= ofOld;
  track.fresh = Math.max(0, track.fresh - (use - ofOld)) + (track.arrivals[week] ?? 0);
  return track.old * track.eachNow + track.fresh * track.eachNew;
}

/**
 * Shelf room and freezer room week by week over the coming year: stock is eaten down at the usual use, dated
 * batches come in on their day, and what else is to be put up over the days of its harvest.
 */
export function planRoom(input: RoomInput): RoomPlan {
  const { household } = input;
  const figures = input.figures ?? publishedOnly;
  const guide = input.guide ?? defaultGuide;
  const leftOut: RoomPlan['leftOut'][number][] = [];
  const tracks = input.lines.flatMap((line) => {
    const { food, way } = line;
    let said = false;
    const track = trackOf(line, figures, guide, (problem) => {
      if (!said) leftOut.push({ food, way, problem });
      said = true;
    });
    return track ? [track] : [];
  });
  const now = { shelf: 0, freezer: 0 };
  for (const { storey, old, eachNow } of tracks) now[storey] += old * eachNow;
  const surplus = new Map(tracks.map((track) => [track, track.eachNow || track.eachNew]));
  const weeks: RoomWeek[] = [];
  if (isDay(household.asOf)) {
    comingIn(tracks, input, guide);
    for (let week = 0; week < ROOM_WEEKS; week++) {
      const from = household.asOf + week * 7;
      const at = { shelf: 0, freezer: 0 };
      for (const track of tracks) at[track.storey] += pass(track, from, week);
      weeks.push({ from, ...at });
    }
  }
  const { shelfRoom, freezerRoom } = household;
  const full = (storey: 'shelf' | 'freezer', room: number | null) =>
    room === null ? null : (weeks.find((week) => week[storey] > room + 1e-9) ?? null);
  const shelfFull = full('shelf', shelfRoom);
  const freezerFull = full('freezer', freezerRoom);
  const eatFirst = tracks
    .flatMap((track): EatFirst[] => {
      const { line, storey } = track;
      const week = storey === 'shelf' ? shelfFull : freezerFull;
      if (!week || line.over === null || !(line.over > 0)) return [];
      const until = weeksOutside(household.asOf, week.from, line.season);
      const { food, way, over, countedIn } = line;
      const frees = over * (surplus.get(track) ?? 0);
      return [{ food, way, storey, over, countedIn, frees, pace: until > 0 ? over / until : null }];
    })
    .sort((a, b) => b.frees - a.frees);
  return { now, weeks, shelfRoom, freezerRoom, shelfFull, freezerFull, eatFirst, leftOut };
}

/** Room taken by what stands there now, for the batches. */
export function roomNow(
  lines: readonly RoomLine[],
  figures: OwnFigures = publishedOnly,
  guide: Guide = defaultGuide,
): RoomNow {
  const now = { shelf: 0, freezer: 0 };
  for (const { food, way, lots } of lines) {
    for (const { container, left } of lots) {
      const room =
        container === null || !isAmount(left) ? null : roomOf(food, way, container, figures, guide);
      if (room?.ok && room.value.storey) now[room.value.storey] += left * room.value.each;
    }
  }
  return now;
}
