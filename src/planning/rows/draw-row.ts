import type { Problem } from '../../problem.js';
import { roundSig } from '../../units/index.js';
import type { Taken } from '../allot.js';
import { isDay, toIsoDay } from '../dates.js';
import { amountOf } from '../measure.js';
import type { LineReckoning } from '../reckon.js';
import type { Draw, DrawFigures, Lot, RowPlan } from '../types.js';
import { MOST } from '../words.js';

/** How a lot is called in words: by the day it was put up and where it stands. */
export function lotInWords(lot: Lot): string {
  const day = isDay(lot.putUpOn) ? `put up ${toIsoDay(lot.putUpOn)}` : 'undated';
  return lot.place.trim() === '' ? day : `${day}, ${lot.place.trim()}`;
}

/** `2 quart jars (put up 2025-08-14, cellar); 1 pint jar (undated)`; what is given back says so. */
export function tookFrom(line: LineReckoning, taken: Taken): string | null {
  const parts: string[] = [];
  for (const id of taken.order) {
    const lot = line.lots.get(id)?.lot;
    const amount = taken.allotted[id] ?? 0;
    if (!lot || amount === 0) continue;
    const words = `${amountOf(Math.abs(amount), lot.container ?? '')} (${lotInWords(lot)})`;
    parts.push(amount < 0 ? `gave back ${words}` : words);
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
      if (factor.ok) inCounted = roundSig(draw.amount * factor.value, 12);
      else problems.in_counted = factor.problem;
    }
  }
  if (taken?.problem) problems.took_from = taken.problem;
  const notFound = taken ? roundSig(taken.notFound, 12) : 0;
  return {
    figures: {
      in_counted: inCounted,
      took_from: taken ? tookFrom(line, taken) : null,
      not_found: notFound > 0 ? notFound : null,
    },
    units,
    ...(Object.keys(problems).length > 0 ? { problems } : {}),
  };
}
