import { readFileSync } from 'node:fs';
import { afterAll, expect, test, vi } from 'vitest';
import { parseBook } from '../../src/book/index.js';
import { parseLesson } from '../../src/lessons/index.js';
import { readMetadata } from '../../src/tables/csvw-read.js';

/** As on a page whose policy refuses; stands there before anything above is loaded. */
const { tried, native } = vi.hoisted(() => {
  const native = globalThis.Function;
  const tried: unknown[] = [];
  Object.assign(globalThis, { document: {} });
  globalThis.Function = new Proxy(native, {
    construct: (_target, texts) => {
      tried.push(texts);
      throw new EvalError('refused');
    },
  });
  return { tried, native };
});

afterAll(() => {
  globalThis.Function = native;
  Reflect.deleteProperty(globalThis, 'document');
});

// The policy reports each try, also one that is caught.
test('reading files makes no code out of text, nor tries to', () => {
  expect(parseBook(readFileSync('demo/data/school-garden.json', 'utf8')).ok).toBe(true);
  expect(parseLesson(readFileSync('demo/data/lessons/bed-and-row.json', 'utf8')).ok).toBe(true);
  readMetadata('{}', 'shelf.csv');
  expect(tried).toEqual([]);
});
