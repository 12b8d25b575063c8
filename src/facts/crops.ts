import { excerpt, ok, type Result, refuse } from '../problem.js';
import { orList } from '../units/index.js';
import { messages, say, spoken } from '../words/index.js';
import raw from './data/crops.json';
import { germanNames } from './german-names.js';
import type { FoodGroup } from './groups.js';
import { nearestNames, pluralOf, wordsOf } from './names.js';

/** What decides how a food is canned: acid enough, acid added, or pressure canned only. */
export type AcidClass = 'acid' | 'acidify' | 'low-acid';

/** A crop or field food that the facts know. */
export interface Crop {
  /** `food`: known for keeping, not for growing, as beef or butter. */
  readonly kind: 'crop' | 'food';
  /** Canonical name, singular: 'tomato', 'snap bean'. */
  readonly name: string;
  readonly plural: string;
  /** Synonyms, as in 'green bean' for snap bean. */
  readonly also: readonly string[];
  /** Botanical family; null for a name that covers several. */
  readonly family: string | null;
  readonly group: FoodGroup;
  /** Null where it is not canned or not established. */
  readonly acid: AcidClass | null;
  /** The crop whose figures serve where this one has none of its own: kale is like greens. */
  readonly like: string | null;
}

interface RawCrop {
  readonly kind?: string;
  readonly name: string;
  readonly plural?: string;
  readonly also: readonly string[];
  readonly family: string | null;
  readonly group: string;
  readonly acid: string | null;
  readonly like?: string;
}

const CROPS: readonly Crop[] = (raw as readonly RawCrop[]).map((one) => ({
  kind: one.kind === 'food' ? 'food' : 'crop',
  name: one.name,
  plural: one.plural ?? pluralOf(one.name),
  also: one.also,
  family: one.family,
  group: one.group as FoodGroup,
  acid: one.acid as AcidClass | null,
  like: one.like ?? null,
}));

const byWords = new Map<string, Crop>();
function put(name: string, crop: Crop): void {
  const words = wordsOf(name);
  if (!byWords.has(words)) byWords.set(words, crop);
}
// Proper names come before synonyms, so that no synonym takes another crop's own name.
for (const crop of CROPS) {
  put(crop.name, crop);
  put(crop.plural, crop);
}
for (const crop of CROPS) {
  for (const name of crop.also) {
    const words = wordsOf(name);
    put(words, crop);
    put(pluralOf(words), crop);
  }
}
/** Names of the table's own language; no name of another one takes theirs. */
const english: ReadonlySet<string> = new Set(byWords.keys());
const byName = new Map(CROPS.map((crop) => [crop.name, crop]));
for (const [words, name] of germanNames('crops')) {
  const crop = byName.get(name);
  if (crop) put(words, crop);
}

/** Spellings repeat thousands of times in a ledger: as many texts are compared once. */
const MOST_TEXTS = 5000;
const seen = new Map<string, Crop | null>();

/** The crop called `name`, or null. */
export function cropCalled(name: string): Crop | null {
  const known = seen.get(name);
  if (known !== undefined) return known;
  const found = byWords.get(wordsOf(name)) ?? null;
  if (seen.size < MOST_TEXTS) seen.set(name, found);
  return found;
}

/** Canonical names of all crops (not of foods such as beef), in the order of the registry. */
export const cropNames = (): readonly string[] =>
  CROPS.filter((crop) => crop.kind === 'crop').map((crop) => crop.name);

/** All crops and foods. */
export const crops = (): readonly Crop[] => CROPS;

/**
 * The crop called `name`, without case, in the singular or plural or by a common synonym, in English or German.
 * Refused (`unknown-crop`) with the nearest names.
 */
export function findCrop(name: string): Result<Crop> {
  const found = cropCalled(name);
  if (found) return ok(found);
  if (wordsOf(name) === '') {
    return refuse('unknown-crop', say`the crop is blank.`, say`Write a crop, such as tomato or snap bean.`);
  }
  const near = (messages() === null ? nearCrops : nearAll)(name).map(spoken);
  return near.length > 0
    ? refuse(
        'unknown-crop',
        say`no crop called "${excerpt(name)}": did you mean ${orList(near)}?`,
        say`Write ${orList(near)}.`,
      )
    : refuse(
        'unknown-crop',
        say`no crop called "${excerpt(name)}".`,
        say`Write a crop from the Facts sheet, such as tomato or snap bean.`,
      );
}

/** Names near to one that is unknown: each text is compared with all others once, however often a plan asks. */
function nearAmong(known: ReadonlySet<string>): (name: string) => readonly string[] {
  const shown = [...known].map((words) => [words, byWords.get(words)!.name] as const);
  const found = new Map<string, readonly string[]>();
  return (name) => {
    const before = found.get(name);
    if (before) return before;
    const near = nearestNames(name, shown);
    if (found.size < MOST_TEXTS) found.set(name, near);
    return near;
  };
}

const nearAll = nearAmong(new Set(byWords.keys()));

/** Names of crops for which `name` may be a slip of an English one, whatever is spoken; none where it is like none. */
export const nearCrops = nearAmong(english);

/** What a crop is called in English, where it was named in another language; any other name as it is. */
export const inEnglishName = (name: string): string =>
  isForeignName(name) ? (cropCalled(name)?.name ?? name) : name;

/** Whether a crop is known by this name in a language other than English. */
export const isForeignName = (name: string): boolean => {
  const words = wordsOf(name);
  return byWords.has(words) && !english.has(words);
};

/**
 * The crop and those whose figures serve for it, itself first: collards, then greens.
 */
export function kin(crop: Crop): readonly Crop[] {
  const line: Crop[] = [crop];
  for (let next = crop.like; next !== null; ) {
    const like = cropCalled(next);
    if (!like || line.includes(like)) break;
    line.push(like);
    next = like.like;
  }
  return line;
}

/** The first of a crop's kin that `of` has something for, with what it has. */
export function firstOfKin<T>(
  crop: Crop,
  of: (name: string) => T | undefined,
): { crop: Crop; value: T } | null {
  for (const one of kin(crop)) {
    const value = of(one.name);
    if (value !== undefined) return { crop: one, value };
  }
  return null;
}
