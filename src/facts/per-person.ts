import { cropCalled } from './crops.js';
import raw from './data/perPerson.json';
import { figureFrom } from './figure.js';
import type { Figure, RawFigure } from './figure-types.js';
import { wordsOf } from './names.js';

/** What one source reckons for a person, a family or a day. */
export interface PerPerson {
  readonly food: string;
  readonly form: string;
  /** For whom: 'per person', 'per adult', 'per family', 'US per-capita availability'. */
  readonly basis: string;
  /** Persons that the amount stands for, where the source says. */
  readonly persons: number | null;
  readonly amount: Figure;
  /** Servings a week, weeks and cups a serving that the amount rests on, where the source says. */
  readonly servings: readonly [perWeek: number, weeks: number, cups: number] | null;
  /** The year, season or day that it covers. */
  readonly when: string | null;
  readonly note: string | null;
}

interface RawPerPerson {
  readonly food: string;
  readonly form: string;
  readonly basis: string;
  readonly persons?: number;
  readonly unit: string;
  readonly is: RawFigure;
  readonly servings?: readonly number[];
  readonly when?: string;
  readonly note?: string;
}

const ALL: readonly PerPerson[] = (raw.amounts as unknown as readonly RawPerPerson[]).flatMap((row) => {
  const amount = figureFrom(row.is, row.unit);
  if (!amount) return [];
  const { food, form, basis } = row;
  const persons = row.persons ?? (basis.includes('family') ? null : 1);
  const [perWeek, weeks, cups] = row.servings ?? [];
  const servings =
    perWeek !== undefined && weeks !== undefined && cups !== undefined
      ? ([perWeek, weeks, cups] as const)
      : null;
  return [{ food, form, basis, persons, amount, servings, when: row.when ?? null, note: row.note ?? null }];
});

/** Amounts a person that any source prints for this food; all of them when blank, none where none is printed. */
export function perPerson(food = ''): readonly PerPerson[] {
  const words = wordsOf(food);
  if (words === '') return ALL;
  const crop = cropCalled(food)?.name;
  return ALL.filter(
    (one) => wordsOf(one.food) === words || (crop !== undefined && cropCalled(one.food)?.name === crop),
  );
}

/** Share of a grown appetite at an age in years, as a percent, from a home-storage guideline. */
export function childShare(age: number): Figure | null {
  const row = raw.childShares.find((one) => age >= one.from && (one.to === null || age < one.to + 1));
  return row ? figureFrom(row.is as unknown as RawFigure, 'percent of an adult share') : null;
}
