import { phrase, say } from '../../words/index.js';
import { atBasis } from '../guide.js';
import type { LineReckoning } from '../reckon.js';
import type { Origin, WorkingInput } from '../types.js';
import { LEAST_WEEKS, MOST_WEEKS } from '../use.js';
import { amount, countedUnit, input, iso, n, perWeek, some } from './parts.js';

/** Where the use per week of the line comes from. */
export const useOrigin = (line: LineReckoning): Origin => line.use?.origin ?? 'learned';

const USE_NAMES: Readonly<Record<string, string>> = {
  own: phrase('Use per week, your own'),
  learned: phrase('Use per week, learned from draws'),
  computed: phrase('Use per week, by the week plan'),
  published: phrase('Use per week, a published suggestion'),
};

/** Use per week at its usual figure, as an input; none when it is not known. */
export function useInput(line: LineReckoning): readonly WorkingInput[] {
  if (!line.use) return [];
  return [
    input(
      USE_NAMES[line.use.origin] ?? phrase('Use per week'),
      line.use.usual,
      perWeek(line),
      line.use.origin,
    ),
  ];
}

/** Use per week as the harvest is planned on: the range's end that the basis counts on. */
export function plannedInputs(line: LineReckoning): readonly WorkingInput[] {
  const { use, planned, household } = line;
  if (!use || planned === null) return [];
  if (planned === use.usual) return useInput(line);
  const end = atBasis({ low: 0, usual: 1, high: 2 }, household.basis, 'high') === 2 ? 'higher' : 'lower';
  return [
    input(
      say`${USE_NAMES[use.origin]}, ${end} end (${household.basis} basis)`,
      planned,
      perWeek(line),
      use.origin,
    ),
  ];
}

/** What would fill a blank use per week. */
export function useMissing(line: LineReckoning): string {
  if (line.countedIn === null) return containerMissing;
  const weeks = Math.floor(line.observed.weeks * 10) / 10;
  const known =
    line.household.ledgerFrom === null
      ? say`no draw has been written down yet`
      : say`there are ${some(weeks, 'week')} so far with a draws ledger and something on the shelf`;
  return say`Write your own use per week in Foods, or go on writing down draws: it takes ${LEAST_WEEKS} weeks to learn from, and ${known}.`;
}

export const containerMissing = phrase('Choose the container that this food is counted in.');

/** How use was learned, in steps with its numbers. */
export function learnedSteps(line: LineReckoning): readonly (string | null)[] {
  const { learned, from } = line.observed;
  if (!learned) return [];
  const unit = countedUnit(line);
  return [
    say`observed from ${iso(from)}: ${some(learned.weeks, 'week')} with stock, outside the fresh season (${MOST_WEEKS} at most)`,
    say`${some(learned.draws, 'draw')} that count as use: ${n(learned.total)} ${unit} in all`,
    say`${n(learned.total)} ${unit} ÷ ${some(learned.weeks, 'week')} = ${amount(learned.usual, line.countedIn)} a week`,
    learned.draws === 0
      ? null
      : say`a typical draw is ${amount(learned.typical, line.countedIn)} (Σa² ÷ Σa), taken ${n(learned.times)} times`,
  ];
}

/** Stock counted on, as inputs: on hand, and what is left out of it. */
export function stockInputs(line: LineReckoning): readonly WorkingInput[] {
  const { onHand, countedOn } = line;
  if (onHand === null || countedOn === null) return [];
  const unit = countedUnit(line);
  const past = onHand - countedOn;
  return past > 1e-9
    ? [
        input(phrase('On hand'), onHand, unit, 'computed'),
        input(phrase('Past best-by and not counted on'), past, unit, 'computed'),
        input(phrase('Counted on'), countedOn, unit, 'computed'),
      ]
    : [input(phrase('Counted on'), countedOn, unit, 'computed')];
}

/** What would fill a blank stock. */
export const stockMissing = (line: LineReckoning): string =>
  line.countedIn === null
    ? containerMissing
    : say`Nothing that stands there can be turned into ${countedUnit(line)}: count the lots in a measure that can, or count the line in another container.`;
