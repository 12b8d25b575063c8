import * as Y from 'yjs';
import { differences } from '../book/differences.js';
import type { BookDoc, Change, Json } from '../book/types.js';
import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { asConflict, type Conflict, clashAt, removalClashes, rowsTouched } from './clashes.js';
import { LeafEdits } from './leaf-edits.js';
import { idsOf, keyOf, LEAF_MAPS, type LeafMap, store, unstore } from './leaves.js';
import { digestOf, entriesOf, sameJson } from './plain.js';
import { changesFrom, type Touched } from './remote.js';
import { Shadow } from './shadow.js';

/**
 * Who made an update: this copy of the book, another one whose update was merged, or a provider that a page
 * has tied to the document.
 */
export type Origin = 'local' | 'remote' | 'provider';

const mend = () => say`Open the last good version, or a copy of the book that you saved as a file.`;

/** Name of the field of a saved file that carries the state; never part of the book itself. */
export const REPLICA_FIELD = 'replica';

/**
 * The author number of a book's first state, taken from its content, so that the same JSON gives the same
 * bytes everywhere. Above 32 bits, where the library never draws one for an author that edits.
 */
const authorOf = (doc: BookDoc): number => Number.parseInt(digestOf(doc as Json, 6), 16) + 2 ** 32;

/**
 * A book mirrored into a replicated data type, leaf by leaf, so that copies edited apart merge by row and
 * cell. Updates may arrive in any order, and twice.
 */
export class BookReplica {
  readonly #doc = new Y.Doc();
  readonly #maps: Readonly<Record<LeafMap, Y.Map<unknown>>>;
  readonly #shadow = new Shadow();
  readonly #edits = new LeafEdits(this.#shadow, (map, ids, value) => this.#leaf(map, ids, value));
  /** What merged updates touched and nobody has been told yet, by the maps' keys. */
  readonly #touched = new Map<string, Omit<Touched, 'value'>>();
  readonly #clashes: Conflict[] = [];
  /** What the author of the update being merged has seen, by author and clock. */
  #known: ReadonlyMap<number, number> | undefined;
  /** Who is at work on the document; nobody of ours: a provider. */
  #working: 'local' | 'remote' | undefined;

  private constructor() {
    this.#maps = Object.fromEntries(LEAF_MAPS.map((name) => [name, this.#doc.getMap(name)])) as Record<
      LeafMap,
      Y.Map<unknown>
    >;
  }

  /**
   * A mirror of `doc`. Without `state`, the same JSON always gives the same first state, so that two of them
   * share their beginning. With the `state` that was saved beside the JSON, the mirror goes on from there, and
   * whatever differs in `doc` (edited by hand, say) is taken as edited here. A state that cannot be read is
   * left aside.
   */
  static fromBook(doc: BookDoc, state?: Uint8Array): BookReplica {
    const { [REPLICA_FIELD]: _, ...rest } = doc;
    const book = rest as BookDoc;
    const begun = state && BookReplica.fromState(state);
    if (begun?.ok) {
      begun.value.apply(differences(begun.value.toBook(), book));
      return begun.value;
    }
    const replica = new BookReplica();
    replica.#watch();
    const editor = replica.#doc.clientID;
    replica.#doc.clientID = authorOf(book);
    replica.apply(
      entriesOf(book as { [key: string]: Json }).map(([key, to]) => ({ path: [key], to, was: undefined })),
    );
    replica.#doc.clientID = editor;
    return replica;
  }

