import type { DayNumber } from '../../src/planning/types.js';
import { counted, phrase, say } from '../../src/words/index.js';
import { dayInWords, shortDay } from '../pictures/days.js';
import { shownNumber, unitWord } from '../sheet/shown.js';
import type { ApartReason, ApartRow, Runway, RunwayRow } from './runway-model.js';

/** `52 quart jars`; a piece of nothing in particular is a bare number. */
export function amount(value: number, unit: string, decimals = 1): string {
  const number = shownNumber(value, decimals);
  const word = unit === 'each' ? '' : unitWord(unit, Number(value.toFixed(decimals)));
  return word ? `${number} ${word}` : number;
}

/** `26 weeks`, with the range where there is one. */
export function weeksInWords({ weeks, weeksLow, weeksHigh }: RunwayRow): string {
  if (weeks === null) return '';
  const range =
    weeksLow !== null && weeksHigh !== null && weeksLow !== weeksHigh
      ? ` (${shownNumber(weeksLow, 1)}–${shownNumber(weeksHigh, 1)})`
      : '';
  return counted(Number(weeks.toFixed(1)), shownNumber(weeks, 1), 'week') + range;
}

/** Until when it lasts: `to Oct 1`, with the year where it is another one than today's. */
export function untilInWords({ end, onHand, weeks }: RunwayRow, asOf: DayNumber): string {
  if (end === null) return say`more than ten years`;
  if (onHand === 0) return say`none left`;
  if (weeks === 0) return say`none to count on`;
  return say`to ${shortDay(end, asOf)}`;
}

/** The one thing to see of a food: short, over, or neither, and by how much. */
export function verdict({ standing, shortOrOver, left, unit, toPutUp, bought }: RunwayRow): string {
  switch (standing) {
    case 'short':
      return say`${amount(-(shortOrOver ?? 0), unit)} short`;
    case 'over':
      return say`${amount(shortOrOver ?? 0, unit)} over`;
    case 'even':
      return left !== null && left >= 0.05 ? say`${amount(left, unit)} left, none over` : say`just enough`;
    case 'in harvest':
      if (!toPutUp) return bought ? say`supply now` : say`harvest now`;
      return bought
        ? say`to buy now: ${amount(toPutUp, unit, 0)} to go`
        : say`harvest now: ${amount(toPutUp, unit, 0)} to go`;
    case 'no harvest':
      return bought ? say`next supply not known` : say`next harvest not known`;
  }
}

/** What is read out of a bar after the words beside it. */
export function alsoInWords({ onHand, unit, nextHarvest, standing, bought }: RunwayRow): string {
  const said: string[] = [];
  if (onHand !== null) said.push(say`${amount(onHand, unit)} on hand`);
  if (nextHarvest !== null) {
    const day = dayInWords(nextHarvest);
    if (standing === 'in harvest') said.push(bought ? say`supply since ${day}` : say`harvest since ${day}`);
    else said.push(bought ? say`next supply ${day}` : say`next harvest ${day}`);
  }
  return said.join(', ');
}

export const APART: Readonly<Record<ApartReason, { readonly title: string; readonly help: string }>> = {
  'no use': {
    title: phrase('No use'),
    help: phrase(
      'Nothing was taken of these in the weeks looked at, so they have no day on which they run out.',
    ),
  },
  'not from the shelf': {
    title: phrase('Not eaten from the shelf'),
    help: phrase('Fresh all year: the shelf is not drawn on.'),
  },
  'not known': {
    title: phrase('Not known yet'),
    help: phrase('A figure is missing. Choose one to go to its row.'),
  },
};

/** A food without a bar: `Sage, dried: 3 half-pint jars`. */
export const apartInWords = (row: ApartRow): string =>
  row.onHand === null ? '' : say`${amount(row.onHand, row.unit)} on hand`;

/** How the foods stand in all: `34 foods run short before the next harvest or supply; …`. */
export function summary({ rows }: Pick<Runway, 'rows'>): string {
  const count = (standing: RunwayRow['standing']): number =>
    rows.filter((row) => row.standing === standing).length;
  const [short, over, even] = [count('short'), count('over'), count('even')];
  const parts = [
    short === 1
      ? say`1 food runs short before the next harvest or supply`
      : say`${short} foods run short before the next harvest or supply`,
  ];
  if (over > 0) parts.push(say`${over} will have some over`);
  if (even > 0) parts.push(even === 1 ? say`1 comes out about even` : say`${even} come out about even`);
  return `${parts.join('; ')}.`;
}
