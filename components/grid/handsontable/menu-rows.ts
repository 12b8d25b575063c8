import { isFormula, type Raw } from '../../../src/book/index.js';
import { say } from '../../../src/words/index.js';
import type { GridContext } from './context.js';
import { about, type Items, many } from './menu-items.js';
import { bookRow, focusedPlace } from './places.js';

/** What a new row is given so that it stands in the same group as the row beside it. */
function groupCells({ host, binding, groups }: GridContext, beside: string | null): Record<string, Raw> {
  const column = beside === null ? undefined : binding.column(groups.by ?? '');
  if (!column || column.role === 'planning') return {};
  const typed = host.live.typed(binding.sheet, beside!, column.id);
  return typed === null || isFormula(typed) ? {} : { [column.id]: typed };
}

/** Inserting and removing rows. */
export function rowItems(context: GridContext): Items {
  const { host, binding, hot } = context;
  const { sheet } = binding;
  const onRows = (): boolean => (focusedPlace(hot)?.row ?? -1) >= 0;
  const insert = (below: boolean): void => {
    const { block } = about(context);
    if (!block) return;
    const at = bookRow(hot, below ? block.bottom : block.top) + (below ? 1 : 0);
    const beside = binding.lines[bookRow(hot, below ? block.bottom : block.top)]?.id ?? null;
    const outcome = host.live.insertRows(sheet, [groupCells(context, beside)], binding.lines[at]?.id ?? null);
    host.say(outcome.ok ? null : outcome.problem);
    const row = outcome.rows[0];
    if (outcome.ok && row !== undefined) {
      const seen = hot.toVisualRow(binding.indexOfRow(row));
      if (seen !== null) hot.selectCell(seen, block.left);
    }
  };
  return {
    insert_above: {
      name: () => say`Insert a row above`,
      callback: () => insert(false),
      hidden: () => !onRows(),
    },
    insert_below: {
      name: () => say`Insert a row below`,
      callback: () => insert(true),
      hidden: () => !onRows(),
      disabled: () => about(context).rows.length === 0,
    },
    rows_remove: {
      name: () => many(about(context).rows.length, say`Remove this row`, say`Remove these rows`),
      callback: () => {
        const { rows } = about(context);
        context.edits.remove(
          { do: 'remove rows', sheet, rows },
          rows.length === 1
            ? say`One row removed. Undo brings it back.`
            : say`${rows.length} rows removed. Undo brings them back.`,
        );
      },
      hidden: () => !onRows(),
      disabled: () => about(context).rows.length === 0,
    },
  };
}
