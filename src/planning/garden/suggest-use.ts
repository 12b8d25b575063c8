import { growing, perPerson, sourceText, wordsOf } from '../../facts/index.js';
import { ok, type Result, refuse } from '../../problem.js';
import { inMeasure } from '../../units/index.js';
import { say, spoken } from '../../words/index.js';
import { yieldPerRowFoot } from '../growing.js';
import { defaultGuide, type Guide } from '../guide.js';
import { measureName } from '../measure.js';
import { measured, measuredIn } from '../measured.js';
import { bothSources } from '../ranged.js';
import type { CropShare, Household, WayKept } from '../types.js';
import { type OwnFigures, publishedOnly } from './own-figures.js';
import { cropKey, shown } from './words.js';

/** The food line that a suggestion is asked for. */
export interface LineToSuggest {
  /** As written, or its key. */
  readonly food: string;
  readonly way: WayKept;
  readonly countedIn: string;
  readonly crops: readonly CropShare[];
}

/** A published amount for the household, as use per week: only ever a suggestion, until the draws say better. */
export interface UseSuggestion {
  /** Counted-in containers a week, for all shares at the table. */
  readonly perWeek: number;
  readonly low: number;
  readonly high: number;
  readonly source: string;
  readonly steps: readonly string[];
  /** What it is called wherever it shows. */
  readonly mark: 'published suggestion';
}

/** Weeks that a year's amount is spread over. */
const WEEKS = 365.25 / 7;

interface PerWeek {
  readonly low: number;
  readonly usual: number;
  readonly high: number;
  readonly source: string;
  readonly steps: readonly string[];
}

/** Ways of keeping that what is 'put up' of a garden crop goes to. */
const PUT_UP: readonly WayKept[] = ['canned', 'frozen', 'dried', 'fermented', 'cellared', 'freeze-dried'];

/** By servings that a source gives for the food and the way: servings a week × size of a serving. */
function byServings({ food, way, countedIn }: LineToSuggest, guide: Guide): PerWeek | null {
  for (const one of perPerson(food)) {
    if (!one.servings || wordsOf(one.form) !== way) continue;
    const [perWeek, weeks, cups] = one.servings;
    const each = inMeasure(cups, 'cup', countedIn, guide.bridges(food));
    if (!each.ok) continue;
    const usual = perWeek * each.value;
    return {
      low: usual,
      usual,
      high: usual,
      source: sourceText(one.amount.source),
      steps: [
        say`${perWeek} servings a week of ${cups} cup, for one grown appetite: ${shown(usual)} ${countedIn} a week`,
        say`printed for ${weeks} weeks as ${one.amount.usual} ${one.amount.unit}`,
      ],
    };
  }
  return null;
}

/** Pounds of a crop in one counted-in container: as the row says, else in use. */
function poundsEach(
  line: LineToSuggest,
  crop: string,
  figures: OwnFigures,
): { pounds: number; source: string } | null {
  const said = line.crops.find((one) => cropKey(one.crop) === crop)?.pounds ?? null;
  if (said !== null && said > 0) return { pounds: said, source: '' };
  const weight = inMeasure(1, line.countedIn, 'pound');
  if (weight.ok) return { pounds: weight.value, source: '' };
  const found = figures.inUse({
    of: crop,
    what: 'pounds per container',
    container: line.countedIn,
    way: line.way,
  });
  return found.ok && found.value.usual > 0 ? { pounds: found.value.usual, source: found.value.source } : null;
}

