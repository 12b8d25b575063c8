import { growing } from '../../facts/index.js';
import type { Result } from '../../problem.js';
import { phrase, say } from '../../words/index.js';
import {
  FALL_DAYS,
  harvestFrom,
  lastSowing,
  type PlannedDay,
  setOutOn,
  startOn,
  TENDER_DAYS,
} from '../growing-dates.js';
import { formatMonthDay } from '../parse-date.js';
import type { DayNumber, Household, WorkingInput } from '../types.js';
import { call, type Explained, input, iso, n, some } from '../working/parts.js';
import type { BedReckoning } from './beds.js';
import { figureInputs } from './explain-yield.js';
import type { CropFigure } from './figure-names.js';
import type { OwnFigures } from './own-figures.js';
import { type DateColumn, isTender } from './planting-dates.js';
import type { GardenHousehold } from './types.js';

/** The formula, where the function gives the same day: it knows published figures only. */
const sameAs = (found: Result<PlannedDay>, day: DayNumber | null, formula: string): { formula?: string } =>
  found.ok && found.value.day === day ? { formula } : {};

const isDateColumn = (column: string): column is DateColumn =>
  ['start_on', 'set_out_on', 'harvest_from', 'harvest_to', 'latest_sowing'].includes(column);

/** What a frost date means: it is a chance. */
export const chanceWords = (chance: number | null): string =>
  chance === null
    ? say`a date that frost may pass: the household does not say how often`
    : say`a ${n(chance)} % date: frost passes it in ${n(chance)} years of a hundred`;

function frostInput(name: string, day: number | null, chance: number | null): readonly WorkingInput[] {
  return day === null ? [] : [input(`${name}, ${chanceWords(chance)}`, iso(day), phrase('day'), 'entered')];
}

