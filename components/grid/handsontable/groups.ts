import type { RowGroup } from '../../../src/live/groups.js';
import { say } from '../../../src/words/index.js';
import type { SheetBinding } from './binding.js';
import { bookRow } from './places.js';
import type { Hot } from './registry.js';
import type { Views } from './views.js';

/** Height of the band at a group's beginning, in pixels. */
export const BAND = 28;

/** Row id under which bands stand that no row follows: the blank line. */
const AT_END = '';

/** The beginning of a group of rows, as it is shown above its first row. */
export interface Band {
  readonly key: string;
  readonly group: RowGroup;
  /** Its rows are not shown. */
  readonly folded: boolean;
}

/** For screen readers, at the row above which the band stands. */
export const bandInWords = ({ group, folded }: Band): string =>
  folded
    ? say`Folded group ${group.label}, ${rowsInWords(group)}.`
    : say`Group ${group.label}, ${rowsInWords(group)}.`;

export const rowsInWords = ({ count }: RowGroup): string => (count === 1 ? say`1 row` : say`${count} rows`);

const keyOf = ({ label }: RowGroup): string => label.toLowerCase();

/**
 * Rows in groups by a column's values: a view. The book keeps its order; which groups are folded is known to
 * this grid only.
 */
export class Groups {
  readonly #folded = new Set<string>();
  #bands = new Map<string, readonly Band[]>();
  #by: string | undefined;
  #busy = false;

  constructor(
    readonly hot: Hot,
    readonly binding: SheetBinding,
    readonly views: Views,
  ) {
    hot.addHook('beforeColumnSort', () => this.#show([]));
    hot.addHook('afterColumnSort', () => this.apply());
    hot.addHook('afterFilter', () => this.apply());
  }

  get by(): string | undefined {
    return this.#by;
  }

  /** Another column makes the groups now, or none does. */
  get isStale(): boolean {
    return this.#wanted !== this.#by;
  }

  /** Bands above a line as seen. */
  above(row: number): readonly Band[] {
    if (this.#by === undefined) return [];
    const line = this.binding.lines[bookRow(this.hot, row)];
    return (line && this.#bands.get(line.id ?? AT_END)) ?? [];
  }

  /** The group that a row of the book stands in. */
  groupOfRow(row: string): Band | undefined {
    for (const bands of this.#bands.values()) {
      const found = bands.find(({ group }) => group.rows.includes(row));
      if (found) return found;
    }
    return undefined;
  }

  get all(): readonly Band[] {
    return [...this.#bands.values()].flat();
  }

  /** Hides a group's rows, or shows them again. */
  fold(key: string, folded: boolean): void {
    if (folded) this.#folded.add(key);
    else this.#folded.delete(key);
    this.apply();
    this.hot.render();
  }

  foldAll(folded: boolean): void {
    this.#folded.clear();
    if (folded) for (const { key } of this.all) this.#folded.add(key);
    this.apply();
    this.hot.render();
  }

  /** Opens the group of a row that is to be seen. Answers whether it was folded. */
  reveal(row: string): boolean {
    const band = this.groupOfRow(row);
    if (!band?.folded) return false;
    this.fold(band.key, false);
    return true;
  }

  /** Puts the rows in their groups as they are now, keeping their order within each. */
  apply(): void {
    if (this.#busy) return;
    const wanted = this.#wanted;
    if (wanted === undefined && this.#by === undefined) return;
    this.#busy = true;
    const ended = wanted === undefined;
    if (wanted !== this.#by) this.#folded.clear();
    this.#watchHeights(!ended);
    this.#by = wanted;
    this.hot.batch(() => (ended ? this.#end() : this.#arrange()));
    this.#busy = false;
  }

  get #wanted(): string | undefined {
    return this.binding.live.groupOf(this.binding.sheet);
  }

  #end(): void {
    this.#bands = new Map();
    this.#show([]);
    const { sort } = this.views.look;
    this.views.sort(sort?.column ?? '', sort ? sort.ascending : null);
  }

  #arrange(): void {
    const { hot, binding, views } = this;
    const { live, sheet, lines, rowCount } = binding;
    const ids = (indexes: readonly number[]): string[] => indexes.flatMap((index) => lines[index]?.id ?? []);
    const order = views.look.sort
      ? ids(hot.rowIndexMapper.getIndexesSequence())
      : ids(lines.map((_, index) => index));
    const every = live.groupsOf(sheet, order) ?? [];
    hot.rowIndexMapper.setIndexesSequence([
      ...every.flatMap(({ rows }) => rows.map((row) => binding.indexOfRow(row))),
      rowCount,
    ]);
    const shown = order.filter((row) => !views.isFilteredOut(row));
    const bands = new Map<string, readonly Band[]>();
    const hidden: string[] = [];
    let waiting: Band[] = [];
    for (const group of live.groupsOf(sheet, shown) ?? []) {
      const key = keyOf(group);
      const folded = this.#folded.has(key);
      waiting.push({ key, group, folded });
      if (folded) hidden.push(...group.rows);
      else {
        bands.set(group.rows[0]!, waiting);
        waiting = [];
      }
    }
    if (waiting.length > 0) bands.set(AT_END, waiting);
    this.#bands = bands;
    this.#show(hidden);
  }

  /** Hides just these rows. */
  #show(hidden: readonly string[]): void {
    const mapper = this.hot.rowIndexMapper;
    const name = 'croftFolded';
    const before = mapper.trimmingMapsCollection.get(name);
    if (!before && hidden.length === 0) return;
    const map = before ?? mapper.createAndRegisterIndexMap(name, 'trimming');
    const out = new Set(hidden);
    (map as unknown as { setValues(values: boolean[]): void }).setValues(
      this.binding.lines.map(({ id }) => id !== null && out.has(id)),
    );
  }

  readonly #height = (height: number | undefined, row: number): number | undefined => {
    const bands = this.above(row).length;
    const usual = height ?? this.hot.stylesHandler.getDefaultRowHeight(row);
    return bands === 0 || usual === null || usual === undefined ? height : usual + bands * BAND;
  };
  #watching = false;

  /** Only while rows are in groups: rows of one height are drawn quicker. */
  #watchHeights(watch: boolean): void {
    if (watch === this.#watching) return;
    this.#watching = watch;
    if (watch) this.hot.addHook('modifyRowHeight', this.#height as never);
    else this.hot.removeHook('modifyRowHeight', this.#height as never);
  }
}
