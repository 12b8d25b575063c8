import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const HOME = join(import.meta.dirname, '../../src/facts/data');

/** Names under which the data files have a remark: `n` of one reading, `note` of a row. */
const REMARKS: ReadonlySet<string> = new Set(['n', 'note']);

function* remarksIn(data: unknown, name = ''): Generator<string> {
  if (typeof data === 'string') {
    if (REMARKS.has(name)) yield data;
  } else if (Array.isArray(data)) for (const each of data) yield* remarksIn(each, name);
  else if (data && typeof data === 'object')
    for (const [key, each] of Object.entries(data)) yield* remarksIn(each, key);
}

/** What the published figures remark on themselves, each once, as the files have it. */
export const publishedNotes = (): readonly string[] => [
  ...new Set(
    readdirSync(HOME).flatMap((file) => [...remarksIn(JSON.parse(readFileSync(join(HOME, file), 'utf8')))]),
  ),
];
