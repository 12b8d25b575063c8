import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { bigBook } from '../support/big-book.js';
import { sampled } from './happenings.js';
import { type Count, Table } from './table.js';

export interface FullSizeFigures extends Count {
  readonly book: string;
  readonly rows: number;
  readonly seconds: number;
  readonly failures: readonly string[];
}

/** Building a book of this size anew takes as long as hundreds of edits, so it is done this often. */
const EVERY = 500;

const demo = (): string =>
  readFileSync(resolve(import.meta.dirname, '../../demo/data/tamarack-bench.json'), 'utf8');

const BOOKS: Readonly<Record<string, () => string>> = {
  'Tamarack Bench, as in the demo': demo,
  '1,000 lots and 3,000 draws': () => JSON.stringify(bigBook(1000, 3000)),
};

/** Random happenings to books of full size, everything else checked after each, the rebuild after every 500th. */
export function* soakFullSize(options: {
  readonly operations: number;
  readonly seed: number;
  /** Called after every operation. */
  readonly said?: (figures: object) => void;
}): Generator<FullSizeFigures> {
  for (const [book, read] of Object.entries(BOOKS)) {
    const from = performance.now();
    const text = read();
    const { sheets } = JSON.parse(text) as { sheets: Record<string, { rows: object }> };
    const rows = Object.values(sheets).reduce((sum, sheet) => sum + Object.keys(sheet.rows).length, 0);
    const count: Count = { operations: 0, cells: 0 };
    const failures: string[] = [];
    const table = new Table(text, count, { every: EVERY, mostRows: 20_000 });
    const happenings = sampled(options.seed, options.operations);
    try {
      for (const happening of happenings) {
        table.happen(happening);
        options.said?.({ book, ...count });
      }
      table.settle();
      table.compareAll();
    } catch (error) {
      const at = JSON.stringify(happenings[count.operations]);
      failures.push(`${book}, seed ${options.seed}, operation ${count.operations}: ${at}\n${String(error)}`);
    } finally {
      table.close();
    }
    const seconds = Math.round((performance.now() - from) / 1000);
    yield { book, rows, ...count, seconds, failures };
  }
}
