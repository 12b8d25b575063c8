import { type Command, declarationOf, isFormula, type Raw } from '../book/index.js';
import type { Problem } from '../problem.js';
import { say } from '../words/index.js';
import type { BookReading } from './book-reading.js';
import type { BookChange, LiveBook } from './live-book.js';
import type { Varied } from './what-if.js';

/** A value as somebody tries it; null blanks it. */
export interface Tried {
  readonly varied: Varied;
  readonly value: Raw | null;
}

const writing = ({ at }: Varied, typed: Raw | null): Command =>
  'setting' in at
    ? { do: 'set setting', setting: at.setting, typed }
    : { do: 'set cells', sheet: at.sheet, cells: [{ row: at.row, column: at.column, typed }] };

/** True where the value's place is gone. */
const isGone = (live: LiveBook, { at }: Varied): boolean =>
  !('setting' in at) && (!live.rowIds(at.sheet).includes(at.row) || !live.column(at.sheet, at.column));

/** Values tried out on a copy of a book. The book itself is only read. */
export class WhatIfTrial {
  readonly original: LiveBook;
  readonly copy: LiveBook;
  readonly #tried = new Map<string, Tried>();

  /** `copy` was opened from the original as it now is. */
  constructor(original: LiveBook, copy: LiveBook) {
    this.original = original;
    this.copy = copy;
  }

  /** What differs from the book, in the order in which it was tried. */
  get tried(): readonly Tried[] {
    return [...this.#tried.values()];
  }

  /** What is tried at a place; undefined where it is as in the book. */
  at(key: string): Raw | null | undefined {
    return this.#tried.get(key)?.value;
  }

  /**
   * Tries values, all in one go; undefined puts one back as the book has it. A refused value leaves all as it was.
   */
  try(
    values: readonly { readonly varied: Varied; readonly value: Raw | null | undefined }[],
  ): Problem | undefined {
    const of = values.map(({ varied, value }) =>
      writing(varied, value === undefined ? this.#asInBook(varied) : value),
    );
    const done = this.copy.apply({ do: 'all', of });
    if (!done.ok) return done.problem;
    for (const { varied, value } of values) {
      if (value === undefined || value === this.#asInBook(varied)) this.#tried.delete(varied.key);
      else this.#tried.set(varied.key, { varied, value });
    }
    return undefined;
  }

  /** Puts everything back as the book has it. */
  reset(): void {
    this.try(this.tried.map(({ varied }) => ({ varied, value: undefined })));
    this.#tried.clear();
  }

  /** The book changed: the copy follows, with what is tried on top. What is tried at a place that went is let go. */
  follow({ changes }: Pick<BookChange, 'changes'>): void {
    this.copy.applyRemote(structuredClone(changes));
    const still = this.tried.filter(({ varied }) => !isGone(this.copy, varied));
    this.#tried.clear();
    if (still.length > 0) this.try(still);
  }

  /** What would write the tried values into the book, as one step; null where nothing is tried. */
  command(): Command | null {
    const tried = this.tried.filter(({ varied }) => !isGone(this.original, varied));
    if (tried.length === 0) return null;
    const called =
      tried.length === 1 ? say`value tried out before` : say`${tried.length} values tried out before`;
    return { do: 'all', of: tried.map(({ varied, value }) => writing(varied, value)), called };
  }

  /** What is wrong with a value where it is tried, if anything is. */
  problem({ at }: Varied): Problem | undefined {
    return 'setting' in at
      ? this.copy.settingProblem(at.setting)
      : this.copy.problem(at.sheet, at.row, at.column);
  }

  #asInBook({ at }: Varied): Raw | null {
    return 'setting' in at
      ? (this.original.setting(at.setting) ?? null)
      : this.original.typed(at.sheet, at.row, at.column);
  }
}

/** True where a formula stands in a column from which the plan is worked out: then figures follow only with an engine. */
export function formulasFeedPlan(live: BookReading): boolean {
  for (const { kind, rows } of live.inside.state.sheets.values()) {
    for (const { cells } of rows.values())
      for (const [column, raw] of Object.entries(cells))
        if (isFormula(raw) && declarationOf(kind, column)?.role === 'kept') return true;
  }
  return false;
}
