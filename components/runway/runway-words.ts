import type { DayNumber } from '../../src/planning/types.js';
import { dayInWords, shortDay } from '../pictures/days.js';
import { shownNumber, unitWord } from '../sheet/shown.js';
import type { ApartReason, ApartRow, Runway, RunwayRow } from './runway-model.js';

/** `52 quart jars`; a piece of nothing in particular is a bare number. */
export function amount(value: number, unit: string, decimals = 1): string {
  const number = shownNumber(value, decimals);
  const word = unit === 'each' ? '' : unitWord(unit, Number(value.toFixed(decimals)));
  return word ? `${number} ${word}` : number;
}

const weekWord = (weeks: number): string => (shownNumber(weeks, 1) === '1' ? 'week' : 'weeks');

/** `26 weeks`, with the range where there is one. */
export function weeksInWords({ weeks, weeksLow, weeksHigh }: RunwayRow): string {
  if (weeks === null) return '';
  const range =
    weeksLow !== null && weeksHigh !== null && weeksLow !== weeksHigh
      ? ` (${shownNumber(weeksLow, 1)}–${shownNumber(weeksHigh, 1)})`
      : '';
  return `${shownNumber(weeks, 1)} ${weekWord(weeks)}${range}`;
}

/** Until when it lasts: `to Oct 1`, with the year where it is another one than today's. */
export function untilInWords({ end, onHand, weeks }: RunwayRow, asOf: DayNumber): string {
  if (end === null) return 'more than ten years';
  if (onHand === 0) return 'none left';
  if (weeks === 0) return 'none to count on';
  return `to ${shortDay(end, asOf)}`;
}

/** The one thing to see of a food: short, over, or neither, and by how much. */
export function verdict({ standing, shortOrOver, left, unit, toPutUp, bought }: RunwayRow): string {
  switch (standing) {
    case 'short':
      return `${amount(-(shortOrOver ?? 0), unit)} short`;
    case 'over':
      return `${amount(shortOrOver ?? 0, unit)} over`;
    case 'even':
      return left !== null && left >= 0.05 ? `${amount(left, unit)} left, none over` : 'just enough';
    case 'in harvest':
      return toPutUp
        ? `${bought ? 'to buy now' : 'harvest now'}: ${amount(toPutUp, unit, 0)} to go`
        : bought
          ? 'supply now'
          : 'harvest now';
    case 'no harvest':
      return bought ? 'next supply not known' : 'next harvest not known';
  }
}

/** What is read out of a bar after the words beside it. */
export function alsoInWords({ onHand, unit, nextHarvest, standing, bought }: RunwayRow): string {
  const said: string[] = [];
  if (onHand !== null) said.push(`${amount(onHand, unit)} on hand`);
  if (nextHarvest !== null) {
    const what = bought ? 'supply' : 'harvest';
    said.push(
      standing === 'in harvest'
        ? `${what} since ${dayInWords(nextHarvest)}`
        : `next ${what} ${dayInWords(nextHarvest)}`,
    );
  }
  return said.join(', ');
}

export const APART: Readonly<Record<ApartReason, { readonly title: string; readonly help: string }>> = {
  'no use': {
    title: 'No use',
    help: 'Nothing was taken of these in the weeks looked at, so they have no day on which they run out.',
  },
  'not from the shelf': {
    title: 'Not eaten from the shelf',
    help: 'Fresh all year: the shelf is not drawn on.',
  },
  'not known': { title: 'Not known yet', help: 'A figure is missing. Choose one to go to its row.' },
};

/** A food without a bar: `Sage, dried: 3 half-pint jars`. */
export const apartInWords = (row: ApartRow): string =>
  row.onHand === null ? '' : `${amount(row.onHand, row.unit)} on hand`;

/** How the foods stand in all: `34 foods run short before the next harvest or supply; …`. */
export function summary({ rows }: Pick<Runway, 'rows'>): string {
  const count = (standing: RunwayRow['standing']): number =>
    rows.filter((row) => row.standing === standing).length;
  const foods = (n: number): string => (n === 1 ? '1 food' : `${n} foods`);
  const [short, over, even] = [count('short'), count('over'), count('even')];
  const parts = [`${foods(short)} ${short === 1 ? 'runs' : 'run'} short before the next harvest or supply`];
  if (over > 0) parts.push(`${over} will have some over`);
  if (even > 0) parts.push(`${even} ${even === 1 ? 'comes' : 'come'} out about even`);
  return `${parts.join('; ')}.`;
}
