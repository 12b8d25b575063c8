import { ok, type Problem, type Result, refuse } from '../../problem.js';
import { ceilSafe, containerWithId, inMeasure } from '../../units/index.js';
import { say } from '../../words/index.js';
import { isDay, toIsoDay } from '../dates.js';
import { cannerLoads } from '../putting-up.js';
import type { RowPlan } from '../types.js';
import { isAmount } from '../words.js';
import { batchBushels, batchCrops, containersFrom, mainCrop } from './batch-crops.js';
import type { BatchCrop, BatchesInput, BatchesPlan, BatchReckoning, LineToPutUp } from './batch-types.js';
import { headspaceGuidance, pressureGuidance } from './canning-guidance.js';
import { publishedOnly } from './own-figures.js';
import { roomOf } from './room-measures.js';
import type { BatchFigures, BatchRow, GardenHousehold } from './types.js';
import { orNull, problem, problemsOf, shown } from './words.js';

/** Share of lids that failed in the household's own batches so far; null before the first that was counted. */
export function ownFailures(rows: readonly BatchRow[]): number | null {
  let filled = 0;
  let failed = 0;
  for (const row of rows) {
    const counted = isAmount(row.filled) && row.filled > 0 && isAmount(row.failed);
    if (!counted || !containerWithId(row.container ?? '')?.lids) continue;
    filled += row.filled ?? 0;
    failed += Math.min(row.failed ?? 0, row.filled ?? 0);
  }
  return filled > 0 ? failed / filled : null;
}

const lineOf = (row: BatchRow, lines: readonly LineToPutUp[]): LineToPutUp | null =>
  lines.find(({ food, way }) => food === row.food && way === row.way) ?? null;

const isDone = ({ filled }: BatchRow): boolean => isAmount(filled) && filled > 0;

/** Containers of one size in those of another, or null. */
function inContainers(count: number, from: string | null, to: string | null): number | null {
  if (from === null || to === null) return null;
  if (from === to) return count;
  return orNull(inMeasure(count, from, to));
}

/**
 * Jars of batches whose crops are not weighed yet: what is still to put up of the line, less what open batches with
 * pounds will make, shared equally.
 */
function sharesOfLines(
  rows: readonly BatchRow[],
  lines: readonly LineToPutUp[],
  fromPounds: ReadonlyMap<string, number>,
): Map<string, number> {
  const shares = new Map<string, number>();
  for (const line of lines) {
    const open = rows.filter((row) => lineOf(row, [line]) !== null && !isDone(row) && row.lot === null);
    const waiting = open.filter((row) => !fromPounds.has(row.id) && row.container !== null);
    if (!isAmount(line.toPutUp) || waiting.length === 0) continue;
    let left = line.toPutUp;
    for (const row of open) {
      const made = fromPounds.get(row.id);
      if (made !== undefined) left -= inContainers(made, row.container, line.countedIn) ?? 0;
    }
    for (const row of waiting) {
      const share = inContainers(Math.max(0, left) / waiting.length, line.countedIn, row.container);
      if (share !== null) shares.set(row.id, share);
    }
  }
  return shares;
}

const byDate = (rows: readonly BatchRow[]): BatchRow[] =>
  rows
    .map((row, at) => ({ row, at, day: isDay(row.date) ? row.date : Number.POSITIVE_INFINITY }))
    .sort((a, b) => a.day - b.day || a.at - b.at)
    .map(({ row }) => row);

interface Before {
  readonly line: LineToPutUp | null;
  readonly crops: readonly BatchCrop[];
  readonly problem: Result<unknown> | null;
}

/** The planning columns of Batches, and what each rests on. Room is taken up in the order of the dates. */
export function planBatches(input: BatchesInput): BatchesPlan {
  const { rows, lines, household } = input;
  const figures = input.figures ?? publishedOnly;
  const failures = ownFailures(rows);
  const before = new Map<string, Before>();
  const fromPounds = new Map<string, number>();
  for (const row of rows) {
    const line = lineOf(row, lines);
    const { crops, problem: lacks } = batchCrops(row, line, household.basis, figures);
    before.set(row.id, { line, crops, problem: lacks });
    const containers = containersFrom(crops);
    if (isAmount(containers)) fromPounds.set(row.id, ceilSafe(containers));
  }
  const shares = sharesOfLines(rows, lines, fromPounds);
  const free = { shelf: household.shelfRoom, freezer: household.freezerRoom };
  if (free.shelf !== null) free.shelf -= input.room.shelf;
  if (free.freezer !== null) free.freezer -= input.room.freezer;
  const reckoned = new Map<string, BatchReckoning>();
  for (const row of byDate(rows)) {
    const { line, crops, problem: lacks } = before.get(row.id)!;
    const done = isDone(row);
    const posted = row.lot !== null;
    const weighed = fromPounds.get(row.id);
    const share = shares.get(row.id);
    const jars = done ? ceilSafe(row.filled ?? 0) : (weighed ?? (isAmount(share) ? ceilSafe(share) : null));
    const jarsFrom = done ? 'filled' : weighed !== undefined ? 'pounds' : jars !== null ? 'to put up' : null;
    const lidded = containerWithId(row.container ?? '')?.lids === true;
    const room =
      row.food === null || row.way === null || row.container === null
        ? null
        : roomOf(row.food, row.way, row.container, figures, input.guide);
    const failed = isAmount(row.failed) ? Math.min(row.failed, jars ?? 0) : 0;
    // What is posted stands on the shelf already.
    const taken = room?.ok && jars !== null && !posted ? room.value.each * (done ? jars - failed : jars) : 0;
    const storey = room?.ok ? room.value.storey : null;
    if (storey === 'shelf' && free.shelf !== null) free.shelf -= taken;
    if (storey === 'freezer' && free.freezer !== null) free.freezer -= taken;
    const loads =
      row.way !== 'canned' || jars === null || row.container === null
        ? null
        : cannerLoads(jars, row.container, row.loadsOf ?? undefined);
    const bushels = jars === null ? null : batchBushels(row, crops, jars, household.basis, figures);
    const pounds = crops.map((one) => one.pounds);
    const all = pounds.every((n) => n !== null) ? pounds.reduce<number>((sum, n) => sum + (n ?? 0), 0) : null;
    const reached = done && all !== null && crops.length > 0 ? all / (row.filled ?? 1) : null;
    reckoned.set(row.id, {
      row,
      done,
      posted,
      line,
      crops,
      cropProblem: lacks,
      jars,
      jarsFrom,
      failures,
      lids: !lidded || jars === null ? null : done ? jars : ceilSafe(jars * (1 + (failures ?? 0))),
      loads: loads === null ? null : loads.ok ? ok(loads.value.usual) : loads,
      loadSource: loads?.ok ? loads.value.source : null,
      bushels: bushels === null ? null : bushels.ok ? ok(bushels.value.bushels) : bushels,
      bushelSource: bushels?.ok ? bushels.value.source : null,
      shelfAfter: storey === 'shelf' ? free.shelf : null,
      freezerAfter: storey === 'freezer' ? free.freezer : null,
      reached,
      published: crops.length === 1 ? (mainCrop(crops)?.figure?.published?.usual ?? null) : null,
    });
  }
  const plans = new Map([...reckoned].map(([id, at]) => [id, toRow(at, household)]));
  return { rows: plans, reckoned };
}

