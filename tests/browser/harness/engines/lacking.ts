import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { TestContext } from 'vitest';
import { ENGINE, type Engine } from './engine.js';

/** Why a test is not run in an engine: a line of `lacking.json`. */
export interface Lack {
  readonly engine: Engine;
  /** The file of tests, without its folder and ending. */
  readonly file: string;
  /** The test by its full name, its groups first, joined by ` > `; a group stands for all within, blank for all. */
  readonly test: string;
  readonly reason: string;
}

const LACKING = JSON.parse(readFileSync(new URL('./lacking.json', import.meta.url), 'utf8')) as Lack[];

const now: { test: TestContext | null } = { test: null };

/** Skips a test that this engine lacks something for, and says what. To be called before each test. */
export function skipLacking(test: TestContext): void {
  now.test = test;
  const names: string[] = [];
  for (let at: { name: string; suite?: unknown } | undefined = test.task; at; ) {
    names.unshift(at.name);
    at = at.suite as typeof at;
  }
  const file = basename(test.task.file.name, '.test.ts');
  const full = names.join(' > ');
  const lack = LACKING.find(
    (each) =>
      each.engine === ENGINE &&
      each.file === file &&
      (each.test === '' || each.test === full || full.startsWith(`${each.test} > `)),
  );
  if (lack) test.skip(lack.reason);
}

/**
 * Ends the test that runs as skipped, where it asks for something that cannot be done through WebDriver. Nothing is
 * skipped that could be tried: this is called by what would have to do it.
 */
export function skipForWantOf(what: string): never {
  const reason = `WebDriver cannot do this in ${ENGINE === 'firefox' ? 'Firefox' : 'WebKitGTK'}: ${what}`;
  now.test?.skip(reason);
  throw new Error(reason);
}
