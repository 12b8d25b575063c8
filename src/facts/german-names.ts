import raw from './data/names-de.json';
import { wordsOf } from './names.js';

/**
 * What crops, foods, animals and ways of keeping are called in German, Austria's and Switzerland's words among it. They are known
 * whatever language is spoken, so that a book has the same figures in each. A name is only ever known by this
 * table: each entry is a singular, and after a comma its plural where that is another word.
 */
interface Names {
  readonly crops: Readonly<Record<string, readonly string[]>>;
  /** By group of food, for what is no crop of the registry. */
  readonly groups: Readonly<Record<string, readonly string[]>>;
  /** By the id of a rule on canning. */
  readonly rules: Readonly<Record<string, readonly string[]>>;
  readonly animals: Readonly<Record<string, readonly string[]>>;
  /** By the way as it is stored. */
  readonly ways: Readonly<Record<string, readonly string[]>>;
  /** By an English word that functions take: packs, classes of headspace, gauges, ways to start a crop. */
  readonly words: Readonly<Record<string, readonly string[]>>;
}

const NAMES: Names = raw;

/** The forms in which a German name is compared: with its umlauts, and as it is typed where there are none. */
export function germanWords(name: string): readonly string[] {
  const typed = name.replace(
    /[äöüÄÖÜ]/g,
    (letter) => ({ ä: 'ae', ö: 'oe', ü: 'ue' })[letter.toLowerCase()] ?? letter,
  );
  return [...new Set([name, typed].map(wordsOf))];
}

/** Every form of an entry of the table. */
const formsOf = (entry: string): readonly string[] => entry.split(', ').flatMap(germanWords);

/** German names of crops, foods, animals or ways by what they are called here: in the forms in which they are compared. */
export const germanFor = (what: keyof Names, id: string): readonly string[] =>
  (NAMES[what][id] ?? []).flatMap(formsOf);

/** All of one sort, each with what it names. */
export const germanNames = (what: keyof Names): readonly (readonly [words: string, id: string])[] =>
  Object.keys(NAMES[what]).flatMap((id) => germanFor(what, id).map((words) => [words, id] as const));

/** Which of `among` a German word of the table means; undefined where it means none. */
export function germanMeant<T extends string>(
  what: keyof Names,
  among: readonly T[],
  text: string,
): T | undefined {
  const words = wordsOf(text);
  return words === '' ? undefined : among.find((each) => germanFor(what, each).includes(words));
}

let singulars: ReadonlyMap<string, string> | null = null;

/** The singular of a German name, in the form in which names are compared; a name that is not in the table as it is. */
export function germanSingular(words: string): string {
  singulars ??= new Map(
    [NAMES.crops, NAMES.groups]
      .flatMap((names) => Object.values(names).flat())
      .flatMap((entry) => {
        const [one = ''] = formsOf(entry);
        return formsOf(entry).map((form) => [form, one] as const);
      }),
  );
  return singulars.get(words) ?? words;
}