const DOES_NOT_FIT = (what: string, mend: string): Problem =>
  problem('no-room', say`${what} will not hold this batch.`, mend);

function toRow(at: BatchReckoning, household: GardenHousehold): RowPlan<BatchFigures> {
  const { row, jars } = at;
  const canned = row.way === 'canned' && row.food !== null;
  const headspace = canned ? headspaceGuidance(row.food ?? '') : null;
  const pressure = canned ? pressureGuidance(row.food ?? '', household.altitudeFt) : null;
  const loads = at.loads?.ok ? at.loads.value : null;
  const hours = loads !== null && isAmount(row.hoursALoad) ? loads * row.hoursALoad : null;
  const seals =
    isAmount(row.failed) && isAmount(row.filled) && row.failed > row.filled
      ? problem(
          'more-failed-than-filled',
          say`More seals failed than jars were filled.`,
          say`Correct one of the two.`,
        )
      : null;
  const problems = problemsOf<keyof BatchFigures>({
    bushels_wanted: at.bushels && !at.bushels.ok ? at.bushels.problem : null,
    jars: jars === null && at.cropProblem && !at.cropProblem.ok ? at.cropProblem.problem : null,
    canner_loads: at.loads && !at.loads.ok ? at.loads.problem : null,
    pressure: pressure?.problem ?? null,
    shelf_room_after:
      at.shelfAfter !== null && at.shelfAfter < -1e-9
        ? DOES_NOT_FIT('The shelves', say`Eat first what is over, or make room for more jars.`)
        : null,
    freezer_room_after:
      at.freezerAfter !== null && at.freezerAfter < -1e-9
        ? DOES_NOT_FIT('The freezer', say`Eat first what is over, or put this up another way.`)
        : null,
    pounds_per_container: seals,
  });
  const units: Partial<Record<keyof BatchFigures, string>> =
    row.container === null ? {} : { jars: row.container };
  return {
    figures: {
      bushels_wanted: shown(orNull(at.bushels)),
      jars: shown(jars),
      lids: shown(at.lids),
      canner_loads: shown(loads),
      hours: shown(hours),
      headspace: headspace?.text ?? null,
      pressure: pressure?.text ?? null,
      shelf_room_after: shown(at.shelfAfter),
      freezer_room_after: shown(at.freezerAfter),
      pounds_per_container: shown(at.reached),
      against_published:
        at.reached !== null && at.published !== null && at.published > 0
          ? shown((at.reached / at.published) * 100)
          : null,
    },
    units,
    ...(problems ? { problems } : {}),
  };
}

/** The cells of the Shelf row that a batch becomes. */
export interface PostedLot {
  readonly food: string;
  readonly way: string;
  readonly container: string;
  readonly count: number;
  /** ISO day, where the batch has one. */
  readonly put_up_on?: string;
}

/**
 * The lot that a batch becomes: filled less failed. Refused (`already-posted`, `nothing-filled`, `missing`,
 * `more-failed-than-filled`). The command stores the new lot's id in the batch, so that it is posted once.
 */
export function postBatch(row: BatchRow): Result<PostedLot> {
  if (row.lot !== null) {
    return refuse('already-posted', say`This batch stands on the Shelf already.`, say`Change its lot there.`);
  }
  if (row.food === null || row.way === null || row.container === null) {
    return refuse(
      'missing',
      say`The food, the way it is kept or the container is missing.`,
      say`Write all three, then post the batch.`,
    );
  }
  if (!isAmount(row.filled) || row.filled === 0) {
    return refuse('nothing-filled', say`No containers are filled yet.`, say`Write how many were filled.`);
  }
  const failed = row.failed ?? 0;
  if (!isAmount(failed) || failed > row.filled) {
    return refuse(
      'more-failed-than-filled',
      say`More seals failed than jars were filled.`,
      say`Correct one of the two, then post the batch.`,
    );
  }
  return ok({
    food: row.foodName || row.food,
    way: row.way,
    container: row.container,
    count: row.filled - failed,
    ...(isDay(row.date) ? { put_up_on: toIsoDay(row.date) } : {}),
  });
}
