// What a script brings with it before anything is asked for: itself and everything it imports outright.
import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';

const STATIC = /(?:\bfrom|\bimport)\s*["'`](\.[^"'`]+)["'`]/g;

/** Every file that loads with `file`, with its size under gzip in bytes. */
export function staticParts(file, found = new Map()) {
  if (found.has(file)) return found;
  const text = readFileSync(file, 'utf8');
  found.set(file, gzipSync(text, { level: 9 }).length);
  for (const [, to] of text.matchAll(STATIC)) staticParts(resolve(dirname(file), to), found);
  return found;
}

export const total = (parts) => [...parts.values()].reduce((sum, size) => sum + size, 0);
