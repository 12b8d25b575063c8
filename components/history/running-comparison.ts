import type { BookDoc } from '../../src/book/index.js';
import { type BookComparison, compareBooks } from '../../src/live/doings/compare-books.js';
import { type LiveBook, openBook } from '../../src/live/live-book.js';
import { giveEngine } from '../book/engine.js';

/** Milliseconds of work between two chances for the page to draw. */
const SLICE = 12;

const pause = (): Promise<void> => new Promise((resume) => setTimeout(resume));

/** Opens a version to be read, with the formula engine where it has formulas of its own. */
async function opened(doc: BookDoc, licenceKey: string): Promise<LiveBook> {
  const live = openBook(doc);
  if (live.needsEngine) await giveEngine(live, licenceKey, () => true);
  return live;
}

export interface ComparisonRun {
  /** From 0 to 1. */
  readonly progress: (done: number) => void;
  readonly stopped: () => boolean;
  readonly engineLicenceKey: string;
}

/**
 * Compares two books in slices, so that the page does not hang; undefined when it was stopped. A book given
 * as a document is opened to be read, and closed again.
 */
export async function runComparison(
  before: BookDoc,
  after: BookDoc | LiveBook,
  { progress, stopped, engineLicenceKey }: ComparisonRun,
): Promise<BookComparison | undefined> {
  await pause();
  const was = await opened(before, engineLicenceKey);
  await pause();
  const isLive = 'apply' in after;
  const is = isLive ? (after as LiveBook) : await opened(after as BookDoc, engineLicenceKey);
  try {
    const slices = compareBooks(was, is);
    let until = performance.now() + SLICE;
    for (;;) {
      const step = slices.next();
      if (step.done) return step.value;
      if (performance.now() < until) continue;
      progress(step.value);
      await pause();
      if (stopped()) return undefined;
      until = performance.now() + SLICE;
    }
  } finally {
    was.close();
    if (!isLive) is.close();
  }
}
