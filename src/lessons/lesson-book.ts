import type { BookDoc, Command, Outcome, TypedCell } from '../book/index.js';
import { LiveBook, type LiveBookOptions } from '../live/live-book.js';
import { FormulaShift } from '../live/shift-formula.js';
import type { Problem } from '../problem.js';
import { say } from '../words/index.js';
import { titlesAsNames } from './formula-task-columns.js';
import type { FormulaTask } from './formula-tasks.js';
import { columnAsked } from './lesson-columns.js';
import { type Entries, tellingColumns } from './lesson-doc.js';

export interface LessonBookAsked {
  readonly tasks: readonly FormulaTask[];
  readonly sheet: string;
  /** Rows that are asked about, of each planning column. */
  readonly rows: Readonly<Record<string, readonly string[]>>;
}

/**
 * A copy of a book, made by `lessonDoc`, in which pupils write formulas for planning columns and nothing else.
 * The first formula of a blank column is filled into all of its rows, as one step of undo.
 */
export class LessonBook extends LiveBook {
  readonly #asked: LessonBookAsked;

  constructor(doc: BookDoc, asked: LessonBookAsked, options: LiveBookOptions) {
    super(doc, options);
    this.#asked = asked;
  }

  override apply(command: Command): Outcome {
    const read = this.#allowed(command);
    return 'code' in read ? { ok: false, problem: read } : super.apply(read);
  }

  /** What is written now: by planning column and row, as typed. */
  get entries(): Entries {
    const { tasks, sheet, rows } = this.#asked;
    return Object.fromEntries(
      tasks.map(({ column }) => [
        column,
        Object.fromEntries(
          (rows[column] ?? []).flatMap((row) => {
            const typed = this.typed(sheet, row, columnAsked(column));
            return typed === null || typed === '' ? [] : [[row, String(typed)]];
          }),
        ),
      ]),
    );
  }

  /** The task whose column it is; undefined for every other column. */
  taskOf(column: string): FormulaTask | undefined {
    return this.#asked.tasks.find((task) => columnAsked(task.column) === column);
  }

  isAsked(row: string, column: string): boolean {
    const task = this.taskOf(column);
    return task !== undefined && this.#asked.rows[task.column]?.includes(row) === true;
  }

  #allowed(command: Command): Command | Problem {
    const { sheet } = this.#asked;
    switch (command.do) {
      case 'all': {
        const parts: Command[] = [];
        for (const each of command.of) {
          const read = this.#allowed(each);
          // Of several the others are done: all hidden columns shown again, but those that tell the answer.
          if (!('code' in read)) parts.push(read);
          else if (each.do !== 'describe column') return read;
        }
        return parts.length > 0 ? { ...command, of: parts } : this.#onlyThese();
      }
      case 'set cells':
        return command.sheet === sheet ? this.#written(command.cells) : this.#onlyThese();
      case 'describe column': {
        const fields = Object.keys(command.as);
        const isLook = fields.every((field) => ['width', 'pinned', 'hidden'].includes(field));
        const tells = tellingColumns(this, sheet, this.#asked.tasks).has(command.column);
        return isLook && !tells ? command : this.#onlyThese();
      }
      case 'move columns':
        return command;
      default:
        return this.#onlyThese();
    }
  }

  #written(cells: readonly TypedCell[]): Command | Problem {
    const { sheet } = this.#asked;
    const asked = cells.filter(({ row, column }) => this.isAsked(row, column));
    if (asked.length === 0) {
      return cells.some(({ column }) => this.taskOf(column))
        ? {
            code: 'lesson-row',
            message: say`Nothing is asked in this row: its figure does not come by that formula.`,
            mend: say`Write it in one of the rows that are marked.`,
          }
        : this.#onlyThese();
    }
    const read = asked.map((cell) => ({ ...cell, typed: this.#named(cell) }));
    return { do: 'set cells', sheet, cells: read.length === 1 ? this.#filled(read[0]!) : read };
  }

  #named({ typed }: TypedCell): TypedCell['typed'] {
    const text = typeof typed === 'string' ? typed.trim() : typed;
    return typeof text === 'string' && text.startsWith('=')
      ? titlesAsNames(this, this.#asked.sheet, text)
      : text;
  }

  /** One formula for the whole column, as long as no row has one of its own. */
  #filled(cell: TypedCell): readonly TypedCell[] {
    const { row, column, typed } = cell;
    const { sheet, rows } = this.#asked;
    const task = this.taskOf(column);
    if (!task || typeof typed !== 'string' || !typed.startsWith('=')) return [cell];
    const shift = new FormulaShift(this, sheet);
    const order = this.rowIds(sheet);
    const at = order.indexOf(row);
    const before = this.typed(sheet, row, column);
    const others = (rows[task.column] ?? []).filter((each) => each !== row);
    const shifted = (formula: string, to: string): string => shift.to(formula, order.indexOf(to) - at, 0);
    const isOwn = (each: string): boolean => {
      const there = this.typed(sheet, each, column);
      if (there === null || there === '') return false;
      const isFilled = typeof before === 'string' && before.startsWith('=') && typeof there === 'string';
      return !isFilled || shift.keep(there) !== shift.keep(shifted(before, each));
    };
    if (others.some(isOwn)) return [cell];
    return [cell, ...others.map((each) => ({ row: each, column, typed: shifted(typed, each) }))];
  }

  #onlyThese(): Problem {
    const { tasks, sheet } = this.#asked;
    const titles = tasks.map(({ column }) => `“${this.column(sheet, columnAsked(column))?.title}”`);
    return {
      code: 'lesson-only',
      message:
        titles.length === 1
          ? say`In this lesson only ${titles[0]} is written.`
          : say`In this lesson only ${titles.reduce((before, last) => say`${before} and ${last}`)} are written.`,
      mend: say`The other numbers stay as the book has them.`,
    };
  }
}
