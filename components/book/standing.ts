import { WAYS_KEPT, type WayKept } from '../../src/planning/types.js';
import { ok, type Problem, type Result, refuse } from '../../src/problem.js';
import { say, spoken } from '../../src/words/index.js';
import { type LotLine, readLotLine } from '../sheet/lot-line.js';

/** A place and what stands there. */
export interface Standing {
  readonly place: string;
  /** How what stands there is kept, where nothing else is said of a lot. */
  readonly way?: string | null;
  /** The container that its lots are counted in, where nothing else is said of one. */
  readonly container?: string | null;
  readonly lots: readonly (Omit<LotLine, 'container'> & {
    readonly container?: string | null;
    readonly way?: string;
  })[];
}

/** One place as it is asked for. */
export interface PlaceAsked {
  readonly place: string;
  readonly way: string;
  readonly container: string;
  /** Foods with how many, with commas between: `tomatoes 24, peaches 12 pints`. */
  readonly foods: string;
}

/** What a way is called: in English, as it is kept, and in the language spoken. */
const namesOf = (way: WayKept): string[] => [...new Set([way, spoken(way).toLowerCase()])];

const wayCalled = (text: string): WayKept | undefined =>
  WAYS_KEPT.find((way) => namesOf(way).includes(text.trim().toLowerCase()));

/** A way with which a part begins, and what follows it. */
function wayBefore(part: string): { readonly own: WayKept; readonly rest: string } | undefined {
  for (const own of WAYS_KEPT)
    for (const name of namesOf(own))
      if (part.toLowerCase().startsWith(`${name} `)) return { own, rest: part.slice(name.length + 1) };
  return undefined;
}

/** A comma between digits is one of a thousand. */
const parts = (text: string): string[] =>
  text
    .split(/[;\n]|,(?!\d{3}(?!\d))/)
    .map((part) => part.trim())
    .filter((part) => part !== '');

/**
 * What stands in one place. A part that is only a way kept (`canned`) says how all of the place is kept; one
 * before a food (`frozen peas 12`) says it of that lot. Refused where a part cannot be read.
 */
export function readPlace({ place, way, container, foods }: PlaceAsked): Result<Standing> {
  const all = parts(foods);
  const said = all.map(wayCalled).find((each) => each !== undefined);
  const kept = said ?? wayCalled(way);
  const lots: Standing['lots'][number][] = [];
  for (const part of all) {
    if (wayCalled(part)) continue;
    const { own, rest = part } = wayBefore(part) ?? {};
    const read = readLotLine(rest, own ?? kept);
    if (!read.ok) return { ok: false, problem: inPlace(read.problem, place) };
    // The place's own container is what its usual way is kept in.
    if (own && own !== kept && container && !read.value.container && read.value.count !== null) {
      const { food, count } = read.value;
      const asked = refuse(
        'no-container',
        say`What are the ${own} ${food} in?`,
        say`Write it after the number, as in ${own} ${food} ${count} pints.`,
      );
      return { ok: false, problem: inPlace(asked.problem, place) };
    }
    lots.push({ ...read.value, ...(own && { way: own }) });
  }
  return ok({ place: place.trim(), way: kept ?? null, container: container || null, lots });
}

/** One place a line, with foods after a colon: `Cellar, top shelf: tomatoes 24, beans 18 pints; canned`. */
export function readStanding(text: string): Result<Standing[]> {
  const read: Standing[] = [];
  for (const line of text.split('\n')) {
    if (line.trim() === '') continue;
    const [place = '', ...rest] = line.split(':');
    const one = readPlace({ place, way: '', container: '', foods: rest.join(':') });
    if (!one.ok) return one;
    read.push(one.value);
  }
  return ok(read);
}

const inPlace = (problem: Problem, place: string): Problem => ({
  ...problem,
  message: place.trim() === '' ? problem.message : `${place.trim()}: ${problem.message}`,
});
