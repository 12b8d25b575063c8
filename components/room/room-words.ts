import type { DayNumber } from '../../src/planning/types.js';
import { turnedUnit } from '../../src/units/system.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { dayInWords, shortDay } from '../pictures/days.js';
import { amount } from '../runway/runway-words.js';
import { shownNumber } from '../sheet/shown.js';
import type { EatFirstRow, RoomModel, Storey, StoreyRoom } from './room-model.js';

export const STOREYS: Readonly<
  Record<
    Storey,
    { readonly title: string; readonly one: string; readonly unit: string; readonly setting: string }
  >
> = {
  shelf: { title: phrase('On the shelves'), one: 'quart jar', unit: 'quart jars', setting: 'Shelf room' },
  freezer: {
    title: phrase('In the freezer'),
    one: 'cubic foot',
    unit: 'cubic feet',
    setting: 'Freezer room',
  },
};

/** A unit in the measures that the household reads. */
const turned = (unit: string): string => turnedUnit(unit)?.unit ?? unit;

/** How much of a storey, in its unit, as the household measures. */
export function roomAmount(storey: Storey, n: number): string {
  const other = turnedUnit(STOREYS[storey].unit);
  return shownNumber(n * (other?.factor ?? 1), storey === 'shelf' || other ? 0 : 1);
}

function inUnit(storey: Storey, n: number): string {
  const words = roomAmount(storey, n);
  const { one, unit } = STOREYS[storey];
  return `${words} ${spoken(turned(words === '1' ? one : unit))}`;
}

/** What a storey is measured in, as its heading says it. */
export const unitOfStorey = (storey: Storey): string => spoken(turned(STOREYS[storey].unit));

/** How one storey stands over the year, in a sentence or two. */
export function storeyInWords({ storey, room, weeks, full, most }: StoreyRoom, asOf: DayNumber): string {
  const top = weeks[most];
  if (!top) return say`The day that the figures are for makes no year.`;
  const greatest = say`${inUnit(storey, top.taken)} in the week of ${shortDay(top.from, asOf)}`;
  if (top.taken === 0 && room === null) return say`Nothing stands there, and nothing is planned for it.`;
  if (room === null) {
    return say`At most ${greatest}. How much there is room for is not written: see “${spoken(STOREYS[storey].setting)}” on the Household sheet.`;
  }
  const first = weeks[full];
  if (!first)
    return top.taken === 0
      ? say`Nothing stands there, and nothing is planned for it: ${inUnit(storey, room)} free.`
      : say`All of it fits: at most ${greatest}, and there is room for ${roomAmount(storey, room)}.`;
  const over = inUnit(storey, first.taken - room);
  const when =
    full === 0
      ? say`It does not fit now: ${over} too many`
      : say`The first week that does not fit is that of ${shortDay(first.from, asOf)}: ${over} too many`;
  const peak = most === full ? '' : say` At most ${greatest}.`;
  return `${say`${when}, with room for ${roomAmount(storey, room)}.`}${peak}`;
}

/** One week in a sentence, to be read out. */
export function weekInWords({ storey, room }: StoreyRoom, week: StoreyRoom['weeks'][number]): string {
  const said = say`Week of ${dayInWords(week.from)}: ${inUnit(storey, week.taken)}`;
  if (room === null) return `${said}.`;
  return week.over
    ? say`${said}, ${roomAmount(storey, week.taken - room)} more than fit.`
    : say`${said}, room for ${roomAmount(storey, room - week.taken)} more.`;
}

/** `18 quart jars over; eaten first they free 18 quart jars: 1.2 a week on top of the usual.` */
export function eatFirstInWords({ storey, over, countedIn, frees, pace }: EatFirstRow): string {
  const free = say`${amount(over, countedIn ?? '')} over; eaten first, room for ${inUnit(storey, frees)}`;
  return pace === null
    ? say`${free}. There is no week left to eat it in before.`
    : say`${free}: ${shownNumber(pace, 2)} a week on top of the usual until then.`;
}

/** What all surpluses make together, for each storey that is too small. */
export function freedInWords({ storeys, eatFirst }: RoomModel): string {
  const parts = storeys.flatMap(({ storey, full, weeks, room, most }) => {
    if (full < 0 || room === null) return [];
    const freed = eatFirst.reduce((sum, each) => sum + (each.storey === storey ? each.frees : 0), 0);
    const lacks = (weeks[most]?.taken ?? 0) - room;
    if (freed <= 0) return [];
    return [
      freed >= lacks
        ? say`room for ${inUnit(storey, freed)}, which is enough`
        : say`room for ${inUnit(storey, freed)} of the ${inUnit(storey, lacks)} that are lacking`,
    ];
  });
  return parts.length === 0 ? '' : say`All of it together makes ${parts.join(say`, and `)}.`;
}

/** What is said where room runs out and nothing is over. */
export const nothingOver = (model: RoomModel): string =>
  model.storeys.some(({ full }) => full >= 0) && model.eatFirst.length === 0
    ? say`No food is over what it takes to last to its next harvest: make room, or put up less.`
    : '';
