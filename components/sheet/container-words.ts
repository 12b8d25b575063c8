import { CONTAINERS, containerWithId, findContainer, UNITS } from '../../src/units/index.js';
import { spoken } from '../../src/words/index.js';

/** A container at the head of a text, and the text after it. */
export interface ContainerWords {
  /** Id of the container; null for a word such as “jars”, which leaves it as it is. */
  readonly container: string | null;
  /** How many containers one of what was counted is: 12 in “2 dozen pints”. */
  readonly times: number;
  readonly rest: string;
}

/** Words that say that something is counted, not what it holds. */
const ANY =
  /^(?:jars?|containers?|bags?|cans?|tins?|lots?|packs?|packages?|Glas|Gläser|Behälter|Beutel|Dosen?|Posten|Packung(?:en)?)$/i;
const MOST_WORDS = 4;

/** The longest container at the head of `text`; undefined where it does not begin with one. */
export function containerWords(text: string, way: string): ContainerWords | undefined {
  const words = text.split(' ');
  for (let most = Math.min(MOST_WORDS, words.length); most > 0; most--) {
    const name = words.slice(0, most).join(' ').replace(/[,;]$/, '');
    const rest = words
      .slice(most)
      .join(' ')
      .replace(/^(?:of|von) /i, '');
    if (ANY.test(name)) return { container: null, times: 1, rest };
    const id = containerNamed(name);
    if (id === undefined) continue;
    if (id === 'dozen') {
      const inner = rest === '' ? undefined : containerWords(rest, way);
      return inner ? { ...inner, times: 12 * inner.times } : { container: id, times: 1, rest };
    }
    return { container: asKept(id, name, way), times: 1, rest };
  }
  return undefined;
}

/** By its English names, or as the language spoken now has it. */
function containerNamed(name: string): string | undefined {
  const found = findContainer(name);
  if (found.ok) return found.value.id;
  const same = (text: string): boolean => spoken(text).toLowerCase() === name.toLowerCase();
  const id = [...CONTAINERS, ...UNITS].find(({ id, plural }) => same(id) || same(plural))?.id;
  const again = id === undefined ? undefined : findContainer(id);
  return again?.ok ? again.value.id : undefined;
}

/** A plain size means the jar, and of what is frozen the bag. */
function asKept(id: string, name: string, way: string): string {
  if (way !== 'frozen' || /jar/i.test(name)) return id;
  const bag = id.replace(/ jar$/, ' freezer bag');
  return containerWithId(bag) ? bag : id;
}
