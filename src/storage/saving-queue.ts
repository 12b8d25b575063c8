import { joinedUpdates } from './replica.js';

export interface SavingQueueOptions {
  /** Resolves when the update is durably kept; rejects with the reason otherwise. */
  readonly write: (update: Uint8Array) => Promise<void>;
  readonly saving: () => void;
  /** Everything added so far is kept. */
  readonly saved: () => void;
  readonly failed: (error: unknown) => void;
  /** Milliseconds before the next attempt, by the number of attempts that failed in a row (from 1). */
  readonly retryAfter: (failures: number) => number;
}

/** Writes updates one batch after another: all of a microtask together, and what comes meanwhile next. */
export class SavingQueue {
  readonly #options: SavingQueueOptions;
  #waiting: Uint8Array[] = [];
  #running: Promise<void> | undefined;
  #failures = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #stopped = false;

  constructor(options: SavingQueueOptions) {
    this.#options = options;
  }

  /** Updates not yet durably kept, those being written among them. */
  get unsaved(): readonly Uint8Array[] {
    return this.#waiting;
  }

  add(update: Uint8Array): void {
    this.#waiting.push(update);
    // After a failure it stays 'could not save' until the timer, or `flush`, has tried again.
    if (this.#timer !== undefined) return;
    this.#options.saving();
    queueMicrotask(() => void this.#start());
  }

  /** Tries now; true when everything added so far is kept. */
  async flush(): Promise<boolean> {
    // What is running may be about to fail: then this is one more attempt, not that one.
    await this.#running;
    await this.#start();
    return this.#waiting.length === 0;
  }

  #start(): Promise<void> | undefined {
    // Before the timer is touched: a run that has just failed has set it.
    if (this.#running) return this.#running;
    clearTimeout(this.#timer);
    this.#timer = undefined;
    if (this.#waiting.length > 0 && !this.#stopped) this.#running = this.#run();
    return this.#running;
  }

  /** No further attempts; what is being written is still written. */
  stop(): void {
    this.#stopped = true;
    clearTimeout(this.#timer);
  }

  async #run(): Promise<void> {
    let kept = true;
    while (kept && this.#waiting.length > 0) {
      kept = await this.#writeBatch();
      if (kept && this.#waiting.length === 0) this.#options.saved();
      if (this.#stopped) break;
    }
    // In the same breath as the last look at what waits, so that nothing added later is overlooked.
    this.#running = undefined;
  }

  async #writeBatch(): Promise<boolean> {
    const count = this.#waiting.length;
    try {
      await this.#options.write(joinedUpdates(this.#waiting.slice(0, count)));
      // Only now: until it is kept, an update must not leave the list of what is unsaved.
      this.#waiting.splice(0, count);
      this.#failures = 0;
      return true;
    } catch (error) {
      this.#failures++;
      if (!this.#stopped) this.#tryLater();
      this.#options.failed(error);
      return false;
    }
  }

  #tryLater(): void {
    this.#timer = setTimeout(() => void this.#start(), this.#options.retryAfter(this.#failures));
    // In Node an unsaved book must not keep the process alive for ever.
    if (typeof this.#timer === 'object') (this.#timer as { unref?: () => void }).unref?.();
  }
}
