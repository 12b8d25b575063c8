import type { Problem } from '../../problem.js';
import { say } from '../../words/index.js';
import type { Taken } from '../allot.js';
import { isDay, toIsoDay } from '../dates.js';
import { laterThan } from '../later.js';
import { amountOf } from '../measure.js';
import type { LineReckoning } from '../reckon.js';
import type { Draw, DrawFigures, Lot, RowPlan } from '../types.js';
import { MOST, tidy } from '../words.js';

/** How a lot is called in words: by the day it was put up and where it stands. */
export function lotInWords(lot: Lot): string {
  const day = isDay(lot.putUpOn) ? say`put up ${toIsoDay(lot.putUpOn)}` : say`undated`;
  return lot.place.trim() === '' ? day : `${day}, ${lot.place.trim()}`;
}

const words = new WeakMap<LineReckoning, Map<string, string>>();

/** `lotInWords`, made once for each lot of a line. */
function wordsOf(line: LineReckoning, lot: Lot): string {
  let known = words.get(line);
  if (!known) {
    known = new Map();
    words.set(line, known);
  }
  let said = known.get(lot.id);
  if (said === undefined) {
    said = lotInWords(lot);
    known.set(lot.id, said);
  }
  return said;
}

/** `2 quart jars (put up 2025-08-14, cellar); 1 pint jar (undated)`; what is given back says so. */
export function tookFrom(line: LineReckoning, taken: Taken): string | null {
  const parts: string[] = [];
  for (const id of taken.order) {
    const lot = line.lots.get(id)?.lot;
    const amount = taken.allotted[id] ?? 0;
    if (!lot || amount === 0) continue;
    const said = `${amountOf(Math.abs(amount), lot.container ?? '')} (${wordsOf(line, lot)})`;
    parts.push(amount < 0 ? say`gave back ${said}` : said);
  }
  return parts.length > 0 ? parts.join('; ') : null;
}

/** The planning columns of one draw. */
export function drawRow(line: LineReckoning, draw: Draw, taken: Taken | null): RowPlan<DrawFigures> {
  const measure = draw.container ?? line.countedIn;
  const problems: Partial<Record<keyof DrawFigures, Problem>> = {};
  const units: Partial<Record<keyof DrawFigures, string>> = {};
  let inCounted: number | null = null;
  if (measure !== null) {
    units.not_found = measure;
    if (line.countedIn !== null && draw.amount !== null && Math.abs(draw.amount) <= MOST) {
      units.in_counted = line.countedIn;
      const factor = line.measures.factor(measure, line.countedIn);
      if (factor.ok) inCounted = tidy(draw.amount * factor.value);
      else problems.in_counted = factor.problem;
    }
  }
  if (taken?.problem) problems.took_from = taken.problem;
  const later = laterThan(line.household.asOf, draw.date);
  const notFound = taken ? tidy(taken.notFound) : 0;
  return {
    figures: {
      in_counted: inCounted,
      took_from: taken ? tookFrom(line, taken) : null,
      not_found: notFound > 0 ? notFound : null,
    },
    units,
    ...(later && { kept: { date: later } }),
    ...(Object.keys(problems).length > 0 ? { problems } : {}),
  };
}
