import type { Doc } from 'yjs';
import { type BookDoc, type Outcome, parseBook } from '../../src/book/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { ok, type Result } from '../../src/problem.js';
import type {
  BookCopy,
  BookEntry,
  BookVersions,
  Conflict,
  Decision,
  KeptBook,
  MergePlan,
} from '../../src/storage/index.js';
import { phrase, say } from '../../src/words/index.js';
import type { CopyFile } from './copies.js';
import { booksKept, loadStorage } from './keeping.js';

/** Name under which the book is kept before a copy is merged into it; told in the language spoken where it is shown. */
export const BEFORE_MERGING = phrase('before merging');

/** Earlier versions of the open book, and other copies of it: what the dialogs for both work with. */
export class BookPast {
  readonly #live: LiveBook;
  readonly #kept: KeptBook | null;
  readonly #database: string | undefined;
  readonly #changed: () => void;
  /** The book as it was opened, where it is not kept. */
  readonly #opened: BookDoc | null;
  #versions: Promise<BookVersions> | null = null;
  #conflicts: KeptBook['conflicts'] | null;

  constructor(
    live: LiveBook,
    kept: KeptBook | null,
    database: string | undefined,
    changed: () => void,
    opened: BookDoc,
  ) {
    this.#live = live;
    this.#kept = kept;
    this.#database = database;
    this.#changed = changed;
    this.#opened = kept ? null : opened;
    this.#conflicts = kept?.conflicts ?? null;
    this.#conflicts?.onChange(changed);
  }

  /** Kept ones, or, for a book that is not kept, those of this page's life. */
  versions(): Promise<BookVersions> {
    this.#versions ??= this.#kept
      ? Promise.resolve(this.#kept.earlier)
      : loadStorage().then(({ PageVersions }) => {
          let first = this.#opened;
          return new PageVersions(() => {
            const book = first ?? this.#live.toJSON();
            first = null;
            return book;
          });
        });
    return this.#versions;
  }

  /** What two copies set each its own way, and nobody has decided or let go yet. */
  get conflicts(): readonly Conflict[] {
    return this.#conflicts?.open ?? [];
  }

  /** How another copy would merge; changes nothing. */
  async planMerge(copy: BookCopy): Promise<Result<MergePlan>> {
    if (this.#kept) return this.#kept.planMerge(copy);
    const { BookReplica, planMerge } = await loadStorage();
    return planMerge(BookReplica.fromBook(this.#live.toJSON()), copy, parseBook);
  }

  /**
   * Merges a copy in one step that can be taken back. What is in conflict and was not decided stays as it is
   * here, and stays on the list of conflicts. The book as it was is kept as a version first.
   */
  async merge(copy: BookCopy, decisions: ReadonlyMap<string, Decision>): Promise<Result<Outcome>> {
    const { conflictKey, ConflictList, mergeCommand } = await loadStorage();
    // Planned anew: another tab may have edited while the person was looking.
    const plan = await this.planMerge(copy);
    if (!plan.ok) return plan;
    await (await this.versions()).keepNow(BEFORE_MERGING);
    let outcome: Outcome | undefined;
    const work = (): boolean => {
      outcome = this.#live.apply(mergeCommand(plan.value, decisions));
      return outcome.ok;
    };
    if (this.#kept) this.#kept.merging(plan.value, work);
    else work();
    if (outcome!.ok) {
      if (!this.#conflicts) {
        this.#conflicts = new ConflictList();
        this.#conflicts.onChange(this.#changed);
      }
      this.#conflicts.add(plan.value.conflicts.filter((each) => !decisions.has(conflictKey(each))));
    }
    return ok(outcome!);
  }

  /** Writes what was decided about a conflict, as a step that can be taken back, and takes it off the list. */
  async decide(conflict: Conflict, decision: Decision): Promise<Outcome> {
    const { decided } = await loadStorage();
    const edits = [decided(conflict, decision)];
    const outcome = this.#live.apply({ do: 'take over', called: say`decision between two copies`, edits });
    if (outcome.ok) this.letGo(conflict);
    return outcome;
  }

  /** Takes a conflict off the list; what stands in the book stays. */
  letGo(conflict: Conflict): void {
    this.#conflicts?.close(conflict);
  }

  /** A file of the book that can be edited elsewhere and merged again without guessing. */
  async forMerging(): Promise<CopyFile> {
    const { BookReplica, copyName, saveForMerging } = await loadStorage();
    const book = this.#live.toJSON();
    const state = this.#kept?.state() ?? BookReplica.fromBook(book).encode();
    const name = copyName(book.title, new Date()).replace(/\.croft\.json$/, '-for-merging.croft.json');
    return { name, blob: await saveForMerging(book, state) };
  }

  /** Reads a file with a copy of a book, and the state in it. */
  async readFile(file: Blob): Promise<Result<BookCopy>> {
    const { openACopy } = await loadStorage();
    const read = await openACopy(file, parseBook);
    return read.ok ? ok(read.copy) : { ok: false, problem: read.problems[0]! };
  }

  /** Other books kept in this browser. */
  async others(key: string | null): Promise<readonly BookEntry[]> {
    if (!this.#kept) return [];
    const books = await booksKept(this.#database);
    return books.filter(({ id }) => id !== key);
  }

  /** Another kept book, as a copy to be merged. */
  async readKept(id: string): Promise<Result<BookCopy>> {
    const { readKeptCopy } = await loadStorage();
    return readKeptCopy(this.#database, id, parseBook);
  }

  /** Saves now what could not be saved; true when all is kept. */
  async tryAgain(): Promise<boolean> {
    return (await this.#kept?.flush()) ?? false;
  }

  /** The replicated document behind the book; null where the book is not kept. */
  document(): Doc | null {
    return this.#kept?.document ?? null;
  }
}
