import { containerWithId, findContainer } from '../../src/units/index.js';

/** A container at the head of a text, and the text after it. */
export interface ContainerWords {
  /** Id of the container; null for a word such as “jars”, which leaves it as it is. */
  readonly container: string | null;
  /** How many containers one of what was counted is: 12 in “2 dozen pints”. */
  readonly times: number;
  readonly rest: string;
}

/** Words that say that something is counted, not what it holds. */
const ANY = /^(?:jars?|containers?|bags?|cans?|tins?|lots?|packs?|packages?)$/i;
const MOST_WORDS = 4;

/** The longest container at the head of `text`; undefined where it does not begin with one. */
export function containerWords(text: string, way: string): ContainerWords | undefined {
  const words = text.split(' ');
  for (let most = Math.min(MOST_WORDS, words.length); most > 0; most--) {
    const name = words.slice(0, most).join(' ').replace(/[,;]$/, '');
    const rest = words.slice(most).join(' ').replace(/^of /i, '');
    if (ANY.test(name)) return { container: null, times: 1, rest };
    const found = findContainer(name);
    if (!found.ok) continue;
    const { id } = found.value;
    if (id === 'dozen') {
      const inner = rest === '' ? undefined : containerWords(rest, way);
      return inner ? { ...inner, times: 12 * inner.times } : { container: id, times: 1, rest };
    }
    return { container: asKept(id, name, way), times: 1, rest };
  }
  return undefined;
}

/** A plain size means the jar, and of what is frozen the bag. */
function asKept(id: string, name: string, way: string): string {
  if (way !== 'frozen' || /jar/i.test(name)) return id;
  const bag = id.replace(/ jar$/, ' freezer bag');
  return containerWithId(bag) ? bag : id;
}
