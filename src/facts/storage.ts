import { excerpt, ok, type Result, refuse } from '../problem.js';
import { orList } from '../units/index.js';
import { say } from '../words/index.js';
import { type Crop, cropCalled, findCrop, firstOfKin } from './crops.js';
import coldRaw from './data/cold.json';
import qualityRaw from './data/quality.json';
import { derived, figureFrom } from './figure.js';
import type { Figure, RawFigure } from './figure-types.js';
import { type FoodGroup, groupOf } from './groups.js';
import { noteInWords } from './notes.js';
import { WAYS, type Way } from './ways.js';

/** How long a food kept in one way is at its best. Quality, never safety. */
export interface Quality {
  readonly way: Way;
  readonly group: FoodGroup | null;
  /** Months of best quality; null where none is published. */
  readonly months: Figure | null;
  /** Given where the source counts in weeks (eggs in the shell); then months is worked out from it. */
  readonly weeks: Figure | null;
  /** What the period rests on, or that none is published and what would fill it. */
  readonly said: string;
}

/** Cold storage of a crop: degrees Fahrenheit, percent relative humidity, months. */
export interface ColdStorage {
  readonly crop: string;
  readonly fahrenheit: Figure;
  readonly humidity: Figure;
  readonly months: Figure | null;
  readonly note: string | null;
}

interface RawQuality {
  readonly way: string;
  readonly of: string;
  readonly months?: RawFigure;
  readonly weeks?: RawFigure;
  readonly note?: string;
}
interface RawCold {
  readonly crop: string;
  readonly f: RawFigure;
  readonly rh: RawFigure;
  readonly months?: RawFigure;
  readonly note?: string;
}

const QUALITY = qualityRaw as unknown as readonly RawQuality[];

const COLD = new Map<string, ColdStorage>(
  (coldRaw as unknown as readonly RawCold[]).flatMap((row) => {
    const fahrenheit = figureFrom(row.f, '°F');
    const humidity = figureFrom(row.rh, '% relative humidity');
    if (!fahrenheit || !humidity) return [];
    const months = figureFrom(row.months, 'months');
    return [[row.crop, { crop: row.crop, fahrenheit, humidity, months, note: row.note ?? null }] as const];
  }),
);

const coldOf = (crop: Crop): ColdStorage | null => firstOfKin(crop, (name) => COLD.get(name))?.value ?? null;

/**
 * Temperature, humidity and months of cold storage for a crop.
 * Refused: `unknown-crop`, or `nothing-published`.
 */
export function coldStorage(crop: string): Result<ColdStorage> {
  const found = findCrop(crop);
  if (!found.ok) return found;
  const cold = coldOf(found.value);
  return cold
    ? ok(cold)
    : refuse(
        'nothing-published',
        say`no cold-storage figures are published here for ${found.value.name}.`,
        say`Enter your own months of best quality.`,
      );
}

const DAYS_PER_MONTH = 365.25 / 12;

const inWords = (note: string | undefined) => (note === undefined ? undefined : noteInWords(note));

function published(row: RawQuality, way: Way, group: FoodGroup | null): Quality {
  const weeks = figureFrom(row.weeks, 'weeks');
  const months = weeks
    ? derived(weeks, 'months', say`worked out from weeks`, (n) => (n * 7) / DAYS_PER_MONTH)
    : figureFrom(row.months, 'months');
  const said = inWords(row.note ?? months?.note) ?? say`published for ${row.of} kept this way`;
  return { way, group, months, weeks, said };
}

const none = (way: Way, group: FoodGroup | null, said: string): Quality => ({
  way,
  group,
  months: null,
  weeks: null,
  said,
});

function byGroup(way: Way, food: string, group: FoodGroup | null): Quality {
  if (group === null)
    return none(
      way,
      null,
      say`nothing tells what sort of food ${food.trim()} is: enter your own months of best quality.`,
    );
  const row = QUALITY.find((one) => one.way === way && one.of === group);
  return row
    ? published(row, way, group)
    : none(
        way,
        group,
        say`no months of best quality are published here for ${group}, ${way}: enter your own months of best quality.`,
      );
}

function cellared(food: string, group: FoodGroup | null): Quality {
  const crop = cropCalled(food);
  const cold = crop ? coldOf(crop) : null;
  if (!cold?.months) {
    return none(
      'cellared',
      group,
      say`no months in cold storage are published here for ${food.trim()}: enter your own months of best quality.`,
    );
  }
  const { fahrenheit: f, humidity: rh } = cold;
  const range = (a: Figure) => (a.low === a.high ? `${a.low}` : say`${a.low} to ${a.high}`);
  const said = say`at ${range(f)} °F and ${range(rh)} % relative humidity`;
  return { way: 'cellared', group, months: cold.months, weeks: null, said };
}

/**
 * Months of best quality of a food kept in a way, with the source; `months` is null, and `said` says what
 * would fill it, where none is published: always so for freeze-dried, fermented, cured and rendered food and
 * dry goods. A quality period, never a safety date. Refused only for a way it does not know (`unknown-way`).
 */
export function qualityMonths(wayKept: string, food: string): Result<Quality> {
  const way = WAYS.find((one) => one === wayKept.trim().toLowerCase());
  if (!way) {
    const shown =
      wayKept.trim() === ''
        ? say`the way kept is blank.`
        : say`no way of keeping called "${excerpt(wayKept)}".`;
    return refuse('unknown-way', shown, say`Write ${orList(WAYS)}.`);
  }
  const group = groupOf(food);
  switch (way) {
    case 'canned': {
      const row = QUALITY.find((one) => one.way === 'canned');
      return ok(
        row ? published(row, way, group) : none(way, group, say`enter your own months of best quality`),
      );
    }
    case 'frozen':
    case 'dried':
    case 'fresh':
      return ok(byGroup(way, food, group));
    case 'cellared':
      return ok(cellared(food, group));
    case 'freeze-dried':
      return ok(
        none(
          way,
          group,
          say`no period is published for home freeze-dried food: enter your own months of best quality.`,
        ),
      );
    default:
      return ok(
        none(
          way,
          group,
          say`no months of best quality are published here for food kept so (${way}): enter your own months of best quality.`,
        ),
      );
  }
}

/** Every published quality period, by way and group. */
export const allQuality = (): readonly (Quality & { readonly of: string })[] =>
  QUALITY.map((row) => ({ ...published(row, row.way as Way, null), of: row.of }));

/** Every crop with cold-storage figures. */
export const allColdStorage = (): readonly ColdStorage[] => [...COLD.values()];
