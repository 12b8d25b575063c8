import { findCrop, germanMeant } from '../facts/index.js';
import { dayToCivil, FIRST_YEAR, isDay, LAST_YEAR } from '../planning/dates.js';
import { parseDay, parseMonthDay } from '../planning/parse-date.js';
import { BASES, WAYS_KEPT } from '../planning/types.js';
import { ok, type Result, refuse } from '../problem.js';
import { findContainer, findUnit, orList } from '../units/index.js';
import { localNumber, numberFormat, quoted, say, spoken } from '../words/index.js';
import { type ArgumentDeclaration, type FunctionDeclaration, isListArgument } from './declare.js';

/**
 * A value as the engine hands it over: a scalar, or a range row by row. Spreadsheet dates come as `{ day }`.
 */
export type Scalar = number | string | boolean | null | { readonly day: number };
export type GivenValue = Scalar | readonly (readonly Scalar[])[];

/** No name of a food or container is longer; what is, is a slip and would fill a message. */
const LONGEST_NAME = 120;

const isRange = (value: GivenValue | undefined): value is readonly (readonly Scalar[])[] =>
  Array.isArray(value);

const shown = (value: Scalar): string =>
  value === null
    ? say`nothing`
    : typeof value === 'object'
      ? say`a date`
      : typeof value === 'string'
        ? quoted(value.slice(0, 60))
        : typeof value === 'number' && !Number.isFinite(value)
          ? say`something that is no number`
          : localNumber(String(value));

const plain = (n: number): string => numberFormat({ maximumFractionDigits: 9 }).format(n);

/** An argument by its name, which stays as formulas write it, with its help. */
const helpWith = ({ name, help }: ArgumentDeclaration): string => `${name}: ${spoken(help)}`;

const wrong = (arg: ArgumentDeclaration, value: Scalar, wanted: string) =>
  refuse('bad-argument', say`“${arg.name}” takes ${wanted}, not ${shown(value)}.`, helpWith(arg));

function asNumber(value: Scalar, arg: ArgumentDeclaration): Result<number> {
  const number =
    typeof value === 'number'
      ? value
      : typeof value === 'string' && value.trim() !== ''
        ? Number(value)
        : Number.NaN;
  if (!Number.isFinite(number)) return wrong(arg, value, say`a number`);
  if (arg.least !== undefined && number < arg.least)
    return wrong(arg, value, say`a number of ${plain(arg.least)} or more`);
  if (arg.most !== undefined && number > arg.most)
    return wrong(arg, value, say`a number of ${plain(arg.most)} or less`);
  return ok(number);
}

function asDay(value: Scalar, arg: ArgumentDeclaration): Result<number> {
  if (typeof value === 'object' && value !== null) {
    return isDay(value.day)
      ? ok(value.day)
      : wrong(arg, value, say`a date from ${FIRST_YEAR} to ${LAST_YEAR}`);
  }
  return typeof value === 'string' ? parseDay(value) : wrong(arg, value, say`a date, as in "2026-05-24"`);
}

function asMonthDay(value: Scalar, arg: ArgumentDeclaration): Result<unknown> {
  if (typeof value === 'string') {
    const at = parseMonthDay(value);
    if (at.ok) return at;
  }
  const day = asDay(value, arg);
  if (!day.ok) return wrong(arg, value, say`a month and a day, as in "05-24"`);
  const { month, day: date } = dayToCivil(day.value);
  return ok({ month, day: date });
}

function oneOf(value: Scalar, among: readonly string[], arg: ArgumentDeclaration): Result<string> {
  const wanted = typeof value === 'object' ? '' : String(value).trim().toLowerCase();
  const found = among.find((each) => each === wanted);
  return found === undefined
    ? wrong(arg, value, orList(among.map((each) => `"${spoken(each)}"`)))
    : ok(found);
}

