import type { Engine } from './engine.js';

/** Why a test is not run in an engine. */
export interface Lack {
  readonly engine: Engine;
  /** The file of tests, without its folder and ending. */
  readonly file: string;
  /** The test by its full name (its groups first, joined by ` > `); a group alone stands for all within. */
  readonly test: string;
  readonly reason: string;
}

/** What is skipped, by name and with its reason. A name that no test has fails `npm run test:engines`. */
export const LACKING: readonly Lack[] = [];

/** Why this test is not run in this engine; undefined where it is. */
export const lackOf = (engine: Engine, file: string, test: string): string | undefined =>
  LACKING.find(
    (each) =>
      each.engine === engine &&
      each.file === file &&
      (each.test === '' || each.test === test || test.startsWith(`${each.test} > `)),
  )?.reason;
