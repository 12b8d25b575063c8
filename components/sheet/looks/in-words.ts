import type { BookChange } from '../../../src/live/live-book.js';
import { say } from '../../../src/words/index.js';
import type { ShownCell } from '../shown.js';

/** A cell's colour and note, for screen readers and the status line; '' where it has neither. */
export const looksInWords = ({ colour, note }: Pick<ShownCell, 'colour' | 'note'>): string =>
  [colour ? say`Marked ${colour}.` : '', note ? say`Note: ${note}` : ''].filter(Boolean).join(' ');

/** True where a change puts colours or notes on cells of this sheet, or takes them away. */
export const marksChanged = ({ changes }: BookChange, sheet: string): boolean =>
  changes.some(
    ({ path: [, of, part, , field] }) =>
      of === sheet && part === 'rows' && /^(note|colour):/.test(field ?? ''),
  );
