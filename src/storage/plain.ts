import { toHexString } from 'lib0/buffer';
import { digest } from 'lib0/hash/sha256';
import { canonical } from '../book/plain-json.js';
import type { Json } from '../book/types.js';

export * from '../book/plain-json.js';

/** The first `bytes` bytes of the SHA-256 of `data`, as hex. */
export const shortDigest = (data: Uint8Array, bytes: number): string =>
  toHexString(digest(data).subarray(0, bytes));

export const digestOf = (value: Json, bytes: number): string =>
  shortDigest(new TextEncoder().encode(canonical(value)), bytes);
