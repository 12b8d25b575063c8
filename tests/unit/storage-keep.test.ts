import { describe, expect, it, vi } from 'vitest';
import { type Keep, openKeep } from '../../src/storage/index.js';
import { BookReplica } from '../../src/storage/replica.js';
import { aBook, failWrites, newDatabase } from './storage-support.js';

const opened = async (name: string): Promise<Keep> => {
  const keep = await openKeep(name);
  if (!keep.ok) throw new Error(keep.problem.message);
  return keep.value;
};
const label = { title: 'Our shelf', at: 1 };

/** A kept book, and how to make its next update. */
async function keptBook() {
  const name = newDatabase();
  const keep = await opened(name);
  const replica = BookReplica.fromBook(aBook());
  await keep.create('b1', replica.encode(), label);
  const update = (count: number): Uint8Array => {
    const before = replica.vector();
    replica.apply([
      { path: ['sheets', 'shelf', 'rows', 'r1', 'cells', `c${count}`], to: count, was: undefined },
    ]);
    return replica.encodeSince(before);
  };
  return { name, keep, replica, update };
}
async function loadedCells(keep: Keep) {
  const loaded = await keep.load('b1');
  const replica = BookReplica.fromState(...loaded!.updates);
  if (!replica.ok) throw new Error(replica.problem.message);
  return replica.value.toBook().sheets.shelf!.rows.r1!.cells;
}

describe('kept books', () => {
  it('are there again from another connection, with every update', async () => {
    const { name, keep, update } = await keptBook();
    for (const n of [1, 2, 3]) await keep.append('b1', update(n), { title: 'Renamed', at: n });
    const again = await opened(name);
    expect(await loadedCells(again)).toMatchObject({ c1: 1, c2: 2, c3: 3 });
    expect(await again.list()).toEqual([{ id: 'b1', title: 'Renamed', updatedAt: 3 }]);
  });

  it('are written with strict durability', async () => {
    const transaction = vi.spyOn(IDBDatabase.prototype, 'transaction');
    const { keep, update } = await keptBook();
    await keep.append('b1', update(1), label);
    const writes = transaction.mock.calls.filter(([, mode]) => mode === 'readwrite');
    transaction.mockRestore();
    expect(writes.length).toBe(2);
    for (const [, , options] of writes) expect(options).toEqual({ durability: 'strict' });
  });

  it('reject a write that the browser refuses, and keep what was there', async () => {
    const { keep, update } = await keptBook();
    const end = failWrites('QuotaExceededError');
    await expect(keep.append('b1', update(1), label)).rejects.toMatchObject({ name: 'QuotaExceededError' });
    end();
    expect(await loadedCells(keep)).toEqual({ food: 'tomatoes', count: 24 });
  });

  it('do not take an update of a book that is not kept, nor a second book of one id', async () => {
    const { keep, update } = await keptBook();
    expect(await keep.append('other', update(1), label)).toBe(false);
    expect(await keep.create('b1', new Uint8Array([0, 0]), label)).toBe(false);
    expect(await loadedCells(keep)).toMatchObject({ count: 24 });
  });

  it('lose nothing when another tab appends while one compacts', async () => {
    const { name, keep, update } = await keptBook();
    const other = await opened(name);
    for (const n of [1, 2, 3]) await keep.append('b1', update(n), label);
    await keep.create('b2', new Uint8Array([0, 0]), label);
    await keep.append('b2', new Uint8Array([0, 0]), label);
    const [a, b, c] = [update(4), update(5), update(6)];
    await Promise.all([
      other.append('b1', a, label),
      keep.compact('b1'),
      other.append('b1', b, label),
      other.compact('b1'),
      keep.append('b1', c, label),
    ]);
    expect(await loadedCells(keep)).toMatchObject({ c1: 1, c2: 2, c3: 3, c4: 4, c5: 5, c6: 6 });
    await keep.compact('b1');
    expect(await keep.waiting('b1')).toBe(0);
    expect(await keep.waiting('b2')).toBe(1);
    expect(await loadedCells(other)).toMatchObject({ c1: 1, c4: 4, c5: 5, c6: 6 });
  });

  it('give only what is new since the last look, or all of it where it was compacted', async () => {
    const { keep, update } = await keptBook();
    await keep.append('b1', update(1), label);
    const first = (await keep.load('b1'))!;
    await keep.append('b1', update(2), label);
    expect((await keep.loadSince('b1', first.upTo))!.updates).toHaveLength(1);
    await keep.compact('b1');
    const all = BookReplica.fromState(...(await keep.loadSince('b1', first.upTo))!.updates);
    expect(all.ok && all.value.toBook().sheets.shelf!.rows.r1!.cells).toMatchObject({ c1: 1, c2: 2 });
  });

  it('are gone with their versions when removed, and others stay', async () => {
    const { keep, update } = await keptBook();
    await keep.create('b2', update(1), { title: 'Second', at: 2 });
    await keep.append('b1', update(2), label);
    await keep.saveVersion('b1', '{}', label);
    await keep.remove('b1');
    expect(await keep.load('b1')).toBeUndefined();
    expect(await keep.versions('b1')).toEqual([]);
    expect((await keep.list()).map(({ id }) => id)).toEqual(['b2']);
  });

  it('open again after another tab deleted the database', async () => {
    const { name, keep, replica, update } = await keptBook();
    await new Promise((done) => {
      indexedDB.deleteDatabase(name).onsuccess = done;
    });
    expect(await keep.append('b1', update(1), label)).toBe(false);
    await keep.create('b1', replica.encode(), label);
    expect(await loadedCells(keep)).toMatchObject({ c1: 1 });
  });
});

describe('versions', () => {
  it('come newest first, and the same book twice is one version', async () => {
    const { keep } = await keptBook();
    await keep.saveVersion('b1', '{"a":1}', { title: 'A', at: 1000 });
    await keep.saveVersion('b1', '{"a":1}', { title: 'A', at: 2000 });
    await keep.saveVersion('b1', '{"a":2}', { title: 'A', at: 3000 });
    const versions = await keep.versions('b1');
    expect(versions.map(({ at }) => at)).toEqual([3000, 1000]);
    expect(await keep.loadVersion(versions[1]!.id)).toBe('{"a":1}');
  });

  it('thin out with age: one from just now, some hours back, days back, weeks back', async () => {
    const { keep } = await keptBook();
    const hour = 3_600_000;
    const day = 24 * hour;
    const end = 60 * day;
    for (let at = 0; at <= end; at += 3 * hour)
      await keep.saveVersion('b1', `{"at":${at}}`, { title: 'A', at });
    const ages = (await keep.versions('b1')).map(({ at }) => end - at);
    expect(ages.length).toBeLessThanOrEqual(10);
    expect(ages[0]).toBe(0);
    for (const [from, to] of [
      [3 * hour, day],
      [day, 3 * day],
      [3 * day, 7 * day],
      [7 * day, 30 * day],
      [30 * day, 60 * day],
    ] as const)
      expect(ages.some((age) => age >= from && age <= to)).toBe(true);
  });
});
