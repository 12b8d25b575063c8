import { complete } from './complete.js';
import { BOOK_FORMAT, BOOK_VERSION, type BookDoc } from './types.js';

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * A book from data that needs nothing but a check to be one, unchecked: to be shown while it is checked
 * (`parseBook`), and let go where that finds something. Undefined where it must be read first: it is of another
 * version, its references are still to be bound, or it is visibly something else.
 */
export function asItStands(json: unknown): BookDoc | undefined {
  if (!isRecord(json) || json.format !== BOOK_FORMAT || json.version !== BOOK_VERSION) return undefined;
  if (json.references !== 'by id' || !isRecord(json.settings) || !isRecord(json.sheets)) return undefined;
  const whole = Object.values(json.sheets).every(
    (sheet) => isRecord(sheet) && isRecord(sheet.columns) && isRecord(sheet.rows),
  );
  return whole ? complete(json as unknown as BookDoc) : undefined;
}
