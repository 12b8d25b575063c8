import { isFormula, newId, type Raw, type Typed } from '../../../src/book/index.js';
import { FormulaShift } from '../../../src/live/shift-formula.js';
import type { GridContext } from './context.js';
import type { Write } from './edits.js';
import { type Block, bookRow } from './places.js';
import { series } from './series.js';

export type Direction = 'up' | 'down' | 'left' | 'right';

interface Place {
  readonly row: number;
  readonly column: number;
}

/**
 * Fills a block from the one beside it: numbers and dates go on as a series, formulas are shifted, all else
 * repeats. One command.
 *
 * @param repeat true: values repeat even where they would make a series
 */
export function fill(
  context: GridContext,
  source: Block,
  target: Block,
  direction: Direction,
  repeat = false,
): void {
  const { hot, binding, edits, host } = context;
  const vertical = direction === 'up' || direction === 'down';
  host.live.workOut();
  const ahead = direction === 'down' || direction === 'right';
  const makesRow = bookRow(hot, target.bottom) >= binding.rowCount;
  const ids = makesRow ? [newId('r')] : [];
  const shift = new FormulaShift(host.live, binding.sheet, { sheet: binding.sheet, ids });

  const placesOf = (block: Block, lane: number): Place[] => {
    const [from, to] = vertical ? [block.top, block.bottom] : [block.left, block.right];
    return Array.from({ length: to - from + 1 }, (_, i) =>
      vertical ? { row: from + i, column: lane } : { row: lane, column: from + i },
    );
  };
  const typedAt = ({ row, column }: Place): Raw | null => {
    const { id, role } = binding.columns[column]!;
    const line = binding.lines[bookRow(hot, row)]!;
    return role === 'planning' ? binding.accessor(id)(line) : binding.typed(line, id);
  };

  const writes: Write[] = [];
  const [first, last] = vertical ? [source.left, source.right] : [source.top, source.bottom];
  for (let lane = first; lane <= last; lane++) {
    const from = placesOf(source, lane);
    const values = from.map(typedAt);
    const plain = repeat || values.some(isFormula) ? null : series(values);
    const places = placesOf(target, lane);
    for (const [i, place] of places.entries()) {
      const index = ahead ? values.length + i : i - places.length;
      const at = bookRow(hot, place.row);
      const column = binding.columns[place.column]!.id;
      let typed: Typed;
      if (plain) typed = plain(index);
      else {
        const n = ((index % values.length) + values.length) % values.length;
        const value = values[n] ?? null;
        const origin = from[n]!;
        typed = isFormula(value)
          ? shift.to(
              value,
              at - bookRow(hot, origin.row),
              binding.letterIndex(column) - binding.letterIndex(binding.columns[origin.column]!.id),
            )
          : value;
      }
      writes.push({ at, column, typed });
    }
  }
  edits.write(writes, null, ids);
}

/** Fills the rows of a block below its first from that one; a single row from the row above it. */
export function fillDown(context: GridContext, block: Block): void {
  const single = block.top === block.bottom;
  if (single && block.top === 0) return;
  const top = single ? block.top - 1 : block.top;
  const source = { ...block, top, bottom: top };
  fill(context, source, { ...block, top: top + 1 }, 'down', true);
}
