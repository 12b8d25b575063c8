import { messages, spokenTag, type Translation } from './language.js';
import { localNumber, numberWritten } from './numbers.js';

/** What a text can have in its holes: a number is written as the language writes it. */
export type Hole = string | number | null | undefined;

/** The key of a template: its English text with holes written `{0}`, `{1}` …. Made once for each place in the source. */
const keys = new WeakMap<TemplateStringsArray, string>();

function keyOf(parts: TemplateStringsArray): string {
  let key = keys.get(parts);
  if (key === undefined) {
    key = parts.reduce((before, part, i) => `${before}{${i - 1}}${part}`);
    keys.set(parts, key);
  }
  return key;
}

let rewording: ((text: string) => string) | null = null;
let reworded = new Map<string, string>();

/**
 * Says every text of ours otherwise from now on, before it is translated: how measures are named, say. Null says it
 * as it stands. `by` takes and gives English keys with the same holes.
 */
export function rewordBy(by: ((text: string) => string) | null): void {
  rewording = by;
  reworded = new Map();
}

/** Runs `make` with every text as it stands in the source: for what is reckoned in the measures that it names. */
export function asWritten<T>(make: () => T): T {
  const before = rewording;
  rewording = null;
  try {
    return make();
  } finally {
    rewording = before;
  }
}

/** The key as it is said now. */
function wordedNow(key: string): string {
  if (rewording === null) return key;
  let text = reworded.get(key);
  if (text === undefined) {
    text = rewording(key);
    // Texts that somebody wrote pass here too, and never come to an end.
    if (reworded.size < 20_000) reworded.set(key, text);
  }
  return text;
}

let rules: Intl.PluralRules | undefined;

/** One text of a translation: the form for `n` where it has several. */
export function formOf(translation: Translation, n: number | undefined): string {
  if (typeof translation === 'string') return translation;
  if (rules?.resolvedOptions().locale !== spokenTag()) rules = new Intl.PluralRules(spokenTag());
  const category = n === undefined ? 'other' : rules!.select(Math.abs(n));
  return translation[category] ?? translation.other ?? '';
}

/** Quoted, it is what somebody wrote, and stays as it is. */
const isQuoted = (text: string, at: number): boolean => text[at - 1] === '“' || text[at - 1] === '„';

/** Puts the holes into a translated text. Holes that are texts of ours themselves are translated too. */
export function filled(text: string, holes: readonly Hole[]): string {
  return text.replace(/\{(\d)\}/g, (_all, number: string, at: number) => {
    const hole = holes[Number(number)];
    if (hole == null) return String(hole);
    if (typeof hole === 'number') return localNumber(String(hole));
    return isQuoted(text, at) ? hole : spoken(hole);
  });
}

const firstNumber = (holes: readonly Hole[]): number | undefined => {
  for (const hole of holes) {
    const n = typeof hole === 'string' ? numberWritten(hole) : hole;
    if (n == null) continue;
    return n;
  }
  return undefined;
};

/**
 * A text that a person reads: say`${n} weeks of supply`. Its English stands in the source and is the key under
 * which the catalogue has it (holes as `{0}`, `{1}` …); in another language its translation stands instead, or
 * the English where there is none. A translation with plural forms goes by the first hole that is a number.
 */
export function say(parts: TemplateStringsArray, ...holes: readonly Hole[]): string {
  if (rewording === null && messages() === null) {
    let text = parts[0]!;
    for (let i = 0; i < holes.length; i += 1) text += `${holes[i]}${parts[i + 1]!}`;
    return text;
  }
  const key = wordedNow(keyOf(parts));
  const form = formOf(messages()?.get(key) ?? key, firstNumber(holes));
  return holes.length === 0 ? form : filled(form, holes);
}

/**
 * Marks a text that is declared once (a label, a help) and said later: it stays English, so that it can be compared
 * and stored, and goes into the catalogue. `spoken` says it where it is shown.
 */
export function phrase<T extends string>(text: T): T {
  if (/^[A-Z“]/.test(text) || text.length > LONGEST_NAME) labels.add(text);
  return text;
}

const LONGEST_NAME = 40;

/** Declared texts that begin as sentences and labels do. Other ones (units, names) may be what somebody wrote, too. */
const labels = new Set<string>();

/** A declared text in the language spoken now; what the catalogue does not know stays as it is. */
export function spoken(text: string): string {
  if (rewording === null && messages() === null) return text;
  const key = labels.has(text) ? wordedNow(text) : text;
  const translation = messages()?.get(key);
  return translation === undefined ? key : formOf(translation, undefined);
}

/**
 * So many of something: `1 week`, `2.5 weeks`. `shown` is the number as it is written; the catalogue has the text
 * as `{0} weeks`, with a form for each plural category.
 */
export function counted(n: number, shown: string, one: string, many = `${one}s`): string {
  const translation = messages()?.get(wordedNow(`{0} ${many}`));
  if (translation !== undefined) return filled(formOf(translation, n), [shown]);
  return `${shown} ${wordedNow(n === 1 ? one : many)}`;
}
