import { change, type Workbench } from './bench.js';
import { dateOrder } from './date-order.js';
import { isCode, readEntry } from './entry.js';
import { isFormula } from './formula/references.js';
import type { OwnType } from './own-column.js';
import type { SheetState } from './state.js';
import type { Change, Raw } from './types.js';

/**
 * The entries of a column as its new type reads them: the text 12 becomes the number. What cannot be read
 * stays as it was typed, and so does everything where any entry will do.
 */
export function readAnew(sheet: SheetState, column: string, type: OwnType, bench: Workbench): Change[] {
  if (type === 'any') return [];
  const order = dateOrder(bench);
  const changes: Change[] = [];
  for (const [row, { cells }] of sheet.rows) {
    const raw = Object.hasOwn(cells, column) ? cells[column] : undefined;
    if (raw === undefined || isFormula(raw)) continue;
    const to = readAs(raw, type, order);
    changes.push(...change(bench.state, ['sheets', sheet.id, 'rows', row, 'cells', column], to));
  }
  return changes;
}

function readAs(raw: Raw, type: OwnType, order: ReturnType<typeof dateOrder>): Raw {
  if (typeof raw === 'number' && (type === 'text' || type === 'choice')) return String(raw);
  if (typeof raw !== 'string' || type === 'text') return raw;
  // What was held as text by an apostrophe is another thing now that the type says what it is.
  const bare = raw.startsWith("'") && type !== 'choice' ? raw.slice(1) : raw;
  // As a number a code would lose its zeros.
  if (type === 'number' && isCode(bare.trim())) return raw;
  const read = readEntry(bare, type, order) ?? raw;
  return read === bare ? raw : read;
}
