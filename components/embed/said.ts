import { languageAround } from '../look/language-around.js';

/** Translations by their English text, as the files of a language have them. */
type Words = Readonly<Record<string, unknown>>;

/**
 * What an embedded sheet says before anything else is loaded, in languages besides English. All words of a
 * language are many times what the sheet itself is; they come with what works the figures out.
 */
const LOADERS: Readonly<Record<string, () => Promise<{ readonly default: Words }>>> = {
  de: () => import('../../src/words/de/components-embed.json'),
};

const ENGLISH = { tag: 'en-US', words: {} as Words };

let now = ENGLISH;
let wanted = '';

const loaderOf = (tag: string) => {
  const language = tag.toLowerCase().split('-')[0] ?? '';
  return Object.hasOwn(LOADERS, language) ? LOADERS[language] : undefined;
};

/** A tag that `Intl` takes, or null: an attribute of a page may hold anything. */
function canonical(tag: string): string | null {
  try {
    return Intl.getCanonicalLocales(tag)[0] ?? null;
  } catch {
    return null;
  }
}

/**
 * Says everything in the language around an element from now on; where that is not known, in English. Null where
 * it is said so already, else resolves when its words are there, or could not be loaded.
 */
export function sayAs(host: Element): Promise<void> | null {
  const tag = canonical(languageAround(host) || 'en');
  const load = tag === null ? undefined : loaderOf(tag);
  wanted = tag ?? '';
  if (!load || tag === null) {
    now = ENGLISH;
    return null;
  }
  if (tag === now.tag) return null;
  return load().then(
    ({ default: words }) => {
      if (wanted === tag) now = { tag, words };
    },
    () => undefined,
  );
}

/** Calls `changed` when another language is written on the page; answers how to stop that. */
export function heedLanguage(host: Element, changed: () => void): () => void {
  const observer = new MutationObserver(() => {
    const before = now;
    void Promise.resolve(sayAs(host)).then(() => before !== now && changed());
  });
  observer.observe(document.documentElement, { attributes: true, attributeFilter: ['lang'], subtree: true });
  return () => observer.disconnect();
}

/** The language and region spoken here, as a BCP 47 tag. */
export const saidIn = (): string => now.tag;

/**
 * Empty, as a hole in a text that is said elsewhere, too: its translation then stands among those that are loaded
 * here, and not only where all of them are.
 */
export const HERE = '';

/** Marks a text that is declared once and said later. */
export const phrase = <T extends string>(text: T): T => text;

/** A declared text in the language spoken here. */
export function spoken(text: string): string {
  const said = Object.hasOwn(now.words, text) ? now.words[text] : undefined;
  return typeof said === 'string' ? said : text;
}

/** A text that a person reads; its English is its key, with holes as `{0}`, `{1}` …. */
export function say(parts: TemplateStringsArray, ...holes: readonly string[]): string {
  const key = parts.reduce((before, part, i) => `${before}{${i - 1}}${part}`);
  return spoken(key).replace(/\{(\d)\}/g, (_all, i: string) => holes[Number(i)] ?? '');
}

/** An ISO date as readers see it; the same words as in the table. */
export function shownText(iso: string): string {
  const at = new Date(`${iso}T00:00:00Z`);
  if (Number.isNaN(at.getTime())) return iso;
  return new Intl.DateTimeFormat(now.tag, { dateStyle: 'medium', timeZone: 'UTC' }).format(at);
}

/** What was entered, as a field begins with it: a number with the decimal sign of a language, that spoken here unless named. */
export function typedText(typed: string | number | boolean, tag = now.tag): string {
  const text = String(typed);
  if (typeof typed !== 'number' || text.includes('e')) return text;
  const decimal = new Intl.NumberFormat(tag).formatToParts(1.5).find(({ type }) => type === 'decimal');
  return text.replace('.', decimal?.value ?? '.');
}
