import { type Figure, figureSource, type Growing, growing } from '../facts/index.js';
import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { isDay } from './dates.js';
import { shortNumber } from './measure.js';
import { bothSources } from './ranged.js';
import type { DayNumber } from './types.js';

export const HOW_STARTED = ['indoors', 'direct'] as const;
export type HowStarted = (typeof HOW_STARTED)[number];

export const isHowStarted = (text: string): text is HowStarted =>
  (HOW_STARTED as readonly string[]).includes(text);

/** A day worked out, with what it rests on. */
export interface PlannedDay {
  readonly day: DayNumber;
  readonly source: string;
  readonly notes: readonly string[];
}

/** Days added to the count back from the first frost, since growth slows in fall. */
export const FALL_DAYS = 14;
/** Days more for a crop that frost kills. */
export const TENDER_DAYS = 14;

const lacking = (of: Growing, what: string, mend: string) =>
  refuse('nothing-published', say`${what} published here for ${of.crop}.`, mend);

function dayOr(day: number, source: string, notes: readonly string[]): Result<PlannedDay> {
  if (isDay(day)) return ok({ day, source, notes });
  return refuse(
    'year-out-of-range',
    say`The date is outside the years 1900 to 2200.`,
    say`Check the date given.`,
  );
}

const span = ({ low, high }: Figure): string =>
  low === high ? shortNumber(low) : say`${shortNumber(low)} to ${shortNumber(high)}`;

function weeksAbout(of: Growing): Result<Figure> {
  if (of.weeksFromLastFrost) return ok(of.weeksFromLastFrost);
  const fall = of.maturityFrom === 'clove' ? say`it is planted in fall; ` : '';
  return lacking(
    of,
    say`${fall}no weeks about the last spring frost are`,
    say`Count from the frost by your own weeks.`,
  );
}

/**
 * The first day for setting or sowing a crop outdoors: the last frost and the earliest of the published
 * weeks about it (negative = before). A frost date is a chance.
 */
export function setOutOn(crop: string, lastFrost: DayNumber): Result<PlannedDay> {
  const of = growing(crop);
  if (!of.ok) return of;
  const weeks = weeksAbout(of.value);
  if (!weeks.ok) return weeks;
  return dayOr(Math.ceil(lastFrost + weeks.value.low * 7), figureSource(weeks.value), [
    say`${span(weeks.value)} weeks from the last frost; before it where negative`,
  ]);
}

/** The day to sow indoors, `weeks` before setting out; half a day goes to the earlier one. */
export const startBefore = (setOut: DayNumber, weeks: number): DayNumber => Math.floor(setOut - weeks * 7);

/**
 * The day to sow: indoors, the usual weeks before `setOutOn`; direct, that day itself. `how` left out: indoors
 * where the crop is started so, else direct. Refused where it is not grown so, or a figure is lacking.
 */
export function startOn(crop: string, lastFrost: DayNumber, how?: HowStarted): Result<PlannedDay> {
  const of = growing(crop);
  if (!of.ok) return of;
  const { sow, weeksIndoors } = of.value;
  const way = how ?? (sow[0] === 'indoors' ? 'indoors' : 'direct');
  const out = setOutOn(crop, lastFrost);
  if (way === 'direct' || !out.ok) return out;
  if (!weeksIndoors) {
    return lacking(of.value, 'no weeks of growing indoors are', say`Write "direct", or count by the packet.`);
  }
  return dayOr(
    startBefore(out.value.day, weeksIndoors.usual),
    bothSources(figureSource(weeksIndoors), out.value.source),
    [
      say`${span(weeksIndoors)} weeks indoors, usually ${shortNumber(weeksIndoors.usual)}`,
      ...out.value.notes,
    ],
  );
}

/** The day a crop is ready: `date` (of sowing, or setting out where days count from that) and the usual days. */
export function harvestFrom(crop: string, date: DayNumber): Result<PlannedDay> {
  const of = growing(crop);
  if (!of.ok) return of;
  const days = of.value.daysToMaturity;
  if (!days) return lacking(of.value, 'no days to maturity are', say`Use the days that the packet says.`);
  return dayOr(Math.ceil(date + days.usual), figureSource(days), [
    say`${span(days)} days, counted from ${counted(of.value)}`,
  ]);
}

const counted = ({ maturityFrom }: Growing): string =>
  maturityFrom === 'transplant' ? say`setting out` : maturityFrom === 'seed' ? 'sowing' : 'planting';

/**
 * The last day to sow for a harvest before the first fall frost: counted back by the usual days to maturity,
 * 14 days for slower growth, 14 more for a crop that frost kills, and the weeks indoors of one set out as a plant.
 */
export function lastSowing(crop: string, firstFrost: DayNumber): Result<PlannedDay> {
  const of = growing(crop);
  if (!of.ok) return of;
  const { daysToMaturity: days, frost, maturityFrom, weeksIndoors, sow } = of.value;
  if (maturityFrom === 'clove' || maturityFrom === 'plant' || maturityFrom === 'crown') {
    return lacking(
      of.value,
      'no last sowing is',
      say`It is planted to stand over winter, not for this fall.`,
    );
  }
  if (!days) return lacking(of.value, 'no days to maturity are', say`Use the days that the packet says.`);
  if (!frost)
    return lacking(of.value, 'nothing on how it stands frost is', say`Count back by your own days.`);
  const tender = frost.value === 'tender' || frost.value === 'very tender';
  // A crop that can also be sown direct, its days counted from setting out, still needs its weeks as a seedling.
  const seedling = maturityFrom === 'transplant' ? (weeksIndoors?.usual ?? null) : 0;
  if (seedling === null) {
    return lacking(of.value, 'no weeks of growing indoors are', say`Count them back by the packet.`);
  }
  const back = days.usual + FALL_DAYS + (tender ? TENDER_DAYS : 0) + seedling * 7;
  const notes = [
    say`${shortNumber(days.usual)} days to maturity, ${FALL_DAYS} for fall${tender ? say`, ${TENDER_DAYS} as frost kills it` : ''}${
      seedling > 0
        ? say`, ${shortNumber(seedling)} weeks ${sow.includes('indoors') ? 'indoors' : say`as a seedling`}`
        : ''
    }`,
  ];
  return dayOr(Math.floor(firstFrost - back), figureSource(days), notes);
}
