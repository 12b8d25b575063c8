import { at, ends, type Ranged } from '../planning/ranged.js';
import type { Basis } from '../planning/types.js';
import { ok, type Result } from '../problem.js';
import type { Explained } from './declare.js';

/** A published or worked-out figure as the answer of a function, at the end that `basis` counts on. */
export function explained(figure: Result<Ranged>, basis: Basis): Result<Explained> {
  if (!figure.ok) return figure;
  const { unit, source, origin, notes } = figure.value;
  const { low, high } = ends(figure.value);
  return ok({ value: at(figure.value, basis), low, high, unit, source, origin, notes });
}

/** As `explained`, for a day: its ends are told in the notes. */
export function explainedDay(
  found: Result<{ readonly day: number; readonly source: string; readonly notes: readonly string[] }>,
): Result<Explained> {
  if (!found.ok) return found;
  const { day, source, notes } = found.value;
  return ok({ value: { day }, unit: 'date', source, origin: 'computed', notes });
}