/** How a date of a planting is come by. */
export function datesExplained(
  bed: BedReckoning,
  column: string,
  household: Household,
  figures: OwnFigures,
): Explained {
  const { dates, row, crop } = bed;
  const of = growing(crop);
  const { season, how, sown } = dates;
  const asked = isDateColumn(column) ? dates.problems[column] : undefined;
  const missing = asked ? `${asked.message} ${asked.mend}` : say`This crop has no such date.`;
  // The planners of dates need no chance; it is here only to be said.
  const { lastFrostChance = null, firstFrostChance = null } = household as Partial<GardenHousehold>;
  const last = frostInput('Last spring frost', season.lastFrost, lastFrostChance);
  const first = frostInput('First fall frost', season.firstFrost, firstFrostChance);
  const figure = (what: CropFigure, name: string): readonly WorkingInput[] => {
    const found = figures.inUse({ of: crop, what });
    return found.ok ? figureInputs(name, found.value) : [];
  };
  const sowing = sown ? [input(phrase('Sown on'), iso(row.sownOn), phrase('day'), 'entered')] : [];
  const frost = season.lastFrost === null ? null : iso(season.lastFrost);
  const about = figures.inUse({ of: crop, what: 'weeks from the last frost' });
  // The earliest week counts.
  const weeks = about.ok
    ? figureInputs(phrase('Weeks from the last frost, the earliest'), about.value, about.value.low)
    : [];
  const outdoors = about.ok
    ? say`${frost ?? ''} ${signed(about.value.low)} weeks = ${iso(dates.setOutOn ?? dates.startOn)}`
    : null;
  const inside = figures.inUse({ of: crop, what: 'weeks indoors' });
  const plannedOut = !sown && frost !== null ? outdoors : null;
  const days = figures.inUse({ of: crop, what: 'days to maturity' });
  const maturity = days.ok ? days.value.usual : null;
  const indoors = how === 'indoors' ? figure('weeks indoors', phrase('Weeks indoors')) : [];
  switch (column) {
    case 'start_on':
      return {
        rule: sown
          ? say`The day that it was sown, as written in this row.`
          : how === 'indoors'
            ? say`The day of setting out, less the usual weeks indoors.`
            : say`The last spring frost and the earliest of the published weeks about it; before it where negative.`,
        inputs: sown ? sowing : [...last, ...weeks, ...indoors],
        steps: [
          plannedOut,
          plannedOut !== null && how === 'indoors' && inside.ok && dates.setOutOn !== null
            ? say`${iso(dates.setOutOn)} − ${n(inside.value.usual)} weeks = ${iso(dates.startOn)}`
            : null,
        ],
        ...(season.lastFrost !== null && (how === 'indoors' || how === 'direct')
          ? sameAs(startOn(crop, season.lastFrost, how), dates.startOn, call('START_ON', crop, frost, how))
          : {}),
        missing,
      };
    case 'set_out_on':
      return {
        rule: sown
          ? say`The day sown and the weeks indoors, but not before the earliest published week about the last spring frost.`
          : say`The last spring frost and the earliest of the published weeks about it; before it where negative.`,
        inputs: [...sowing, ...last, ...weeks, ...(sown ? indoors : [])],
        steps: [dates.setOutOn === null ? null : plannedOut],
        ...(season.lastFrost === null
          ? {}
          : sameAs(setOutOn(crop, season.lastFrost), dates.setOutOn, call('SET_OUT_ON', crop, frost))),
        missing:
          how === 'direct' || how === 'set' ? say`It is not set out: it grows where it is sown.` : missing,
      };
    case 'harvest_from': {
      if (row.ownFrom)
        return { rule: say`Your own first day of harvest, every year.`, inputs: ownEnd('from', row.ownFrom) };
      const from = dates.setOutOn ?? dates.startOn;
      const counted = of.ok ? of.value.maturityFrom : 'planting';
      return {
        rule: say`The usual days to maturity, counted from ${counted === 'seed' ? 'sowing' : counted === 'transplant' ? say`setting out` : 'planting'}. A crop sown where it grows, whose days count from setting out, has its weeks as a seedling on top.`,
        inputs: [
          ...(from === null
            ? []
            : [
                input(
                  dates.setOutOn === null ? phrase('Start on') : phrase('Set out on'),
                  iso(from),
                  phrase('day'),
                  'computed',
                ),
              ]),
          ...figure('days to maturity', phrase('Days to maturity')),
        ],
        steps: [counting(from, maturity, dates.harvestFrom)],
        ...(from === null
          ? {}
          : sameAs(harvestFrom(crop, from), dates.harvestFrom, call('HARVEST_FROM', crop, iso(from)))),
        missing,
      };
    }
    case 'harvest_to':
      if (row.ownTo)
        return { rule: say`Your own last day of harvest, every year.`, inputs: ownEnd('to', row.ownTo) };
      return {
        rule: dates.endsByFrost
          ? say`Frost kills this crop: its harvest ends with the first fall frost.`
          : say`The first day of harvest and the spread of the published days to maturity. How long it can be picked is not published: write your own first and last day where it is longer.`,
        inputs: dates.endsByFrost ? first : figure('days to maturity', phrase('Days to maturity')),
        steps: [
          dates.endsByFrost || dates.harvestFrom === null || dates.harvestTo === null
            ? null
            : `${iso(dates.harvestFrom)} + ${some(dates.harvestTo - dates.harvestFrom, 'day')} = ${iso(dates.harvestTo)}`,
        ],
        missing,
      };
    default: {
      const tender = isTender(of.ok ? of.value : null);
      return {
        rule: say`Counted back from the first fall frost: the usual days to maturity, ${FALL_DAYS} days for slower growth in fall${tender ? say`, ${TENDER_DAYS} more as frost kills it` : ''}, and the weeks as a seedling of a crop that is set out.`,
        inputs: [
          ...first,
          ...figure('days to maturity', phrase('Days to maturity')),
          ...figure('weeks indoors', phrase('Weeks indoors')),
        ],
        steps: [countingBack(season.firstFrost, maturity, tender, dates.latestSowing)],
        ...(season.firstFrost === null
          ? {}
          : sameAs(
              lastSowing(crop, season.firstFrost),
              dates.latestSowing,
              call('LAST_SOWING', crop, iso(season.firstFrost)),
            )),
        missing,
      };
    }
  }
}

/** Days from one day to another that are more than those to maturity are the crop's as a seedling. */
function counting(from: DayNumber | null, maturity: number | null, to: DayNumber | null): string | null {
  if (from === null || to === null || maturity === null) return null;
  const more = to - from - Math.ceil(maturity);
  const seedling = more > 0 ? say` + ${some(more, 'day')} as a seedling` : '';
  return `${iso(from)} + ${some(Math.ceil(maturity), 'day')}${seedling} = ${iso(to)}`;
}

function countingBack(
  frost: DayNumber | null,
  maturity: number | null,
  tender: boolean,
  to: DayNumber | null,
): string | null {
  if (frost === null || to === null || maturity === null) return null;
  const counted = Math.ceil(maturity) + FALL_DAYS + (tender ? TENDER_DAYS : 0);
  const more = frost - to - counted;
  const seedling = more > 0 ? say` − ${some(more, 'day')} as a seedling` : '';
  const frosts = tender ? say` − ${TENDER_DAYS} days as frost kills it` : '';
  return say`${iso(frost)} − ${some(Math.ceil(maturity), 'day')} − ${FALL_DAYS} days for slow growth${frosts}${seedling} = ${iso(to)}`;
}

/** '+ 2' or '− 4'. */
const signed = (weeks: number): string => (weeks < 0 ? `− ${n(-weeks)}` : `+ ${n(weeks)}`);

const ownEnd = (end: 'from' | 'to', at: { month: number; day: number }): readonly WorkingInput[] => [
  input(
    end === 'from' ? phrase('Own harvest from') : phrase('Own harvest to'),
    formatMonthDay(at),
    phrase('month and day'),
    'own',
  ),
];
