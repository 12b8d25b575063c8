import { cautionsFor } from '../../facts/index.js';
import { counted, phrase, say } from '../../words/index.js';
import { isDay, toIsoDay } from '../dates.js';
import { measureName } from '../measure.js';
import { figureIn, formulaIn, inputIn } from '../measured.js';
import { formatMonthDay } from '../parse-date.js';
import type { LineReckoning } from '../reckon.js';
import type { Season } from '../season.js';
import type { DayNumber, Origin, PlanValue, Working, WorkingInput } from '../types.js';
import { tidy } from '../words.js';
import { changesOf } from './changes.js';
import { closing, n } from './closing.js';

const NO_DAY = '–';

/** What a column's explanation adds to its title, value and unit. */
export type Explained = Omit<Working, 'title' | 'value' | 'unit' | 'inputs' | 'steps'> & {
  readonly inputs?: readonly WorkingInput[];
  /** Texts of the steps; null ones are left out. */
  readonly steps?: readonly (string | null)[];
};

/** Puts a working together; `missing` stands only beside a blank. */
export function working(title: string, value: PlanValue, unit: string, said: Explained): Working {
  const { inputs = [], steps = [], missing, formula, ...rest } = said;
  const shown = figureIn(value, unit);
  const blank = value === null;
  // A blank is no number that went in; what would fill it is said under `missing`.
  const known = inputs
    .map(inputIn)
    .filter(({ value: given }) =>
      typeof given === 'number' ? Number.isFinite(given) : given !== null && given !== NO_DAY,
    );
  const texts = steps.filter((text) => text !== null);
  const end = closing(shown.value, shown.unit, known, texts);
  return {
    title,
    value: shown.value,
    unit: shown.unit,
    inputs: known,
    steps: [...texts, ...(end === null ? [] : [end])].map((text) => ({ text })),
    changes: changesOf(known, missing),
    ...rest,
    ...(formula !== undefined && !blank ? { formula: formulaIn(formula, unit) } : {}),
    ...(missing !== undefined && blank ? { missing } : {}),
  };
}

/** One number of a working. */
export function input(
  name: string,
  value: PlanValue,
  unit: string,
  origin: Origin,
  source?: string,
): WorkingInput {
  const tidied = typeof value === 'number' ? tidy(value) : value;
  return source === undefined || source === ''
    ? { name, value: tidied, unit, origin }
    : { name, value: tidied, unit, origin, source };
}

export { n };

/** A number of something, for reading: `2.5 weeks`, `1 week`. */
export const some = (value: number, one: string, many = `${one}s`): string =>
  counted(value, n(value), one, many);

/** A number of containers or units by id. */
export const amount = (value: number, measure: string | null): string =>
  measure === null ? n(value) : `${n(value)} ${measureName(measure, value)}`;

/** The counted-in container in the plural, or words where there is none. */
export const countedUnit = (line: LineReckoning): string =>
  line.countedIn === null ? 'containers' : measureName(line.countedIn);

export const perWeek = (line: LineReckoning): string => say`${countedUnit(line)} a week`;

/** ISO day, or a dash. */
export const iso = (day: DayNumber | null): string => (isDay(day) ? toIsoDay(day) : NO_DAY);

/** An argument of a formula: a number, a text, or left empty. */
export type Argument = number | string | null;

function written(argument: Argument): string {
  if (argument === null) return '';
  return typeof argument === 'number' ? String(tidy(argument)) : `"${argument.replaceAll('"', '""')}"`;
}

/** `=NAME(1, "2026-01-01")`; empty arguments at the end are left out. */
export function call(name: string, ...args: readonly Argument[]): string {
  const last = args.findLastIndex((each) => each !== null);
  return `=${name}(${args
    .slice(0, last + 1)
    .map(written)
    .join(', ')})`;
}

/** The two ends of a season as arguments. */
export const seasonArguments = (season: Season | null): readonly [Argument, Argument] =>
  season ? [formatMonthDay(season.from), formatMonthDay(season.to)] : [null, null];

/** The season in words, as an input. */
export const seasonInputs = (line: LineReckoning): readonly WorkingInput[] =>
  line.season
    ? [
        input(
          phrase('Fresh season'),
          say`${formatMonthDay(line.season.from)} to ${formatMonthDay(line.season.to)}`,
          phrase('month and day'),
          'own',
        ),
      ]
    : [];

/** As-of date, as an input. */
export const asOfInput = (line: LineReckoning): WorkingInput =>
  input(phrase('As-of date'), iso(line.household.asOf), phrase('day'), 'entered');

/** Food-safety words for the line; `old` where the age of the food is at issue. */
export const cautionsOf = (line: LineReckoning, old: boolean): readonly string[] =>
  cautionsFor(line.input.food, line.input.way, old).map(({ text }) => text);
