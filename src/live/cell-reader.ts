import {
  type CellValue,
  type ColumnDeclaration,
  declarationOf,
  isCellError,
  type KindDeclaration,
  keptUnit,
  type SheetKind,
} from '../book/index.js';
import { parseDay, parseMonthDay } from '../planning/parse-date.js';
import type { DayNumber, MonthDay } from '../planning/types.js';
import type { Problem, Result } from '../problem.js';
import { findContainer, findMeasure, findUnit, turnedUnit } from '../units/index.js';
import { say, spoken } from '../words/index.js';

/** A number as planners take it: what a household writes is in its own measures. */
export const inCustomary = (value: number, unit: string | undefined): number =>
  value / ((unit === undefined ? null : turnedUnit(unit))?.factor ?? 1);

/**
 * Reads one row's kept cells as what their columns hold. What cannot be read counts as blank and leaves a
 * problem at its column; the other cells are read all the same.
 */
export class CellReader {
  readonly problems: Record<string, Problem> = {};
  readonly #kind: SheetKind | KindDeclaration;
  readonly #valueOf: (column: string) => CellValue;

  constructor(kind: SheetKind | KindDeclaration, read: (column: string) => CellValue) {
    this.#kind = kind;
    this.#valueOf = read;
  }

  text(column: string): string {
    const value = this.#plain(column);
    return value === null ? '' : String(value).trim();
  }

  number(column: string): number | null {
    const value = this.#plain(column);
    if (value === null || value === '') return null;
    const { title: english, min } = this.#declared(column);
    const title = spoken(english);
    if (typeof value !== 'number' || !Number.isFinite(value)) {
      return this.#problem(
        column,
        'not-a-number',
        say`“${title}” takes a number, not “${short(value)}”.`,
        say`Write it in digits, as in 12 or 2.5.`,
      );
    }
    if (min !== undefined && value < min) {
      return this.#problem(
        column,
        'number-too-small',
        say`“${title}” cannot be below ${min}: ${value} is left out of the plan.`,
        say`Write ${min} or more.`,
      );
    }
    if (Math.abs(value) > 1e9) {
      return this.#problem(
        column,
        'number-too-large',
        say`“${title}” is more than a thousand million: left out of the plan.`,
        say`Write a smaller number.`,
      );
    }
    return inCustomary(
      value,
      keptUnit(typeof this.#kind === 'string' ? this.#kind : this.#kind.kind, column),
    );
  }

  day(column: string): DayNumber | null {
    const value = this.#plain(column);
    if (value === null || value === '') return null;
    return this.#read(
      column,
      typeof value === 'string' ? parseDay(value) : null,
      say`a date`,
      say`Write it year first, as in 2026-05-24.`,
    );
  }

  monthDay(column: string): MonthDay | null {
    const value = this.#plain(column);
    if (value === null || value === '') return null;
    const text = typeof value === 'string' ? value.replace(/^\d{4}-(\d{2}-\d{2})$/, '$1') : '';
    return this.#read(
      column,
      text ? parseMonthDay(text) : null,
      say`a month and a day`,
      say`Write month, then day, as in 05-24.`,
    );
  }

  tick(column: string): boolean {
    const value = this.#plain(column);
    return value === true || (typeof value === 'number' && value !== 0);
  }

  /** One of a fixed list, without case; null when blank or none of it. */
  choice<T extends string>(column: string, among: readonly T[]): T | null {
    const text = this.text(column);
    if (text === '') return null;
    const found = among.find((each) => each === text.toLowerCase());
    if (found !== undefined) return found;
    const title = spoken(this.#declared(column).title);
    return this.#problem(
      column,
      'not-a-choice',
      say`“${title}” has no choice “${short(text)}”.`,
      say`Choose one of: ${among.map(spoken).join(', ')}.`,
    );
  }

  /** A container's id. */
  container(column: string): string | null {
    const text = this.text(column);
    if (text === '') return null;
    const found = findContainer(text);
    if (found.ok) return found.value.id;
    this.note(column, found.problem);
    return null;
  }

  /** The id of a container or a unit. A name that both have means the container. */
  measure(column: string): string | null {
    const text = this.text(column);
    if (text === '') return null;
    const container = findContainer(text);
    if (container.ok) return container.value.id;
    const unit = findUnit(text);
    if (unit.ok) return unit.value.id;
    const neither = findMeasure(text);
    if (!neither.ok) this.note(column, neither.problem);
    return null;
  }

  note(column: string, problem: Problem): void {
    this.problems[column] ??= problem;
  }

  #read<T>(column: string, result: Result<T> | null, what: string, mend: string): T | null {
    if (result?.ok) return result.value;
    const title = spoken(this.#declared(column).title);
    const value = short(this.#plain(column));
    return this.#problem(
      column,
      'not-a-date',
      say`“${title}” takes ${what}; “${value}” is none.`,
      result ? result.problem.mend : mend,
    );
  }

  #plain(column: string): number | string | boolean | null {
    const value = this.#valueOf(column);
    if (!isCellError(value)) return value;
    this.note(column, {
      code: 'formula-error',
      message: value.message,
      mend: say`Correct the formula; until then the cell counts as blank.`,
    });
    return null;
  }

  #declared(column: string): ColumnDeclaration {
    return typeof this.#kind === 'string'
      ? declarationOf(this.#kind, column)!
      : this.#kind.columns.find(({ id }) => id === column)!;
  }

  #problem(column: string, code: string, message: string, mend: string): null {
    this.note(column, { code, message, mend });
    return null;
  }
}

const short = (value: unknown): string => String(value).slice(0, 40);
