import type { NamedKind } from '../book/index.js';
import type { PlanBook } from './plan-book.js';
import { askedBy, namedRow, namesFrom } from './taken-name-kinds.js';
import type { KindNames, NamedRow } from './taken-names.js';
import type { ComputedValue } from './typed-rows.js';

interface Kept {
  readonly version: string;
  readonly sheet: string | undefined;
  /** Names of rows as they were last read; undefined where a row has none. */
  readonly rows: Map<string, NamedRow | undefined>;
  readonly names: KindNames;
}

/** What the rows of each kind are called; read again only where rows of the kind were. */
export class NameBook {
  readonly #plan: PlanBook;
  readonly #computed: ComputedValue;
  readonly #kept = new Map<NamedKind, Kept>();
  #renamed = new Set<NamedKind>();
  /** The forms in which texts ask for rows do not hang on the book. */
  readonly #asked = new Map<string, readonly string[]>();

  constructor(plan: PlanBook, computed: ComputedValue) {
    this.#plan = plan;
    this.#computed = computed;
  }

  of(kind: NamedKind): KindNames {
    const isNew = !this.#kept.has(kind);
    if (this.#renew(kind) && !isNew) this.#renamed.add(kind);
    return this.#kept.get(kind)!.names;
  }

  /** Kinds of which some row is called something else than when this was last asked. */
  renamed(): ReadonlySet<NamedKind> {
    for (const kind of this.#kept.keys()) if (this.#renew(kind)) this.#renamed.add(kind);
    const renamed = this.#renamed;
    this.#renamed = new Set();
    return renamed;
  }

  /** True where a name is another now. */
  #renew(kind: NamedKind): boolean {
    const kept = this.#kept.get(kind);
    const sheet = this.#plan.rows.sheet(kind);
    const version = `${this.#plan.rows.version(kind)}/${sheet?.title ?? ''}`;
    if (kept?.version === version) return false;
    const isSame = kept !== undefined && kept.sheet === sheet?.id;
    const rows = isSame ? kept.rows : new Map<string, NamedRow | undefined>();
    const read = isSame ? this.#plan.rows.takeReread(kind) : (sheet?.rows.keys() ?? []);
    if (!isSame) this.#plan.rows.takeReread(kind);
    let other = !isSame || kept.names.title !== (sheet?.title ?? kept.names.title);
    for (const row of read) {
      const now = sheet?.rows.has(row)
        ? namedRow(kind, row, sheet.rows.get(row)!.order, (column) =>
            this.#computed({ sheet: sheet.id, row, column }),
          )
        : undefined;
      if (!other) other = JSON.stringify(rows.get(row)) !== JSON.stringify(now);
      if (now) rows.set(row, now);
      else rows.delete(row);
    }
    const names = other || !kept ? this.#make(kind, rows) : kept.names;
    this.#kept.set(kind, { version, sheet: sheet?.id, rows, names });
    return other;
  }

  #make(kind: NamedKind, rows: ReadonlyMap<string, NamedRow | undefined>): KindNames {
    const sheet = this.#plan.rows.sheet(kind);
    const inOrder = (sheet?.rowOrder.ids ?? []).flatMap((row) => rows.get(row) ?? []);
    return namesFrom(kind, sheet?.title, inOrder, (text) => this.#forms(kind, text));
  }

  #forms(kind: NamedKind, text: string): readonly string[] {
    const key = `${kind}/${text}`;
    let forms = this.#asked.get(key);
    if (!forms) {
      forms = askedBy(kind, text);
      if (this.#asked.size > 50_000) this.#asked.clear();
      this.#asked.set(key, forms);
    }
    return forms;
  }
}
