import { type MeasureSystem, metricOf, roundSig } from '../units/index.js';
import { declarationOf, KINDS } from './kinds/index.js';
import { SETTINGS } from './settings.js';
import type { BookState, SheetState } from './state.js';
import type { Raw, SheetKind } from './types.js';

/** In which measures the household reads and writes: what its bare numbers are meant in. */
export const measuresOf = (state: Pick<BookState, 'settings'>): MeasureSystem =>
  String(state.settings.measures ?? '')
    .trim()
    .toLowerCase() === 'metric'
    ? 'metric'
    : 'US customary';

/** Kept columns without a unit of their own whose numbers are in one all the same. */
const MEANT: Readonly<Record<string, string>> = { 'facts/pounds': 'lb' };

/** Kept columns of crops, each with its weight: “tomato 3; onion 0.25”. */
export const WEIGHED: ReadonlySet<string> = new Set(['foods/crops', 'batches/pounds_in']);

/** The customary unit in which planners take the numbers of a kept column; undefined where they have none. */
export const keptUnit = (kind: string, column: string): string | undefined =>
  MEANT[`${kind}/${column}`] ?? declarationOf(kind as SheetKind, column)?.unit;

/** How many metric units one of the unit is; null for what is the same in any measures. */
export const factorOf = (unit: string | undefined): number | null =>
  unit === undefined ? null : (metricOf(unit)?.factor ?? null);

/** To six digits, or to seven where the way back would otherwise give another number (0.999999 for 1). */
function turned(n: number, factor: number): number {
  const six = roundSig(n * factor, 6);
  return roundSig(six / factor, 6) === n ? six : roundSig(n * factor, 7);
}

const WEIGHT = /(\d+(?:\.\d+)?)(?=\s*(?:;|\n|$))/g;

/** What is written, in other measures: numbers of columns with a unit, and weights beside crops. Formulas stay. */
function turnedCell(sheet: SheetState, row: string, column: string, raw: Raw, by: 1 | -1): Raw {
  const { kind } = sheet;
  const pound = metricOf('pounds')!.factor ** by;
  if (typeof raw === 'string') {
    const weighed = WEIGHED.has(`${kind}/${column}`) && !raw.startsWith('=');
    return weighed ? raw.replace(WEIGHT, (n) => String(turned(Number(n), pound))) : raw;
  }
  if (typeof raw !== 'number') return raw;
  const unit = kind === 'facts' && column === 'own_value' ? ownValueUnit(sheet, row) : keptUnit(kind, column);
  const factor = factorOf(unit);
  return factor === null ? raw : turned(raw, factor ** by);
}

/** A figure of one’s own is in the unit that its name says. */
export function ownValueUnit(sheet: SheetState, row: string): string | undefined {
  const name = String(sheet.rows.get(row)?.cells.figure ?? '');
  if (/pounds per cubic foot/i.test(name)) return 'pounds per cubic foot';
  if (/pounds|weight|yield/i.test(name)) return 'pounds';
  return /spacing/i.test(name) ? 'inches' : undefined;
}

/** One number that stands for something else once measures are others. */
export interface Turning {
  readonly path: readonly string[];
  readonly to: Raw;
}

/**
 * What has to be written anew when the household goes over to other measures, so that all of it means what it
 * meant: kept numbers that are in a unit, weights of crops, and settings. For formulas see `measured-formulas.ts`.
 */
export function turnings(state: BookState, to: MeasureSystem): Turning[] {
  if (measuresOf(state) === to) return [];
  const by = to === 'metric' ? 1 : -1;
  const found: Turning[] = [];
  for (const { id, unit } of SETTINGS) {
    const [now, factor] = [state.settings[id], factorOf(unit)];
    if (typeof now === 'number' && factor !== null)
      found.push({ path: ['settings', id], to: turned(now, factor ** by) });
  }
  for (const sheet of state.sheets.values()) {
    if (sheet.kind === 'own') continue;
    const columns = KINDS[sheet.kind].columns.filter(({ role }) => role === 'kept').map(({ id }) => id);
    for (const [row, { cells }] of sheet.rows) {
      for (const column of columns) {
        const now = cells[column];
        if (now === undefined) continue;
        const then = turnedCell(sheet, row, column, now, by);
        if (then !== now) found.push({ path: ['sheets', sheet.id, 'rows', row, 'cells', column], to: then });
      }
    }
  }
  return found;
}
