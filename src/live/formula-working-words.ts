import { type CellAddress, titleOfColumn } from '../book/index.js';
import { functionNamed } from '../formulas/index.js';
import { excerpt } from '../problem.js';
import { quoted, say } from '../words/index.js';
import type { BookReading } from './book-reading.js';
import { type FormulaPart, rowAt } from './formula-working-tree.js';
import { rowName } from './row-name.js';

const LONGEST_BRIEF = 40;

const SIGNS: Readonly<Record<string, string>> = {
  '*': '×',
  '/': '÷',
  '-': '−',
  '<=': '≤',
  '>=': '≥',
  '<>': '≠',
};

export const signOf = (operator: string): string => SIGNS[operator] ?? operator;

/** Puts the parts of a formula that stands in a cell into words. */
export class FormulaWords {
  readonly #live: BookReading;
  readonly #home: CellAddress;

  constructor(live: BookReading, home: CellAddress) {
    this.#live = live;
    this.#home = home;
  }

  /** A cell by the title of its column; with its row and sheet where these are others. */
  cell({ sheet, row, column }: CellAddress): string {
    const title = this.column(sheet, column);
    return sheet === this.#home.sheet && row === this.#home.row
      ? title
      : `${say`${title} of ${excerpt(rowName(this.#live, sheet, row), 60)}`}${this.#sheet(sheet)}`;
  }

  column(sheet: string, column: string): string {
    const state = this.#live.inside.state.sheets.get(sheet);
    return state ? excerpt(titleOfColumn(state, column), 60) : say`a column that is gone`;
  }

  /** A range: `“Left”`, `“Left”, rows 3 to 9`, `“Left” to “Price”`. */
  cells({ from, to }: Extract<FormulaPart, { is: 'cells' }>): string {
    const sheet = from.sheet ?? this.#home.sheet;
    const { layout } = this.#live.inside;
    const columns = [from.column, to.column].flatMap((id) =>
      id === undefined ? [] : [this.column(sheet, id)],
    );
    const rows = [from.row, to.row].flatMap((id) =>
      id === undefined ? [] : [layout.rowIndex(sheet, id) + 1],
    );
    const [first, last] = [...new Set(rows)];
    const [left, right] = [...new Set(columns)];
    const of =
      first === undefined ? '' : last === undefined ? say`row ${first}` : say`rows ${first} to ${last}`;
    const across =
      left === undefined ? '' : right === undefined ? quoted(left) : say`${quoted(left)} to ${quoted(right)}`;
    return [across, of].filter(Boolean).join(', ') + this.#sheet(sheet);
  }

  /** A part in a few words: what is long is told by what is outermost. */
  brief(part: FormulaPart): string {
    const text = this.part(part);
    if (text.length <= LONGEST_BRIEF) return text;
    if (part.is === 'call') return `${part.name}(…)`;
    const [left, right] = part.is === 'operator' ? part.parts : [];
    return left && right && part.is === 'operator'
      ? `${this.brief(left)} ${signOf(part.operator)} ${this.brief(right)}`
      : excerpt(text, LONGEST_BRIEF);
  }

  /** The whole formula with titles in place of references. */
  part(part: FormulaPart, inside = false): string {
    switch (part.is) {
      case 'cell':
        return this.cell({ ...part.at, row: rowAt(part.at.row, this.#home.row) });
      case 'cells':
        return this.cells(part);
      case 'text':
        return quoted(excerpt(part.value, 60));
      case 'call':
        return `${part.name}(${part.args.map((arg) => (arg ? this.part(arg) : '')).join(', ')})`;
      case 'operator': {
        const [left, right] = part.parts;
        const sign = signOf(part.operator);
        if (!right)
          return part.operator === '%' ? `${this.part(left, true)} %` : `${sign}${this.part(left, true)}`;
        const text = `${this.part(left, !chains(part.operator, left))} ${sign} ${this.part(right, !bindsCloser(right, part.operator))}`;
        return inside ? `(${text})` : text;
      }
      default:
        return part.stored;
    }
  }

  #sheet(sheet: string): string {
    if (sheet === this.#home.sheet) return '';
    return say` on ${excerpt(this.#live.inside.layout.titleOf(sheet) ?? say`a sheet that is gone`, 60)}`;
  }
}

const RANK: Readonly<Record<string, number>> = { '+': 1, '-': 1, '*': 2, '/': 2 };

/** Is a part that stands to the right of an operator read on without brackets? */
const bindsCloser = (right: FormulaPart, operator: string): boolean =>
  right.is === 'operator' && (RANK[right.operator] ?? 0) > (RANK[operator] ?? 9);

/** Is a part that stands to the left of an operator read on without brackets? */
export const chains = (operator: string, left: FormulaPart): boolean => {
  const [rank, inner] = [RANK[operator], left.is === 'operator' ? RANK[left.operator] : undefined];
  return rank !== undefined && inner !== undefined && left.is === 'operator' && left.parts.length === 2
    ? inner >= rank
    : left.is !== 'operator';
};

/** What the arguments of one of our functions are called, for a step. */
export const argumentName = (name: string, at: number): string =>
  functionNamed(name)?.arguments[at]?.name ?? '';
