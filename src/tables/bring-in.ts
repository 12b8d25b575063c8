import type { Command } from '../book/commands.js';
import { newId } from '../book/ids.js';
import type { LiveBook } from '../live/live-book.js';
import { ok, type Result } from '../problem.js';
import { ROWS_AT_ONCE } from './limits.js';
import type { ImportPlan } from './plan.js';
import type { SettledImport } from './settle.js';
import { breathe, type SliceOptions } from './slices.js';
import type { Reading } from './types.js';

type AddColumn = Extract<Command, { do: 'add column' }>;

/** What came of bringing a table in. */
export interface BroughtIn {
  readonly sheet: string;
  readonly rows: number;
}

/** How a new column is described, from how its cells were read. */
const lookOf = ({ type, choices }: Reading): NonNullable<AddColumn['as']> => ({
  type: type === 'month-day' || type === 'any' ? 'any' : type,
  ...(type === 'choice' && choices.length > 0 && { choices }),
});

/** The commands that bring a settled table in, in order: the sheet and its columns, rows in parts, formulas last. */
export function importCommands(
  plan: ImportPlan,
  settled: SettledImport,
): { sheet: string; commands: Command[] } {
  const sheet = 'newSheet' in plan.place ? newId('s') : plan.place.sheet;
  const columns = plan.columns.flatMap(({ index, target, reading }): AddColumn[] =>
    target.to === 'new'
      ? [
          {
            do: 'add column',
            sheet,
            column: settled.columnIds.get(index)!,
            before: null,
            title: target.title,
            as: lookOf(reading),
          },
        ]
      : [],
  );
  const frame: Command[] = [
    ...('newSheet' in plan.place ? [{ do: 'add sheet', sheet, title: plan.place.newSheet } as const] : []),
    ...columns,
  ];
  const commands: Command[] = frame.length > 0 ? [{ do: 'all', of: frame }] : [];
  for (let at = 0; at < settled.rows.length; at += ROWS_AT_ONCE) {
    commands.push({
      do: 'insert rows',
      sheet,
      before: null,
      rows: settled.rows.slice(at, at + ROWS_AT_ONCE),
    });
  }
  if (settled.formulas.length > 0) commands.push({ do: 'set cells', sheet, cells: settled.formulas });
  return { sheet, commands };
}

/**
 * Brings a settled table into the book as one step of undo, a part at a time, so that the page stays awake.
 * Answers null where it was stopped, and a refusal where a part was refused: then nothing is changed.
 */
export async function bringIn(
  live: LiveBook,
  plan: ImportPlan,
  settled: SettledImport,
  called: string,
  { signal, onProgress }: SliceOptions = {},
): Promise<Result<BroughtIn> | null> {
  const { sheet, commands } = importCommands(plan, settled);
  let done = 0;
  const takeBack = (): void => {
    for (; done > 0; done--) live.undo();
    live.forgetUndone();
  };
  for (const [at, command] of commands.entries()) {
    if (signal?.aborted) {
      takeBack();
      return null;
    }
    const outcome = live.apply({ do: 'all', of: [command], called });
    if (!outcome.ok) {
      takeBack();
      return outcome;
    }
    if (outcome.changes.length > 0) done++;
    onProgress?.((at + 1) / commands.length);
    if (at < commands.length - 1) await breathe();
  }
  live.joinSteps(done, called);
  return ok({ sheet, rows: settled.rows.length });
}
