import { phrase } from '../words/index.js';

/** Encodings that a file of text can be read in. */
export const ENCODINGS = [
  { id: 'utf-8', label: 'UTF-8' },
  { id: 'utf-16le', label: phrase('UTF-16, little end first') },
  { id: 'utf-16be', label: phrase('UTF-16, big end first') },
  { id: 'windows-1252', label: phrase('Western European (Windows-1252)') },
] as const;
export type Encoding = (typeof ENCODINGS)[number]['id'];

export interface FoundEncoding {
  readonly encoding: Encoding;
  /** How it was found, in English words: told when they are shown. */
  readonly how: string;
}

/** Bytes looked at to tell one encoding from another where no mark says it. */
const SAMPLE = 4096;

/** The encoding in which a file of text is written, as far as its bytes tell. */
export function detectEncoding(bytes: Uint8Array): FoundEncoding {
  const [a, b, c] = bytes;
  if (a === 0xef && b === 0xbb && c === 0xbf)
    return { encoding: 'utf-8', how: phrase('the mark at its beginning says so') };
  if (a === 0xff && b === 0xfe)
    return { encoding: 'utf-16le', how: phrase('the mark at its beginning says so') };
  if (a === 0xfe && b === 0xff)
    return { encoding: 'utf-16be', how: phrase('the mark at its beginning says so') };
  const wide = wideText(bytes);
  if (wide) return { encoding: wide, how: phrase('every other byte is blank') };
  if (isUtf8(bytes)) return { encoding: 'utf-8', how: phrase('all of it reads as such') };
  return {
    encoding: 'windows-1252',
    how: phrase('it is not UTF-8, so letters with accents should be looked at'),
  };
}

/** Plain letters in UTF-16 have a blank byte each: on one side only, and nearly always. */
function wideText(bytes: Uint8Array): Encoding | null {
  const length = Math.min(bytes.length, SAMPLE) & ~1;
  if (length < 4) return null;
  let even = 0;
  let odd = 0;
  for (let i = 0; i < length; i += 2) {
    if (bytes[i] === 0) even++;
    if (bytes[i + 1] === 0) odd++;
  }
  const pairs = length / 2;
  if (odd > pairs * 0.6 && even < pairs * 0.1) return 'utf-16le';
  if (even > pairs * 0.6 && odd < pairs * 0.1) return 'utf-16be';
  return null;
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}

/** The text of a file; bytes that are none in this encoding become U+FFFD. A mark at the beginning is left out. */
export function decode(bytes: Uint8Array, encoding: Encoding): string {
  return encoding === 'windows-1252' ? fromWindows1252(bytes) : new TextDecoder(encoding).decode(bytes);
}

/** 0x80 to 0x9F of Windows-1252; the rest is as in Latin-1. The five without a sign stay as they are. */
const HIGH =
  '\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f' +
  '\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178';

// Some runtimes decode this name as Latin-1, so dashes and quotation marks would be lost there.
function fromWindows1252(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (let at = 0; at < bytes.length; at += 8192) {
    const codes = Array.from(bytes.subarray(at, at + 8192), (byte) =>
      byte >= 0x80 && byte < 0xa0 ? HIGH.charCodeAt(byte - 0x80) : byte,
    );
    parts.push(String.fromCharCode(...codes));
  }
  return parts.join('');
}
