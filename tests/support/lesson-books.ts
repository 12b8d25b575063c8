import { readFileSync } from 'node:fs';
import { type BookDoc, parseBook } from '../../src/book/index.js';
import { type BookNumbers, readNumbers } from '../../src/lessons/book-numbers.js';
import { type LiveBook, openBook } from '../../src/live/live-book.js';

/** A book of the demo, open. */
export function demoBook(name: 'school-garden' | 'tamarack-bench'): LiveBook {
  const read = parseBook(JSON.parse(readFileSync(`demo/data/${name}.json`, 'utf8')));
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return openBook(read.book as BookDoc);
}

export const demoNumbers = (name: 'school-garden' | 'tamarack-bench'): BookNumbers =>
  readNumbers(demoBook(name));