  /** A mirror from saved bytes. Refuses bytes that cannot be read, and state of which a part is missing. */
  static fromState(...updates: readonly Uint8Array[]): Result<BookReplica> {
    const replica = new BookReplica();
    if (!replica.#read(updates))
      return refuse('state-unreadable', say`What was stored of the book cannot be read.`, mend());
    for (const map of LEAF_MAPS)
      for (const [key, stored] of replica.#maps[map].entries())
        replica.#shadow.write(map, idsOf(key), unstore(stored));
    if (replica.incomplete)
      return refuse('state-incomplete', say`A part of what was stored of the book is missing.`, mend());
    replica.#watch();
    return ok(replica);
  }

  /** True while updates were merged that build on others not seen yet. */
  get incomplete(): boolean {
    return this.#doc.store.pendingStructs !== null || this.#doc.store.pendingDs !== null;
  }

  /** Takes over edits already made to the book. A change below something that is not there is let go. */
  apply(changes: readonly Change[], origin: Origin = 'local'): void {
    this.#as('local', () =>
      this.#doc.transact(() => {
        for (const { path, to } of changes) this.#edits.set(path, to);
      }, origin),
    );
  }

  /** The document itself, for providers; what they do to it comes out by `onUpdate` and `taken`. */
  get document(): Y.Doc {
    return this.#doc;
  }

  /** What updates changed that did not come through `merge`, since last asked. */
  taken(): Change[] {
    // Half an update may take effect at once in the library (the value it replaces goes): nobody meant that.
    if (this.incomplete) return [];
    const touched = this.#takeTouched();
    const rows = rowsTouched(touched);
    const before = rows.map(([sheet, row]) => this.#shadow.row(sheet, row) !== undefined);
    const changes = changesFrom(this.#shadow, touched);
    this.#clashes.push(...removalClashes(this.#shadow, rows, before));
    return changes;
  }

  /** Values that updates merged since last asked, and this copy, set each its own way without knowing of the other. */
  conflicts(): Conflict[] {
    return this.#clashes.splice(0);
  }

  /** The whole book as plain JSON, without computed values. Not checked: what was merged may be anything. */
  toBook(): BookDoc {
    return this.#shadow.book() as unknown as BookDoc;
  }

  /** The whole state, for saving or for another copy. */
  encode(): Uint8Array {
    return Y.encodeStateAsUpdate(this.#doc);
  }

  /** What this copy has seen, for `encodeSince`. */
  vector(): Uint8Array {
    return Y.encodeStateVector(this.#doc);
  }

  /** What a copy that has seen `vector` may lack. */
  encodeSince(vector: Uint8Array): Uint8Array {
    return Y.encodeStateAsUpdate(this.#doc, vector);
  }

  /** Whether this copy made or saw additions that one with `vector` has not seen. */
  isAheadOf(vector: Uint8Array): boolean {
    return isAhead(this.vector(), vector);
  }

  /** Whether one with `vector` made or saw additions that this copy has not seen. */
  isBehind(vector: Uint8Array): boolean {
    return isAhead(vector, this.vector());
  }

  /** Whether both grew from one beginning; only then does merging states tell old values from new ones. */
  sharesPastWith(other: BookReplica): boolean {
    const authors = Y.decodeStateVector(other.vector());
    return [...Y.decodeStateVector(this.vector()).keys()].some((author) => authors.has(author));
  }

  get title(): string {
    return String(this.#shadow.read('book', ['title']) ?? '');
  }

  /**
   * Merges another copy's update; gives what that changes here. Bytes that are no update change nothing. An
   * update that builds on one not seen yet changes nothing either until that comes: half of it may take effect
   * at once in the library (the value it replaces goes), which nobody ever meant to see.
   * With origin `local` it counts as an edit made here, for whoever listens to updates. `vector`: what its
   * author has seen, where that is known; it makes out conflicts more surely.
   */
  merge(update: Uint8Array, origin: Origin = 'remote', vector?: Uint8Array): Result<Change[]> {
    const unreadable = () =>
      refuse('state-unreadable', say`Another copy sent an edit that cannot be read.`, say`Reload the page.`);
    // Read through before anything is merged, so that half an update cannot get in.
    if (!isUpdate(update)) return unreadable();
    this.#known = vector && Y.decodeStateVector(vector);
    const read = this.#read([update], origin);
    this.#known = undefined;
    const changes = this.taken();
    return read || changes.length > 0 ? ok(changes) : unreadable();
  }

  /** Calls back with each update, made here or merged; returns what ends that. */
  onUpdate(listener: (update: Uint8Array, origin: Origin) => void): () => void {
    const heard = (update: Uint8Array, origin: unknown) =>
      listener(update, this.#working === undefined ? 'provider' : origin === 'remote' ? 'remote' : 'local');
    this.#doc.on('update', heard);
    return () => this.#doc.off('update', heard);
  }

  /** What tells the book's first state from that of another book; more than one where such were merged. */
  get beginnings(): number[] {
    return [...Y.decodeStateVector(this.vector()).keys()].filter((author) => author >= 2 ** 32);
  }

  #watch(): void {
    for (const map of LEAF_MAPS)
      this.#maps[map].observe((event) => {
        if (this.#working === 'local') return;
        for (const key of event.keysChanged) {
          const ids = idsOf(key);
          this.#touched.set(`${map} ${key}`, { map, ids });
          const clash = clashAt(event, key, this.#known);
          if (clash) this.#clashes.push(...asConflict(map, ids, clash));
        }
      });
  }

  #takeTouched(): Touched[] {
    const touched = [...this.#touched.values()].map(({ map, ids }) => ({
      map,
      ids,
      // As it is now: an edit made here may have come in between.
      value: unstore(this.#maps[map].get(keyOf(...ids))),
    }));
    this.#touched.clear();
    return touched;
  }

  #as<T>(who: 'local' | 'remote', work: () => T): T {
    const before = this.#working;
    this.#working = who;
    try {
      return work();
    } finally {
      this.#working = before;
    }
  }

  #read(updates: readonly Uint8Array[], origin: Origin = 'remote'): boolean {
    try {
      this.#as('remote', () =>
        this.#doc.transact(() => {
          for (const update of updates) Y.applyUpdate(this.#doc, update, origin);
        }, origin),
      );
      return true;
    } catch {
      return false;
    }
  }

  #leaf(map: LeafMap, ids: readonly string[], value: Json | undefined): void {
    const was = this.#shadow.read(map, ids);
    if (sameJson(was, value)) return;
    this.#shadow.write(map, ids, value);
    if (value === undefined) this.#maps[map].delete(keyOf(...ids));
    else this.#maps[map].set(keyOf(...ids), store(value));
  }
}

/** Whether bytes can be read as an update, whatever it builds on. */
export function isUpdate(bytes: Uint8Array): boolean {
  try {
    Y.decodeUpdate(bytes);
    return true;
  } catch {
    return false;
  }
}

/** Whether bytes can be read as what a copy has seen (see `BookReplica.vector`). */
export function isVector(bytes: Uint8Array): boolean {
  try {
    Y.decodeStateVector(bytes);
    return true;
  } catch {
    return false;
  }
}

function isAhead(vector: Uint8Array, of: Uint8Array): boolean {
  const seen = Y.decodeStateVector(of);
  return [...Y.decodeStateVector(vector)].some(([author, clock]) => clock > (seen.get(author) ?? 0));
}

/** One state for all the bytes, in any order; undefined when they cannot be read. */
export function mergedState(updates: readonly Uint8Array[]): Uint8Array | undefined {
  const doc = new Y.Doc();
  try {
    doc.transact(() => {
      for (const update of updates) Y.applyUpdate(doc, update);
    });
    return Y.encodeStateAsUpdate(doc);
  } catch {
    return undefined;
  } finally {
    doc.destroy();
  }
}

/** Several updates as one, without looking at what they hold. */
export const joinedUpdates = (updates: readonly Uint8Array[]): Uint8Array =>
  updates.length === 1 ? updates[0]! : Y.mergeUpdates([...updates]);
