import { type Command, newId } from '../../book/index.js';
import { type TurnedYear, turnYear, type YearEdit } from '../../planning/garden/index.js';
import { ok, type Result, refuse } from '../../problem.js';
import { say } from '../../words/index.js';
import type { BookReading } from '../book-reading.js';

/** What turning the year would do, and the one command that does it (undo brings everything back). */
export interface YearToTurn {
  readonly turned: TurnedYear;
  readonly command: Command;
}

/** Closes the season: its totals into Facts, Harvest emptied, beds made ready. Refused while nothing came in. */
export function yearToTurn(live: BookReading): Result<YearToTurn> {
  const { garden } = live;
  if (!garden)
    return refuse('no-garden', say`The book has no garden sheets.`, say`Open it with this version first.`);
  const turned = turnYear({
    harvest: garden.harvest,
    beds: garden.beds,
    batches: garden.batches,
    facts: live.typedRows('facts'),
    weekRows: live.typedRows('week').map(({ id }) => id),
    windows: garden.windows,
    figures: garden.figures,
    asOf: live.household.asOf,
  });
  if (turned.edits.length === 0) {
    return refuse(
      'nothing-to-close',
      say`There is no season to close: Harvest and Batches are empty.`,
      say`Write what came in, then turn the year.`,
    );
  }
  const of = turned.edits.flatMap((edit) => asCommand(live, edit));
  return ok({ turned, command: { do: 'all', called: say`turning the year`, of } });
}

function asCommand(live: BookReading, edit: YearEdit): Command[] {
  const sheet = live.sheetOfKind(edit.kind);
  if (sheet === undefined) return [];
  switch (edit.do) {
    case 'insert rows':
      return [
        {
          do: 'insert rows',
          sheet,
          before: null,
          rows: edit.rows.map(({ cells }) => ({ id: newId('r'), cells })),
        },
      ];
    case 'remove rows':
      return [{ do: 'remove rows', sheet, rows: edit.rows }];
    case 'set cells':
      return [{ do: 'set cells', sheet, cells: edit.cells }];
  }
}
