import { columnOfField } from '../book/row-columns.js';
import type { Json } from '../book/types.js';
import type { LeafMap } from './leaves.js';
import { isObject, keysOfBoth, own } from './plain.js';
import { markOf, type Shadow } from './shadow.js';

/** Turns edits of the book, by path, into leaves. */
export class LeafEdits {
  readonly #shadow: Shadow;
  readonly #leaf: (map: LeafMap, ids: readonly string[], value: Json | undefined) => void;

  /** `leaf` sets one leaf, in the shadow too. */
  constructor(shadow: Shadow, leaf: (map: LeafMap, ids: readonly string[], value: Json | undefined) => void) {
    this.#shadow = shadow;
    this.#leaf = leaf;
  }

  /** Sets what stands at a path of a `Change`, or removes it. */
  set([head, id, ...below]: readonly string[], to: Json | undefined): void {
    if (head === undefined) return;
    if (head === 'sheets') {
      if (id !== undefined) this.#setSheet(id, below, to);
      else each(to, this.#shadow.book().sheets, (s, sheet) => this.#setSheet(s, [], sheet));
    } else if (head === 'settings') {
      if (id !== undefined) this.#leaf('settings', [id], to);
      else each(to, this.#shadow.book().settings, (key, value) => this.#leaf('settings', [key], value));
    } else this.#leaf('book', [head], to);
  }

  #setSheet(s: string, [part, ...below]: readonly string[], to: Json | undefined): void {
    const here = (removed: boolean) => this.#shadow.sheet(s, removed);
    if (part === undefined)
      this.#setWhole('sheets', [s], here, to, (key, value, held) =>
        this.#setInSheet(s, key, [], value, held),
      );
    else if (this.#shadow.hasSheet(s)) {
      this.#leaf('sheets', [s], true);
      const held = below.length === 0 ? here(false) : undefined;
      this.#setInSheet(s, part, below, to, isObject(held) ? own(held, part) : undefined);
    }
  }

  #setInSheet(
    s: string,
    part: string,
    [id, ...rest]: readonly string[],
    to: Json | undefined,
    held?: Json,
  ): void {
    const setOne = (key: string, below: readonly string[], value: Json | undefined) =>
      part === 'rows' ? this.#setRow(s, key, below, value) : this.#setColumn(s, key, below, value);
    if (part !== 'columns' && part !== 'rows') this.#leaf('sheets', [s, part], to);
    else if (id !== undefined) setOne(id, rest, to);
    else each(to, held, (key, value) => setOne(key, [], value));
  }

  #setColumn(s: string, c: string, [field]: readonly string[], to: Json | undefined): void {
    const set = (key: string, value: Json | undefined) => this.#leaf('columns', [s, c, key], value);
    if (field === undefined) {
      this.#setWhole('columns', [s, c], (removed) => this.#shadow.column(s, c, removed), to, set);
      return;
    }
    // A column of the kind has no entry of its own until something about it is set.
    this.#leaf('columns', [s, c], true);
    set(field, to);
  }

  #setRow(s: string, r: string, [field, cell]: readonly string[], to: Json | undefined): void {
    const setField = (key: string, value: Json | undefined, held?: Json) => {
      if (key !== 'cells') this.#leaf('rows', [s, r, key], value);
      else each(value, held, (c, item) => this.#leaf('cells', [s, r, c], item));
    };
    const here = (removed: boolean) => this.#shadow.row(s, r, removed);
    this.#keepColumns(s, r, field === 'cells' ? cell : field && columnOfField(field));
    if (field === undefined) this.#setWhole('rows', [s, r], here, to, setField);
    if (field === undefined || !this.#shadow.hasRow(s, r)) return;
    this.#leaf('rows', [s, r], true);
    if (field !== 'cells') setField(field, to);
    else if (cell !== undefined) this.#leaf('cells', [s, r, cell], to);
    else setField(field, to, (here(false) as { cells: Json }).cells);
  }

  /**
   * A column that was removed, and is there because this row holds something in it, is there for good once that
   * is edited: else it would be gone as soon as the row holds nothing. Without `column`: all such columns.
   */
  #keepColumns(s: string, r: string, column: string | undefined): void {
    for (const c of column === undefined ? this.#shadow.columnsRemoved(s) : [column]) {
      if (typeof this.#shadow.read('columns', [s, c]) !== 'string') continue;
      if (this.#shadow.rowHolds(s, r, c) && this.#shadow.column(s, c) !== undefined)
        this.#leaf('columns', [s, c], true);
    }
  }

  /** Sets or removes a whole sheet, column or row. Its leaves stay when it is removed: see `Mark`. */
  #setWhole(
    map: 'sheets' | 'columns' | 'rows',
    ids: readonly string[],
    here: (removed: boolean) => Json | undefined,
    to: Json | undefined,
    setField: (key: string, value: Json | undefined, held: Json | undefined) => void,
  ): void {
    if (to === undefined) {
      const view = here(false);
      if (view !== undefined) this.#leaf(map, ids, markOf(view));
      return;
    }
    const held = here(true) ?? {};
    this.#leaf(map, ids, true);
    each(to, held, (key, value) => setField(key, value, isObject(held) ? own(held, key) : undefined));
  }
}

/** Calls `set` for every key of either: with what `to` holds there, or undefined. */
function each(
  to: Json | undefined,
  held: Json | undefined,
  set: (key: string, value: Json | undefined) => void,
): void {
  const [next, before] = [isObject(to) ? to : {}, isObject(held) ? held : {}];
  for (const key of keysOfBoth(next, before)) set(key, own(next, key));
}
