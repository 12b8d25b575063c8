import { isWellFormed } from '../book/stored-edit.js';
import type { BookDoc, Change } from '../book/types.js';
import { ok, type Problem, type Result } from '../problem.js';
import { ConflictList } from './conflict-list.js';
import { CopyMerging, type MergedCopy } from './copy-merging.js';
import type { Keep } from './keep.js';
import { STORAGE_CLEARED, storageProblem } from './keep-problems.js';
import type { EditableBook, KeptBookOptions } from './kept-book-options.js';
import type { MergePlan } from './merge-plan.js';
import type { BookCopy } from './merging.js';
import { type OpenedBook, openAnyhow, takeOverParsed } from './opening.js';
import { askToPersist, watchPage } from './page.js';
import type { BookReplica } from './replica.js';
import { SavingQueue } from './saving-queue.js';
import { type KeepStatus, keepStatus } from './status.js';
import { TabExchange } from './tab-exchange.js';
import { joinTabs, type TabMessage, type Tabs } from './tabs.js';
import { Upkeep } from './upkeep.js';
import { type BookVersions, KeptVersions, PageVersions } from './versions.js';

const asCopy = (started: BookDoc | BookCopy): BookCopy =>
  'doc' in started ? (started as BookCopy) : { doc: started };

/** A book, the storage that keeps it, and the other tabs that show it. */
export class KeptBook {
  /** The book as opened: make the `EditableBook` from this, then `attach` it. */
  readonly doc: BookDoc;
  /** What the person must be told about how it was opened. */
  readonly notice: Problem | undefined;
  readonly #id: string;
  readonly #options: KeptBookOptions;
  readonly #keep: Keep | undefined;
  readonly #replica: BookReplica;
  readonly #queue: SavingQueue | undefined;
  readonly #upkeep: Upkeep | undefined;
  readonly #listeners = new Set<(status: KeepStatus) => void>();
  readonly #ends: (() => void)[] = [];
  /** Values that copies set each its own way. */
  readonly conflicts = new ConflictList();
  /** Earlier versions of the book; in memory where nothing can be kept. */
  readonly earlier: BookVersions;
  readonly #merging: CopyMerging;
  readonly #tabs: TabExchange;
  #book: EditableBook | undefined;
  /** Merged before a book was attached. */
  #early: Change[] = [];
  #status: KeepStatus;
  #upTo: number;
  #cleared = false;

