import type { KeepDatabase, VersionRecord } from './keep-database.js';
import { versionsToKeep } from './thinning.js';

/** An earlier state of a book, without its content. */
export interface VersionEntry {
  readonly id: number;
  /** When it was kept, in milliseconds since 1970. */
  readonly at: number;
  readonly title: string;
  /** Given by a person; absent on those that were kept by themselves. */
  readonly name?: string;
}

export const entryOf = ({ nr, at, title, name }: VersionRecord & { readonly nr?: number }): VersionEntry => ({
  id: nr!,
  at,
  title,
  ...(name !== undefined && { name }),
});

export const newestFirst = (a: VersionEntry, b: VersionEntry): number => b.at - a.at || b.id - a.id;

const writing = (db: KeepDatabase) => {
  const tx = db.transaction(['versions', 'texts'], 'readwrite', { durability: 'strict' });
  // Whoever awaits `done` still hears of it; a request that failed before must not leave it unheard.
  tx.done.catch(() => {});
  return tx;
};

/**
 * Keeps a version. One without a name is not kept when it equals the newest, and lets others without a name
 * go (see `versionsToKeep`); those with a name stay until a person removes them.
 */
export async function addVersion(
  db: KeepDatabase,
  record: VersionRecord,
  json: string,
): Promise<VersionEntry> {
  const tx = writing(db);
  const [versions, texts] = [tx.objectStore('versions'), tx.objectStore('texts')];
  const all = (await versions.index('book').getAll(record.book)).map(entryOf).sort(newestFirst);
  const [newest] = all;
  const same = newest && (await texts.get(newest.id))?.json === json;
  if (same && record.name === undefined) {
    await tx.done;
    return newest;
  }
  const nr = await versions.add(record);
  const unnamed = all.filter(({ name }) => name === undefined);
  const keep = versionsToKeep(
    [...unnamed.map(({ at }) => at), ...(record.name === undefined ? [record.at] : [])],
    record.at,
  );
  // Named, it takes the place of the same book kept by itself just before.
  const goes = unnamed.filter((each) => !keep.has(each.at) || (same && each === newest));
  await Promise.all([
    texts.add({ nr, json }),
    ...goes.flatMap(({ id }) => [versions.delete(id), texts.delete(id)]),
    tx.done,
  ]);
  return entryOf({ ...record, nr });
}

/** False when it is no longer kept. */
export async function nameVersion(db: KeepDatabase, id: number, name: string): Promise<boolean> {
  const tx = writing(db);
  const versions = tx.objectStore('versions');
  const record = await versions.get(id);
  if (record) await versions.put({ ...record, name });
  await tx.done;
  return record !== undefined;
}

export async function dropVersion(db: KeepDatabase, id: number): Promise<void> {
  const tx = writing(db);
  await Promise.all([tx.objectStore('versions').delete(id), tx.objectStore('texts').delete(id), tx.done]);
}
