import {
  type Command,
  isFormula,
  type NewRow,
  newId,
  type Typed,
  type TypedCell,
} from '../../../src/book/index.js';
import { dependentsOf, removalOf } from '../../../src/live/doings/dependents.js';
import type { Problem } from '../../../src/problem.js';
import { say } from '../../../src/words/index.js';
import type { GridHost } from '../grid-view.js';
import type { SheetBinding } from './binding.js';

/** One cell to write: the row by its index in the book; from `rowCount` on, rows still to be made. */
export interface Write {
  readonly at: number;
  readonly column: string;
  readonly typed: Typed;
}

/** Turns what is done in the grid into commands: one for each deed, so one step of undo. */
export class Edits {
  constructor(
    readonly binding: SheetBinding,
    readonly host: GridHost,
  ) {}

  get #live() {
    return this.host.live;
  }

  /**
   * Writes cells, making rows where they lie past the last. Cells of planning columns are left out and the
   * person is told why; the others are written.
   *
   * @param note said afterwards where nothing was refused
   * @param ids ids for rows that are made, where formulas among the writes refer to them already
   * @returns the refusal where nothing was written
   */
  write(
    writes: readonly Write[],
    note: string | Problem | null = null,
    ids: readonly string[] = [],
  ): Problem | null {
    const refused = writes.filter(({ column }) => this.isPlanning(column));
    const wanted = writes.filter(({ column }) => !this.isPlanning(column));
    const refusal = this.#leftOut(refused, writes.length);
    const command = this.#command(wanted, ids);
    if (command === null) {
      this.host.say(refusal ?? note);
      return refusal;
    }
    const outcome = this.#live.apply(command);
    if (!outcome.ok) {
      this.host.say(outcome.problem);
      return outcome.problem;
    }
    this.host.say(refusal ?? outcome.notes[0] ?? note);
    if (wanted.some(({ typed }) => typeof typed === 'string' && isFormula(typed.trimStart())))
      void this.host.ensureEngine();
    return null;
  }

  /** Does a command and says why where it is refused. */
  do(command: Command, note: string | null = null): boolean {
    const outcome = this.#live.apply(command);
    this.host.say(outcome.ok ? (outcome.notes[0] ?? note) : outcome.problem);
    return outcome.ok;
  }

  /** Removes, or asks before where formulas depend on what would go. */
  remove(command: Command, note: string): void {
    const removal = removalOf(command);
    if (removal && dependentsOf(this.#live, removal)) this.host.ask({ ask: 'removal', command, note });
    else this.do(command, note);
  }

  isPlanning(column: string): boolean {
    return this.binding.column(column)?.role === 'planning';
  }

  /** Says why a planning column takes no entry. */
  refuse(column: string, row: string | null = null): void {
    const problem = this.#whyNot(column, row);
    if (problem) this.host.say(problem);
  }

  /** The book's own words for the refusal; asking it changes nothing, since it refuses. */
  #whyNot(column: string, row: string | null): Problem | null {
    const { sheet } = this.binding;
    const cells = [{ row: row ?? '', column, typed: null }];
    const outcome = this.#live.apply({ do: 'set cells', sheet, cells });
    if (outcome.ok) return null;
    const { problem } = outcome;
    return { ...problem, where: { sheet, column, ...(row !== null && { row }) } };
  }

  /** Why cells are left out and, of more than one cell, how many. */
  #leftOut(refused: readonly Write[], of: number): Problem | null {
    const [first] = refused;
    if (!first) return null;
    const why = this.#whyNot(first.column, this.binding.lines[first.at]?.id ?? null);
    if (!why || of === 1) return why;
    const columns = new Set(refused.map(({ column }) => column)).size;
    const count = refused.length;
    const leftOut =
      count === 1
        ? say`One cell was left out. ${why.message}`
        : columns === 1
          ? say`${count} cells were left out. ${why.message}`
          : say`${count} cells in ${columns} worked-out columns were left out. ${why.message}`;
    return { ...why, message: leftOut };
  }

  #command(writes: readonly Write[], ids: readonly string[]): Command | null {
    const { sheet, lines, rowCount } = this.binding;
    const cells: TypedCell[] = [];
    const made: { [column: string]: Typed }[] = [];
    for (const { at, column, typed } of writes) {
      if (at < rowCount) cells.push({ row: lines[at]!.id!, column, typed });
      else {
        while (made.length <= at - rowCount) made.push({});
        made[at - rowCount]![column] = typed;
      }
    }
    // Blanks past the last row make no row.
    while (made.length > 0 && Object.values(made.at(-1)!).every((typed) => typed === null || typed === ''))
      made.pop();
    const commands: Command[] = [];
    if (cells.length > 0) commands.push({ do: 'set cells', sheet, cells });
    if (made.length > 0) {
      const rows: NewRow[] = made.map((each, i) => ({ id: ids[i] ?? newId('r'), cells: each }));
      commands.push({ do: 'insert rows', sheet, before: null, rows });
    }
    if (commands.length === 0) return null;
    return commands.length === 1 ? commands[0]! : { do: 'all', of: commands };
  }
}
