import { say } from '../../../src/words/index.js';
import { shownDay } from '../../sheet/shown.js';
import type { GridContext } from './context.js';
import type { Write } from './edits.js';
import { type Direction, fill } from './fill.js';
import type { Block } from './places.js';
import { bookRow } from './places.js';
import { askWhatIsShown, readConditions } from './read-conditions.js';
import { plainText, saidValue } from './show.js';

const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;

interface Range {
  getTopStartCorner(): { row: number | null; col: number | null };
  getBottomEndCorner(): { row: number | null; col: number | null };
}

const blockOf = (range: Range): Block => {
  const from = range.getTopStartCorner();
  const to = range.getBottomEndCorner();
  return { top: from.row ?? 0, left: from.col ?? 0, bottom: to.row ?? 0, right: to.col ?? 0 };
};

/** What people do with the library's own means becomes commands; the library itself changes nothing. */
export function addHooks(context: GridContext): void {
  const { hot, binding, edits, views, host } = context;
  const { sheet } = binding;

  // The library goes to its corner, or to the last line, where nothing was selected yet.
  let selected = false;
  hot.addHook('afterSelection', () => {
    selected = true;
  });
  hot.addHook('modifyFocusOnTabNavigation', (_from: string, place: { row: number; col: number }) => {
    if (selected) return;
    place.row = 0;
    place.col = 0;
  });

  // Whatever way a change may come that is not handled before: a command, never a write of the library's.
  hot.addHook('beforeChange', (changes: ([number, unknown, unknown, unknown] | null)[]) => {
    const writes = changes.flatMap((change): Write[] => {
      const column = change && binding.columnOf(change[1]);
      if (!change || !column) return [];
      return [{ at: bookRow(hot, change[0]), column, typed: (change[3] ?? null) as Write['typed'] }];
    });
    if (writes.length > 0) edits.write(writes);
    return false;
  });

  hot.addHook('beforeAutofill', (_data: unknown, source: Range, target: Range, direction: Direction) => {
    const [from, to] = [blockOf(source), blockOf(target)];
    fill(context, from, to, direction);
    hot.selectCell(
      Math.min(from.top, to.top),
      Math.min(from.left, to.left),
      Math.max(from.bottom, to.bottom),
      Math.max(from.right, to.right),
      false,
    );
    return false;
  });

  hot.addHook('beforeColumnMove', (moved: number[], _final: number, drop: number | undefined) => {
    if (drop === undefined) return false;
    const columns = moved.flatMap((index) => binding.columns[index]?.id ?? []);
    edits.do({ do: 'move columns', sheet, columns, before: binding.columns[drop]?.id ?? null });
    return false;
  });

  hot.addHook('beforeRowMove', (moved: number[], _final: number, drop: number | undefined) => {
    if (drop === undefined) return false;
    const grouped = context.groups.by !== undefined;
    if (views.isChanged || grouped) {
      host.say({
        code: 'rows-stand-otherwise',
        message: grouped
          ? say`Rows cannot be moved while they are in groups.`
          : say`Rows cannot be moved while they are sorted or filtered.`,
        mend: grouped
          ? say`Choose “No groups” in a column’s menu first.`
          : say`Choose “As entered” and “Show all rows again” in a column’s menu first.`,
      });
      return false;
    }
    const rows = moved.flatMap((row) => binding.lines[bookRow(hot, row)]?.id ?? []);
    const before = drop < hot.countRows() ? (binding.lines[bookRow(hot, drop)]?.id ?? null) : null;
    if (rows.length > 0) edits.do({ do: 'move rows', sheet, rows, before });
    return false;
  });

  hot.addHook('beforeFilter', () => {
    const { conditionCollection } = hot.getPlugin('filters');
    for (const [at, column] of binding.columns.entries()) {
      const conditions = conditionCollection?.getConditions(at) ?? [];
      if (column.type === 'number') readConditions(conditions);
      else askWhatIsShown(conditions as never, (value) => saidValue(value, column));
    }
  });

  // The filter's list shows values as the cells do.
  hot.addHook('modifyFiltersMultiSelectValue', (value: unknown, meta: { readonly col?: number }) => {
    if (typeof value === 'boolean') return value ? say`yes` : say`no`;
    if (typeof value === 'string' && ISO_DAY.test(value)) return shownDay(value);
    const column = binding.columns[meta.col ?? -1];
    if (!column || (typeof value !== 'number' && typeof value !== 'string')) return value;
    // The library has numbers as text here.
    const number = column.type === 'number' && value !== '' ? Number(value) : Number.NaN;
    return plainText(Number.isNaN(number) ? value : number, column);
  });

  hot.addHook('afterColumnResize', (width: number, index: number) => {
    const column = binding.columns[index]?.id;
    // The width is the book's from now on, by the column's id; the plugin would keep it by place.
    hot.getPlugin('manualColumnResize').clearManualSize(index);
    if (column !== undefined) edits.do({ do: 'describe column', sheet, column, as: { width } });
  });
}
