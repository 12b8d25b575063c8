import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { differences } from '../../src/book/differences.js';
import { canonical } from '../../src/storage/plain.js';
import { BookReplica } from '../../src/storage/replica.js';
import { anyBook, anyEdit, changed } from './storage-books.js';

const text = (book: unknown) => canonical(book as never);
const opened = (state: Uint8Array): BookReplica => {
  const result = BookReplica.fromState(state);
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
};

describe('a mirrored book', () => {
  it('gives back the book it was made from, unknown fields and odd ids too', () => {
    fc.assert(
      fc.property(anyBook, (book) => {
        const replica = BookReplica.fromBook(book);
        expect(text(replica.toBook())).toBe(text(book));
        expect(text(opened(replica.encode()).toBook())).toBe(text(book));
      }),
    );
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  it('begins the same wherever it is made from the same JSON', () => {
    fc.assert(
      fc.property(anyBook, (book) => {
        const shuffled = Object.fromEntries(Object.entries(book).reverse()) as unknown as typeof book;
        expect(BookReplica.fromBook(shuffled).encode()).toEqual(BookReplica.fromBook(book).encode());
      }),
    );
  });

  it('is what was saved after any edits', () => {
    fc.assert(
      fc.property(anyBook, fc.array(anyEdit), (book, edits) => {
        const replica = BookReplica.fromBook(book);
        replica.apply(edits);
        expect(text(opened(replica.encode()).toBook())).toBe(text(replica.toBook()));
      }),
    );
  });

  it('takes over the differences of any two books', () => {
    fc.assert(
      fc.property(anyBook, anyBook, (before, after) => {
        const replica = BookReplica.fromBook(before);
        replica.apply(differences(before, after));
        expect(text(replica.toBook())).toBe(text(after));
        expect(text(changed(before, differences(before, after)))).toBe(text(after));
      }),
    );
  });

  it('converges with a copy edited apart, however their updates mix', () => {
    const step = fc.record({
      who: fc.boolean(),
      edits: fc.array(anyEdit, { maxLength: 3 }),
      deliver: fc.nat({ max: 3 }),
    });
    fc.assert(
      fc.property(anyBook, fc.array(step, { maxLength: 12 }), (book, steps) => {
        const copies = [BookReplica.fromBook(book), BookReplica.fromBook(book)] as const;
        const views = [book, book];
        const inbox: Uint8Array[][] = [[], []];
        copies.forEach((copy, i) => {
          copy.onUpdate((update, origin) => {
            if (origin === 'local') inbox[1 - i]!.push(update);
          });
        });
        const receive = (i: number, place: number) => {
          const [update] = inbox[i]!.splice(place, 1);
          if (!update) return;
          const merged = copies[i]!.merge(update);
          if (!merged.ok) throw new Error(merged.problem.message);
          // What a merge reports is what the open book shows.
          views[i] = changed(views[i]!, merged.value);
          expect(text(views[i])).toBe(text(copies[i]!.toBook()));
        };
        for (const { who, edits, deliver } of steps) {
          const i = who ? 1 : 0;
          copies[i]!.apply(edits);
          views[i] = copies[i]!.toBook();
          receive(i, deliver % Math.max(1, inbox[i]!.length));
        }
        for (const i of [0, 1]) while (inbox[i]!.length > 0) receive(i, inbox[i]!.length - 1);
        expect(text(copies[0].toBook())).toBe(text(copies[1].toBook()));
        expect(copies[0].incomplete).toBe(false);
        expect(text(opened(copies[0].encode()).toBook())).toBe(text(copies[1].toBook()));
      }),
      { numRuns: 300 },
    );
  });
});
