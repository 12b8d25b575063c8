import { fromIsoDay } from '../planning/dates.js';
import { ok, type Result, refuse } from '../problem.js';
import { findMeasure } from '../units/index.js';
import { say } from '../words/index.js';
import type { Workbench } from './bench.js';
import { takenIn } from './column-in.js';
import { dateOrder } from './date-order.js';
import { readEntry } from './entry.js';
import {
  COLOURS,
  CONDITIONS,
  isToday,
  type Marking,
  OWN_TYPES,
  SUMMARIES,
  type TakenColumn,
  takenOf,
} from './own-column.js';
import type { SheetState } from './state.js';
import { titleOfSheet } from './state-layout.js';
import type { Json } from './types.js';

export const MAX_CHOICES = 500;
export const MAX_MARKINGS = 30;
const MAX_NOTE = 2000;

/** Fields that only a column of one's own can have. */
export const OWN_FIELDS: ReadonlySet<string> = new Set(['type', 'measure', 'choices', 'decimals', 'plan']);

const unknown = (what: string, value: unknown, known: readonly string[]) =>
  refuse(
    'not-a-choice',
    say`${what} cannot be “${String(value).slice(0, 40)}”.`,
    say`Choose one of: ${known.join(', ')}.`,
  );

/** A note that is too long to be kept. */
export const noteTooLong = (note: string) =>
  note.length > MAX_NOTE
    ? refuse(
        'note-too-long',
        say`That note has ${note.length} characters; ${MAX_NOTE} is the most.`,
        say`Shorten it, or keep it in a column of its own.`,
      )
    : undefined;

/** What is stored for a field that says how a column is read and shown; undefined where that is nothing. */
export function lookField(
  field: string,
  value: unknown,
  sheet: SheetState,
  bench: Workbench,
): Result<Json | undefined> {
  switch (field) {
    case 'type':
      return value === 'any' ? ok(undefined) : oneOf(say`The type of a column`, value, OWN_TYPES);
    case 'summary':
      return oneOf(say`What stands under a column`, value, SUMMARIES);
    case 'measure': {
      const found = findMeasure(String(value));
      if (!found.ok) return found;
      return ok(found.value.kind === 'unit' ? found.value.unit.id : found.value.container.id);
    }
    case 'choices':
      return choices(value);
    case 'decimals':
      return decimals(value);
    case 'note': {
      const note = String(value).trim();
      return noteTooLong(note) ?? ok(note || undefined);
    }
    case 'marks':
      return markings(value as readonly Marking[], bench);
    case 'plan':
      return taken(value as TakenColumn, sheet);
    default:
      return ok(value as Json);
  }
}

const oneOf = <T extends string>(what: string, value: unknown, all: readonly T[]): Result<T> => {
  const found = all.find((each) => each === value);
  return found === undefined ? unknown(what, value, all) : ok(found);
};

function choices(value: unknown): Result<readonly string[] | undefined> {
  const texts = (Array.isArray(value) ? value : [value]).map((each) => String(each).trim());
  const listed = [...new Set(texts.filter((each) => each !== ''))];
  if (listed.length > MAX_CHOICES) {
    return refuse(
      'too-many-choices',
      say`Those are ${listed.length} choices; ${MAX_CHOICES} is the most.`,
      say`Take the type “text” for a column with so many values.`,
    );
  }
  return ok(listed.length === 0 ? undefined : listed);
}

function decimals(value: unknown): Result<number | undefined> {
  const digits = Number(value);
  return Number.isInteger(digits) && digits >= 0 && digits <= 6
    ? ok(digits)
    : refuse('bad-decimals', say`Digits after the point are 0 to 6.`, say`Write a whole number from 0 to 6.`);
}

const COMPARES_NOTHING: ReadonlySet<string> = new Set(['blank', 'filled', 'double']);

function markings(rules: readonly Marking[], bench: Workbench): Result<Json | undefined> {
  if (rules.length > MAX_MARKINGS) {
    return refuse(
      'too-many-markings',
      say`A column has at most ${MAX_MARKINGS} rules for its colours.`,
      say`Join some of them into one.`,
    );
  }
  const stored: Json[] = [];
  for (const { when, colour, value, to } of rules) {
    if (!CONDITIONS.includes(when)) return unknown(say`A rule`, when, CONDITIONS);
    if (!COLOURS.includes(colour)) return unknown(say`A colour`, colour, COLOURS);
    if (COMPARES_NOTHING.has(when)) {
      stored.push({ when, colour });
      continue;
    }
    const day = when === 'before' || when === 'after';
    const read = (typed: Marking['value']) =>
      day && isToday(typed) ? 'today' : readEntry(typed ?? null, day ? 'date' : 'any', dateOrder(bench));
    const [from, end] = [read(value), read(to)];
    if (from === undefined || (when === 'between' && end === undefined)) {
      return refuse(
        'rule-without-value',
        say`The rule “${when}” says nothing to compare with.`,
        when === 'between' ? say`Write both ends.` : say`Write a number, a date or a word.`,
      );
    }
    if (day && from !== 'today' && !(typeof from === 'string' && fromIsoDay(from).ok)) {
      return refuse(
        'rule-without-day',
        say`“${String(from).slice(0, 40)}” is no day to compare with.`,
        say`Write it year first, as in 2026-08-31, or write “today”.`,
      );
    }
    stored.push({ when, colour, value: from, ...(when === 'between' && end !== undefined && { to: end }) });
  }
  return ok(stored.length === 0 ? undefined : stored);
}

function taken(plan: TakenColumn, sheet: SheetState): Result<Json | undefined> {
  const found = takenOf({ plan: plan as unknown as Json });
  if (!found || sheet.kind !== 'own') {
    return refuse(
      'no-such-figure',
      sheet.kind === 'own'
        ? say`There is no planning column “${String(plan.column).slice(0, 40)}”.`
        : say`“${titleOfSheet(sheet)}” has planning columns of its own.`,
      sheet.kind === 'own' ? say`Choose one of the list.` : say`Take it onto a sheet of your own.`,
      { sheet: sheet.id },
    );
  }
  if (!sheet.columnOrder.has(found.by) || takenIn(sheet, found.by)) {
    return refuse(
      'no-naming-column',
      say`No column of this sheet says which row that figure is of.`,
      say`Choose the column that holds the names of foods, dishes or plantings.`,
      { sheet: sheet.id },
    );
  }
  return ok({ kind: found.kind, column: found.column, by: found.by });
}
