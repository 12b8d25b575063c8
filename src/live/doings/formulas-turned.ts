import { nameOfRow, rowInWords } from '../../book/formula/gone.js';
import { isFormula, measuresOf, titleOfColumn, titleOfSheet, toShown } from '../../book/index.js';
import { formulaTurnings } from '../../book/measured-formulas.js';
import type { MeasureSystem } from '../../units/index.js';
import { say } from '../../words/index.js';
import type { BookReading } from '../book-reading.js';
import { takesOneValue } from '../engine-sync.js';

/** What would become of one formula, or of the same one in many rows. */
export interface TurnedFormula {
  /** Where it stands, in words. */
  readonly place: string;
  /** As the person sees it. */
  readonly was: string;
  /** What would stand there; null where it cannot be turned and stays as it is. */
  readonly becomes: string | null;
  readonly count: number;
}

/**
 * Formulas that would be written anew if the household went over to other measures, and those that would have to be
 * but cannot: to be shown before it is done. None where the measures stay.
 */
export function formulasTurned(live: BookReading, measures: MeasureSystem): readonly TurnedFormula[] {
  const { state, layout } = live.inside;
  if (measuresOf(state) === measures) return [];
  const found = new Map<string, TurnedFormula>();
  for (const { place, was, to } of formulaTurnings(state, measures, takesOneValue)) {
    const sheet = state.sheets.get(place.sheet)!;
    const shown = (stored: string): string =>
      isFormula(stored) ? toShown(stored, sheet.id, layout) : stored;
    const column = say`“${titleOfColumn(sheet, place.column)}” of ${titleOfSheet(sheet)}`;
    const key = `${sheet.id}/${place.column}/${was}`;
    const same = found.get(key);
    if (same) found.set(key, { ...same, place: column, count: same.count + 1 });
    else
      found.set(key, {
        place: place.row === undefined ? column : `${column}, ${rowInWords(nameOfRow(sheet, place.row))}`,
        was: shown(was),
        becomes: to === null ? null : shown(to),
        count: 1,
      });
  }
  return [...found.values()];
}