  private constructor(
    options: KeptBookOptions,
    opened: OpenedBook,
    keep: Keep | undefined,
    status: KeepStatus,
    tabs: Tabs,
  ) {
    this.#options = options;
    this.#id = options.id;
    this.doc = opened.doc;
    this.notice = opened.notice;
    this.#replica = opened.replica;
    this.#upTo = opened.upTo;
    this.#keep = keep;
    this.#status = status;
    if (options.onStatus) this.#listeners.add(options.onStatus);
    this.#merging = new CopyMerging(opened.replica, options.parseBook);
    this.#tabs = new TabExchange(tabs, opened.replica, {
      stores: keep !== undefined,
      unsaved: () => (this.#queue?.unsaved.length ?? 0) > 0,
      deliver: (changes) => this.#deliver(changes),
      store: (update) => this.#queue?.add(update),
    });
    const [book, now] = [() => opened.replica.toBook(), options.now ?? Date.now];
    this.earlier = keep
      ? new KeptVersions(keep, options.id, options.parseBook, book, now)
      : new PageVersions(book, now);
    if (keep) {
      this.#upkeep = new Upkeep(keep, options, opened.replica);
      this.#queue = new SavingQueue({
        write: (update) => this.#write(keep, update),
        saving: () => this.#say(keepStatus('saving')),
        saved: () => this.#saved(),
        failed: (error) => this.#say(keepStatus('could not save', storageProblem(error))),
        retryAfter: options.retryAfter ?? ((failures) => Math.min(30_000, 500 * 2 ** failures)),
      });
    }
  }

  /**
   * Opens the book that is kept under the id, or starts one. Where nothing can be kept the book opens all the
   * same, and the status says so. Refuses only a book that a newer version wrote.
   */
  static async open(options: KeptBookOptions): Promise<Result<KeptBook>> {
    const { id, parseBook, now = Date.now } = options;
    options.onStatus?.(keepStatus('opening'));
    let started: Promise<BookCopy> | undefined;
    const start = () => {
      started ??= Promise.resolve(options.start()).then(asCopy);
      return started;
    };
    // Before the storage is read: an edit that another tab makes meanwhile must not fall in between.
    const early: TabMessage[] = [];
    let hear = (message: TabMessage): void => void early.push(message);
    const tabs = joinTabs(options.database ?? 'croftsheet', id, (message) => hear(message));
    const opening = await openAnyhow(options.database, id, parseBook, start, now);
    if (!opening.ok) {
      tabs.close();
      return opening;
    }
    const { opened, keep, status, unsaved } = opening.value;
    const kept = new KeptBook(options, opened, keep, status, tabs);
    kept.#begin(unsaved);
    hear = (message) => kept.#tabs.hear(message);
    early.forEach(hear);
    return ok(kept);
  }

  get status(): KeepStatus {
    return this.#status;
  }

  /** Calls back with every later status; returns what ends that. */
  onStatus(listener: (status: KeepStatus) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Keeps the edits of `book`, which was made from `doc`, and shows it those made in other tabs. */
  attach(book: EditableBook): void {
    this.#book = book;
    const end = book.on('change', ({ changes, origin }) => {
      if (origin === 'remote') return;
      this.#merging.mergeWaiting();
      this.#replica.apply(changes);
    });
    if (typeof end === 'function') this.#ends.push(() => end());
    this.#deliver(this.#early.splice(0));
  }

  /** Saves now; true when every edit so far is kept. */
  flush(): Promise<boolean> {
    return this.#queue?.flush() ?? Promise.resolve(false);
  }

  /** The whole state, to put into a copy that is saved for merging. */
  state(): Uint8Array {
    return this.#replica.encode();
  }

  /** How a copy that was edited elsewhere would merge, row by row and cell by cell; changes nothing. */
  planMerge(copy: BookCopy): Result<MergePlan> {
    return this.#merging.plan(copy);
  }

  /**
   * Merges the other copy's state together with what `work` edits (the plan's edits, as one command); `work`
   * answers whether they were made. What is kept afterwards is what the book shows.
   */
  merging(plan: MergePlan, work: () => boolean): boolean {
    return this.#merging.during(plan, work, () => this.#book?.toJSON?.());
  }

  /** Merges a copy as another copy's edits: shown, kept, and not this page's to undo. A version is kept first. */
  async mergeCopy(copy: BookCopy): Promise<Result<MergedCopy>> {
    await this.#upkeep?.keepVersion();
    const merged = this.#merging.take(copy);
    if (merged.ok) this.#deliver(merged.value.changes);
    return merged;
  }

  /**
   * The replicated document behind the book, for a provider that a page ties to it: what the provider writes
   * is shown and stored here like another tab's edits. Nothing is sent anywhere unless the page ties one.
   */
  get document(): BookReplica['document'] {
    return this.#replica.document;
  }

  /** Nobody has checked what a provider brings: what no book may hold is written back to what it was. */
  #takeFromProvider(): void {
    const taken = this.#replica.taken();
    const bad = taken.filter((change) => !isWellFormed(change));
    this.#deliver(bad.length === 0 ? taken : taken.filter((change) => !bad.includes(change)));
    if (bad.length > 0)
      queueMicrotask(() => this.#replica.apply(bad.map(({ path, was }) => ({ path, to: was, was }))));
  }

  /** Saves what waits, and ends. */
  async close(): Promise<void> {
    await this.flush();
    this.#queue?.stop();
    for (const end of this.#ends.splice(0)) end();
    this.#tabs.close();
    await this.#keep?.close();
  }

  #begin(unsaved: boolean): void {
    this.#ends.push(
      this.#replica.onUpdate((update, origin) => {
        if (origin === 'remote') return;
        if (origin === 'provider') this.#takeFromProvider();
        if (this.#queue) this.#queue.add(update);
        else this.#tabs.tell(update, false);
      }),
      watchPage(
        () => void this.flush().then(() => this.#upkeep?.putAway()),
        () => void this.#catchUp(),
      ),
    );
    takeOverParsed({ doc: this.doc, replica: this.#replica, upTo: this.#upTo });
    if (unsaved) this.#queue?.add(this.#replica.encode());
    this.#say(this.#status);
    this.#tabs.ask();
    if (!unsaved) void this.#upkeep?.keepVersion();
  }

  #say(status: KeepStatus): void {
    this.#status = status;
    for (const listener of this.#listeners) listener(status);
  }

  #deliver(changes: readonly Change[]): void {
    this.conflicts.add(this.#replica.conflicts());
    if (changes.length === 0) return;
    if (this.#book) this.#book.applyRemote(changes);
    else this.#early.push(...changes);
  }

  get #label() {
    return { title: this.#replica.title, at: (this.#options.now ?? Date.now)() };
  }

  async #write(keep: Keep, update: Uint8Array): Promise<void> {
    try {
      while (!(await keep.append(this.#id, update, this.#label))) {
        // The storage was cleared under us: what is on the page is kept again, whole.
        this.#cleared = true;
        await keep.create(this.#id, this.#replica.encode(), this.#label);
      }
      this.#tabs.tell(update, true);
    } catch (error) {
      this.#tabs.tell(update, false);
      throw error;
    }
  }

  #saved(): void {
    this.#say(keepStatus('saved', this.#cleared ? STORAGE_CLEARED : undefined));
    this.#cleared = false;
    void askToPersist();
    void this.#upkeep?.afterSaving();
  }

  /** What other tabs kept while this page slept. */
  async #catchUp(): Promise<void> {
    this.#tabs.ask();
    try {
      const since = await this.#keep?.loadSince(this.#id, this.#upTo);
      if (!since) return;
      for (const update of since.updates) {
        const merged = this.#replica.merge(update);
        if (merged.ok) this.#deliver(merged.value);
      }
      this.#upTo = since.upTo;
    } catch {
      // The next save will say what is wrong with the storage.
    }
  }
}
