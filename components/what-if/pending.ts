import type { Raw } from '../../src/book/index.js';
import type { Varied } from '../../src/live/what-if.js';

export interface Wanted {
  readonly varied: Varied;
  /** Undefined: as the book has it. */
  readonly value: Raw | null | undefined;
}

/** Work that takes longer than this (milliseconds) would make a slider stick if it were done at every frame. */
const QUICK = 24;
/** After work that takes longer, rests of this many times as long leave the hand free. */
const REST = 1.5;

/**
 * Values as a hand moves them: only the last of each counts, and they are worked out once a frame. Where that
 * takes long, the slider goes on moving and the figures follow at intervals.
 */
export class Pending {
  readonly #run: (values: readonly Wanted[]) => void;
  readonly #wanted = new Map<string, Wanted>();
  #frame = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #took = 0;
  #ended = 0;

  constructor(run: (values: readonly Wanted[]) => void) {
    this.#run = run;
  }

  at(key: string): Wanted | undefined {
    return this.#wanted.get(key);
  }

  add(wanted: Wanted): void {
    this.#wanted.set(wanted.varied.key, wanted);
    if (this.#frame !== 0 || this.#timer !== undefined) return;
    const rest = this.#took <= QUICK ? 0 : this.#ended + this.#took * REST - performance.now();
    if (rest <= 0) this.#atNextFrame();
    else
      this.#timer = setTimeout(() => {
        this.#timer = undefined;
        this.#atNextFrame();
      }, rest);
  }

  clear(): void {
    cancelAnimationFrame(this.#frame);
    clearTimeout(this.#timer);
    this.#frame = 0;
    this.#timer = undefined;
    this.#wanted.clear();
  }

  /** Works out at once what waits. */
  flush(): void {
    if (this.#wanted.size === 0) return;
    const values = [...this.#wanted.values()];
    this.clear();
    const began = performance.now();
    this.#run(values);
    this.#ended = performance.now();
    this.#took = this.#ended - began;
  }

  #atNextFrame(): void {
    this.#frame = requestAnimationFrame(() => {
      this.#frame = 0;
      this.flush();
    });
  }
}
