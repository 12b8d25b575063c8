import { ceilSafe, containerWithId } from '../../units/index.js';
import { say } from '../../words/index.js';
import { dayToCivil, fromIsoDay } from '../dates.js';
import { labelDay, labelMonth } from '../day-words.js';
import { measureName } from '../measure.js';
import type { ShelfLine } from './types.js';

/** The sort of label: a jar's stands on a lid or side, a bag's is written on flat, others are for bins and buckets. */
export type LabelFor = 'jar' | 'freezer bag' | 'other';

/** One label to print. */
export interface Label {
  readonly lot: string;
  /** 1 to `of`, for the containers of the lot. */
  readonly number: number;
  readonly of: number;
  readonly for: LabelFor;
  readonly food: string;
  readonly way: string;
  /** 'quart jar'. */
  readonly container: string;
  /** 'Aug 14, 2025', or '' where no date is known. */
  readonly putUp: string;
  /** 'best quality by Aug 2026'; '' where none is known. Never a safety date. */
  readonly bestBy: string;
  readonly place: string;
}

export interface LabelOptions {
  /** One for every container that is left, or one for the lot. */
  readonly each: 'container' | 'lot';
  /** How foods are written, by compared form. */
  readonly nameOf: (food: string) => string;
}

/** More labels of one lot than these are a slip of the key. */
export const MOST_LABELS = 500;

const labelFor = (container: string): LabelFor => {
  const family = containerWithId(container)?.family;
  return family === 'jar' ? 'jar' : family === 'bag' ? 'freezer bag' : 'other';
};

function bestWords(iso: unknown): string {
  if (typeof iso !== 'string') return '';
  const day = fromIsoDay(iso);
  return day.ok && dayToCivil(day.value).year > 0 ? say`best quality by ${labelMonth(day.value)}` : '';
}

/** Labels for these lots, in their order; lots with nothing left have none. */
export function labelsFor(
  lines: Iterable<ShelfLine>,
  lots: readonly string[],
  { each, nameOf }: LabelOptions,
): Label[] {
  const byLot = new Map<string, Label[]>();
  for (const { input, plan } of lines) {
    for (const lot of input.lots) {
      const figures = plan.lots.get(lot.id)?.figures;
      const left = figures?.left;
      if (lot.container === null || typeof left !== 'number' || left <= 0) continue;
      const whole = Math.min(MOST_LABELS, Math.max(1, ceilSafe(left)));
      const loose = labelFor(lot.container) === 'other';
      const of = each === 'lot' || loose ? 1 : whole;
      byLot.set(
        lot.id,
        Array.from({ length: of }, (_, i) => ({
          lot: lot.id,
          number: i + 1,
          of,
          for: labelFor(lot.container!),
          food: nameOf(input.food),
          way: input.way,
          container: measureName(lot.container!, 1),
          putUp: lot.putUpOn === null ? '' : labelDay(lot.putUpOn),
          bestBy: bestWords(figures?.best_by),
          place: lot.place.trim(),
        })),
      );
    }
  }
  return lots.flatMap((lot) => byLot.get(lot) ?? []);
}
