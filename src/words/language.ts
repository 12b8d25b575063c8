/** A translation: one text, or one for each plural category of the language (`Intl.PluralRules`). */
export type Translation = string | { readonly [category in Intl.LDMLPluralRule]?: string };

/** Translations by their English text, whose holes are written `{0}`, `{1}` … in both. */
export type Messages = ReadonlyMap<string, Translation>;

interface Spoken {
  /** BCP 47: which numbers, dates and plural forms are written. */
  readonly tag: string;
  /** Null in English, whose texts stand in the source. */
  readonly messages: Messages | null;
}

const ENGLISH: Spoken = { tag: 'en-US', messages: null };

/** Languages besides English, each loaded when it is asked for. */
const LOADERS: Readonly<Record<string, () => Promise<Messages>>> = {
  de: async () => (await import('./german.js')).german,
};

let now: Spoken = ENGLISH;
interface Wish {
  readonly tag: string;
  readonly done: Promise<string>;
}

/** The latest wish while its words are on their way: one asked for before it does not step in front of it. */
let wish: Wish | null = null;
const listeners = new Set<() => void>();

/** The language and region in which numbers, dates and plural forms are written now; `en-US` for English. */
export const spokenTag = (): string => now.tag;

/** Translations of the language spoken now; null where it is English. */
export const messages = (): Messages | null => now.messages;

/** Languages that can be spoken, English first, as BCP 47 language subtags. */
export const LANGUAGES: readonly string[] = ['en', ...Object.keys(LOADERS)];

const languageOf = (tag: string): string => tag.toLowerCase().split('-')[0] ?? '';

/** A tag that `Intl` takes, or null: an attribute of a page may hold anything. */
function canonical(tag: string): string | null {
  try {
    return Intl.getCanonicalLocales(tag)[0] ?? null;
  } catch {
    return null;
  }
}

/** Speaks what has been loaded: for tests, and for languages that a page brings itself. */
export function speakWith(tag: string, found: Messages | null): void {
  if (tag === now.tag && found === now.messages) return;
  now = { tag, messages: found };
  for (const listener of [...listeners]) listener();
}

/** Whether speaking `tag` needs nothing to be loaded: it is spoken already, or English is. */
export const isSpoken = (tag: string): boolean =>
  languageOf(tag) === languageOf(now.tag) ||
  (now.messages === null && LOADERS[languageOf(tag)] === undefined);

/** A page may carry the words in a file of its own that it left out: then it speaks English, and its keeper is told. */
const notThere = (error: unknown): null => {
  console.warn(error);
  return null;
};

/**
 * All that is said from now on is in the language of `tag` (BCP 47: `de`, `de-AT`), or in English where that
 * language is not known: messages, workings, titles, and numbers and days as it writes them. One language is spoken
 * at a time on a page or in a process; a book that is open says everything anew. Stored values and formulas are the
 * same in all of them. Resolves, with the tag that is spoken then (`de-AT`, `en-US`), when its words are there; until
 * then the language before stays. Never refuses: a tag that is none counts as English, and so does a
 * language whose words cannot be loaded.
 *
 * @example await speak('de'); openBook(book).problem('shelf', lot, 'count')?.mend
 */
export function speak(tag: string): Promise<string> {
  const known = canonical(tag);
  const load = known === null ? undefined : LOADERS[languageOf(known)];
  if (known === null || !load) {
    wish = null;
    speakWith(ENGLISH.tag, null);
    return Promise.resolve(now.tag);
  }
  if (wish?.tag === known) return wish.done;
  const mine: Wish = {
    tag: known,
    done: load()
      .catch(notThere)
      .then((found) => {
        // Who asked for it goes on when what was asked for since is spoken, and never in between.
        if (wish !== mine) return wish ? wish.done : now.tag;
        wish = null;
        speakWith(found ? known : ENGLISH.tag, found);
        return now.tag;
      }),
  };
  wish = mine;
  return mine.done;
}

/**
 * Runs `make` as if English were spoken, and nobody hears of it: for what must come out alike in every language. It
 * ends before anything else is said, so it waits for nothing.
 */
export function inEnglish<T>(make: () => T): T {
  const before = now;
  now = ENGLISH;
  try {
    return make();
  } finally {
    now = before;
  }
}

/** Calls `listener` whenever another language is spoken; answers how to stop that. */
export function onLanguage(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
