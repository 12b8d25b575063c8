import type { BookReading } from '../live/book-reading.js';
import type { DayNumber, MonthDay } from '../planning/types.js';
import { readBeds, readBushels, readHarvests, readSeasons } from './garden-numbers.js';
import { readBatches, readDishes, readDraws, readStock } from './kitchen-numbers.js';
import type { AnswerUnit } from './types.js';

/** A food line of the shelf. Amounts are in `unit`. */
export interface StockNumbers {
  readonly food: string;
  readonly unit: AnswerUnit;
  /** Id of the container or unit. */
  readonly measure: string;
  readonly putUp: number;
  readonly left: number;
  /** Whole days of the lots. */
  readonly lots: readonly { readonly count: number; readonly putUpOn: DayNumber | null }[];
}

/** What was taken of one food, in the order of the days; only amounts in one measure. */
export interface DrawNumbers {
  readonly food: string;
  readonly unit: AnswerUnit;
  readonly measure: string;
  readonly draws: readonly { readonly day: DayNumber; readonly amount: number }[];
}

/** A planting. `crop` is one plant's name: 'green bean'. */
export interface BedNumbers {
  readonly crop: string;
  readonly plants: number;
  /** Inches between plants, and whose figure that is; null where neither is known. */
  readonly spacing: number | null;
  readonly spacingFrom: 'own' | 'published';
  readonly isSown: boolean;
  readonly sowOn: DayNumber | null;
  readonly harvestFrom: DayNumber | null;
  /** Pounds that came in, and the plants that gave them; null where not written. */
  readonly pounds: number | null;
  readonly plantsPicked: number | null;
}

export interface HarvestNumbers {
  readonly crop: string;
  readonly day: DayNumber;
  readonly pounds: number;
}

/** Pounds in a bushel of a crop of the book. */
export interface BushelNumbers {
  readonly crop: string;
  readonly pounds: number;
  readonly from: 'own' | 'published';
}

export interface DishNumbers {
  readonly dish: string;
  readonly serves: number;
  readonly lines: readonly {
    readonly food: string;
    readonly amount: number;
    readonly unit: AnswerUnit;
    readonly measure: string;
  }[];
}

export interface BatchNumbers {
  readonly food: string;
  readonly unit: AnswerUnit;
  readonly filled: number;
  readonly failed: number;
  readonly canned: boolean;
}

/** One crop's harvest in two seasons. */
export interface SeasonNumbers {
  readonly crop: string;
  readonly before: { readonly year: number; readonly pounds: number };
  readonly after: { readonly year: number; readonly pounds: number };
}

/** What a book knows that a question can be made of: nothing is added to it. */
export interface BookNumbers {
  readonly title: string;
  readonly asOf: DayNumber;
  /** Percent. */
  readonly cushion: number;
  readonly lastFrost: MonthDay | null;
  readonly firstFrost: MonthDay | null;
  /** Percent: the chance of frost after the last spring frost date. */
  readonly lastFrostChance: number | null;
  readonly firstFrostChance: number | null;
  readonly stock: readonly StockNumbers[];
  readonly draws: readonly DrawNumbers[];
  readonly beds: readonly BedNumbers[];
  readonly harvests: readonly HarvestNumbers[];
  readonly bushels: readonly BushelNumbers[];
  readonly dishes: readonly DishNumbers[];
  readonly batches: readonly BatchNumbers[];
  readonly seasons: readonly SeasonNumbers[];
}

const percent = (value: unknown): number | null =>
  typeof value === 'number' && value > 0 && value < 100 ? value : null;

/** Reads what worksheets are drawn from. Reading changes nothing. */
export function readNumbers(book: BookReading): BookNumbers {
  const { asOf, cushion, lastFrost, firstFrost } = book.household;
  const beds = readBeds(book);
  const harvests = readHarvests(book);
  return {
    title: book.title,
    asOf,
    cushion: Math.round(cushion * 1000) / 10,
    lastFrost,
    firstFrost,
    lastFrostChance: percent(book.setting('last_frost_chance')),
    firstFrostChance: percent(book.setting('first_frost_chance')),
    stock: readStock(book),
    draws: readDraws(book),
    beds,
    harvests,
    bushels: readBushels(
      book,
      [...beds, ...harvests].map(({ crop }) => crop),
    ),
    dishes: readDishes(book),
    batches: readBatches(book),
    seasons: readSeasons(book, harvests),
  };
}