/** By the row feet, or plants, that gardeners are told to put up for a person, and what these yield. */
function byGround(line: LineToSuggest, crop: string, figures: OwnFigures): PerWeek | null {
  const of = growing(crop);
  const each = poundsEach(line, crop, figures);
  if (!of.ok || !each || !PUT_UP.includes(line.way)) return null;
  for (const ground of of.value.perPersonPreserved) {
    const feet = /^row feet/.test(ground.unit);
    if (!feet && !/^plants/.test(ground.unit)) continue;
    const per = feet ? yieldPerRowFoot(crop) : figures.inUse({ of: crop, what: 'yield' });
    if (!per.ok || !(per.value.usual > 0)) continue;
    const week = (n: number) => (n * per.value.usual) / each.pounds / WEEKS;
    return {
      low: week(ground.low),
      usual: week(ground.usual),
      high: week(ground.high),
      source: [sourceText(ground.source), per.value.source, each.source]
        .filter((text) => text !== '')
        .reduce(bothSources),
      steps: [
        say`${ground.low} to ${ground.high} ${ground.unit}, to put up`,
        say`at ${measured(shown(per.value.usual) ?? 0, feet ? 'pounds a foot' : 'pounds a plant')} and ${measuredIn(shown(each.pounds) ?? 0, 'pound')} a ${line.countedIn}, over the ${Math.round(WEEKS)} weeks of a year`,
      ],
    };
  }
  return null;
}

/** By pounds a person in a year, as available or as stored; all uses together, so a high figure for one way. */
function byPounds(line: LineToSuggest, crop: string | null, figures: OwnFigures): PerWeek | null {
  const dry = line.way === 'dry goods';
  const found = perPerson(line.food).filter(
    (one) =>
      one.persons === 1 &&
      (dry
        ? one.form === 'dry storage' && one.amount.unit === 'lb'
        : one.form === 'all uses' && one.amount.unit === 'lb/yr'),
  );
  // What is left after loss comes nearer to what is eaten.
  const one = found.find(({ basis }) => /loss-adjusted/.test(basis)) ?? found.at(-1);
  const each = one ? poundsEach(line, crop ?? line.food, figures) : null;
  if (!one || !each) return null;
  const week = (n: number) => n / each.pounds / WEEKS;
  return {
    low: week(one.amount.low),
    usual: week(one.amount.usual),
    high: week(one.amount.high),
    source: [sourceText(one.amount.source), each.source].filter((text) => text !== '').reduce(bothSources),
    steps: [
      `${measured(one.amount.usual, dry ? 'pounds' : 'pounds a year')}, ${spoken(one.basis)}${dry ? '' : say`, all uses together`}`,
      say`at ${measuredIn(shown(each.pounds) ?? 0, 'pound')} a ${line.countedIn}, over the ${Math.round(WEEKS)} weeks of a year`,
    ],
  };
}

/**
 * What publications reckon that the table uses in a week of a food that the household has drawn nothing of yet:
 * by servings, else by what gardeners put up for a person, else by pounds a person. Times the shares at the table.
 * Refused (`nothing-published`) where none is printed.
 */
export function suggestUse(
  line: LineToSuggest,
  household: Pick<Household, 'shares'>,
  figures: OwnFigures = publishedOnly,
  guide: Guide = defaultGuide,
): Result<UseSuggestion> {
  const crop = cropKey(line.crops[0]?.crop ?? line.food);
  const found =
    byServings(line, guide) ??
    (crop === null || line.crops.length > 1 ? null : byGround(line, crop, figures)) ??
    byPounds(line, crop, figures);
  const { shares } = household;
  if (!found || !(shares >= 0 && shares <= 10_000)) {
    return refuse(
      'nothing-published',
      say`No amount of ${line.food.trim()}, ${line.way}, is published here for a person.`,
      say`Write your own use per week, or go on writing down draws.`,
    );
  }
  const all = (n: number) => shown(n * shares) ?? 0;
  return ok({
    perWeek: all(found.usual),
    low: all(found.low),
    high: all(found.high),
    source: found.source,
    steps: [
      ...found.steps,
      say`× ${shown(shares)} shares at the table = ${all(found.usual)} ${measureName(line.countedIn, all(found.usual))} a week`,
    ],
    mark: 'published suggestion',
  });
}
