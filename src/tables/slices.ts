/** How far a longer piece of work has come: from 0 to 1. */
export type Progress = (share: number) => void;

export interface SliceOptions {
  /** Stops the work: what it answers is then null. */
  readonly signal?: AbortSignal | undefined;
  readonly onProgress?: Progress | undefined;
}

/** Milliseconds of work between two breaths of the page. */
const SLICE = 24;

export const breathe = (): Promise<void> => new Promise((done) => setTimeout(done, 0));

/**
 * Does work that says after each small part how far it has come (0 to 1), and lets the page draw and answer in
 * between. Answers null where it was stopped.
 */
export async function inSlices<T>(
  work: Generator<number, T, void>,
  { signal, onProgress }: SliceOptions = {},
): Promise<T | null> {
  let began = performance.now();
  for (;;) {
    if (signal?.aborted) return null;
    const step = work.next();
    if (step.done) return step.value;
    if (performance.now() - began < SLICE) continue;
    onProgress?.(step.value);
    await breathe();
    began = performance.now();
  }
}

/** The same without breaks, for small tables and for Node. */
export function atOnce<T>(work: Generator<number, T, void>): T {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}