/** A way kept or a basis, in English or German whatever is spoken. */
function asWord(
  what: 'ways' | 'words',
  among: readonly string[],
  value: Scalar,
  arg: ArgumentDeclaration,
): Result<string> {
  const meant = typeof value === 'string' ? germanMeant(what, among, value) : undefined;
  return oneOf(meant ?? value, among, arg);
}

function asMeasure(text: string): Result<string> {
  const container = findContainer(text);
  if (container.ok) return ok(container.value.id);
  const unit = findUnit(text);
  return unit.ok ? ok(unit.value.id) : container;
}

function asName(value: Scalar, arg: ArgumentDeclaration): Result<string> {
  if (typeof value !== 'string') return wrong(arg, value, say`a name in quotation marks`);
  const text = value;
  if (text.length > LONGEST_NAME) return wrong(arg, `${text.slice(0, 40)}…`, say`a shorter name`);
  switch (arg.kind) {
    case 'crop': {
      const crop = findCrop(text);
      return crop.ok ? ok(crop.value.name) : crop;
    }
    case 'container': {
      const container = findContainer(text);
      return container.ok ? ok(container.value.id) : container;
    }
    case 'unit': {
      const unit = findUnit(text);
      return unit.ok ? ok(unit.value.id) : unit;
    }
    case 'measure':
      return asMeasure(text);
    default:
      return ok(text.trim());
  }
}

function asScalar(value: Scalar, arg: ArgumentDeclaration): Result<unknown> {
  switch (arg.kind) {
    case 'number':
      return asNumber(value, arg);
    case 'date':
      return asDay(value, arg);
    case 'month-day':
      return asMonthDay(value, arg);
    case 'basis':
      return asWord('words', BASES, value, arg);
    case 'way kept':
      return asWord('ways', WAYS_KEPT, value, arg);
    default:
      return asName(value, arg);
  }
}

function asList(value: GivenValue, arg: ArgumentDeclaration): Result<unknown> {
  const list = isRange(value) ? value.flat() : [value];
  const out: unknown[] = [];
  for (const item of list) {
    if (item === null || item === '') {
      if (arg.kind !== 'numbers') out.push(null);
      continue;
    }
    const read = arg.kind === 'dates with blanks' ? asDay(item, arg) : asNumber(item, arg);
    if (!read.ok) return read;
    out.push(read.value);
  }
  return ok(out);
}

function readOne(value: GivenValue | undefined, arg: ArgumentDeclaration): Result<unknown> {
  if (isListArgument(arg) && value !== undefined) return asList(value, arg);
  const scalar = isRange(value)
    ? value.length === 1 && value[0]!.length === 1
      ? value[0]![0]!
      : undefined
    : value;
  if (isRange(value) && scalar === undefined) {
    return refuse(
      'bad-argument',
      say`“${arg.name}” takes one value, not a range of cells.`,
      `${say`Give it a single cell.`} ${helpWith(arg)}`,
    );
  }
  if (scalar === undefined || scalar === null || scalar === '') {
    if (scalar === null && arg.blank !== undefined) return ok(arg.blank);
    if (arg.optional) return ok(undefined);
    return refuse('missing-argument', say`“${arg.name}” is missing or blank.`, helpWith(arg));
  }
  return asScalar(scalar, arg);
}

/** Checks and converts what a formula gave, argument by argument; the first that does not fit says why. */
export function readArguments(
  declaration: FunctionDeclaration,
  given: readonly (GivenValue | undefined)[],
): Result<readonly unknown[]> {
  if (given.length > declaration.arguments.length) {
    return refuse(
      'too-many-arguments',
      say`${declaration.name} takes at most ${declaration.arguments.length} arguments, not ${given.length}.`,
      spoken(declaration.summary),
    );
  }
  const values: unknown[] = [];
  for (const [i, arg] of declaration.arguments.entries()) {
    const read = readOne(given[i], arg);
    if (!read.ok) return read;
    values.push(read.value);
  }
  return ok(values);
}
