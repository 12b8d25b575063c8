import type { Typed } from '../book/commands.js';
import { losesDigits, readEntry } from '../book/entry.js';
import { toIsoDay } from '../planning/dates.js';
import { formatMonthDay, parseDay, parseMonthDay } from '../planning/parse-date.js';
import { cut, excerpt } from '../problem.js';
import { phrase, say, spoken } from '../words/index.js';
import { asMeant } from './harmless.js';
import { MAX_TEXT } from './limits.js';
import { type Anew, numberFrom, shownAnew, withoutUnseen } from './read-number.js';
import { asText, isSourceDay, isSourceFormula, type Reading, type SourceCell } from './types.js';

/** A cell as the book takes it, and what is wrong with it where something is. */
export interface CellRead {
  readonly typed: Typed;
  readonly problem?: { readonly code: string; readonly message: string; readonly mend: string };
  /** Text that looks like a formula, and was brought in as text. */
  readonly likeFormula?: true;
  /** Why the value will show another way than it is written in the file. */
  readonly anew?: Anew;
}

const TOO_LONG = {
  code: 'too-many-digits',
  message: phrase('This number has more digits than a number holds, so it stays text.'),
  mend: phrase('Round it; if it is a code, bring the column in as text.'),
};

const YES = /^(?:true|yes|y|x|✓|✔|1)$/i;
const NO = /^(?:false|no|n|0)$/i;

/** `yes` and `no`, as the language spoken now has them. */
const isYes = (text: string): boolean => YES.test(text) || text.toLowerCase() === say`yes`;
const isNo = (text: string): boolean => NO.test(text) || text.toLowerCase() === say`no`;
export const isTickWord = (text: string): boolean =>
  /^(?:true|false|yes|no|y|n|x|✓|✔)$/i.test(text) || [say`yes`, say`no`].includes(text.toLowerCase());

/** Halves of a sign that stand alone: a file of text cannot hold them. */
const HALVES = /[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

/** Text as a cell takes it, whatever it looks like: what would be read as a formula or a number stays text. */
export function textEntry(text: string, type: Reading['type']): string {
  if (text.startsWith("'") || text.trimStart().startsWith('=')) return `'${text}`;
  return type === 'any' && readEntry(text, 'any') !== text ? `'${text}` : text;
}

/**
 * Reads one cell of a file as its column is read. What does not fit stays as it is written, as text, with the
 * reason: nothing is lost.
 */
export function readCell(cell: SourceCell | undefined, as: Reading): CellRead {
  if (cell === undefined || cell === null) return { typed: null };
  if (isSourceFormula(cell)) return readCell(cell.value, as);
  if (isSourceDay(cell)) return readDay(cell.day, as);
  if (typeof cell === 'number') return readFigure(cell, as);
  if (typeof cell === 'boolean') return readTruth(cell, as);
  return readText(cell, as);
}

function readDay(day: string, { type }: Reading): CellRead {
  if (type === 'number' || type === 'tick') return kept(day, type, (text) => say`“${text}” takes no date.`);
  if (type === 'month-day') return { typed: day.slice(5) };
  if (type === 'date' && !parseDay(day).ok)
    return readText(day, { type, dateOrder: 'day first', decimalComma: false, choices: [] });
  return { typed: day };
}

function readFigure(n: number, as: Reading): CellRead {
  if (as.type === 'number' || as.type === 'any') return { typed: n };
  if (as.type === 'tick' && (n === 0 || n === 1)) return { typed: n === 1 };
  return readText(String(n), as);
}

function readTruth(truth: boolean, as: Reading): CellRead {
  if (as.type === 'tick' || as.type === 'any') return { typed: truth };
  return readText(truth ? 'true' : 'false', as);
}

function readText(written: string, as: Reading): CellRead {
  if (written.trim() === '') return { typed: null };
  const meant = asMeant(written);
  const text = meant.replace(HALVES, '\uFFFD');
  if (text.length > MAX_TEXT) {
    return {
      typed: textEntry(cut(text, MAX_TEXT - 1), as.type),
      problem: {
        code: 'text-too-long',
        message: say`This text has ${text.length} characters; a cell holds ${MAX_TEXT}. The rest is left out.`,
        mend: say`Split it over several cells in the file.`,
      },
    };
  }
  if (text !== meant) {
    return {
      typed: textEntry(text, as.type),
      problem: {
        code: 'broken-sign',
        message: say`This text has half of a sign in it; a box stands in its place.`,
        mend: say`Look at the text and write the sign again.`,
      },
    };
  }
  // Marked as text: in a column of no type it must not become a number.
  const read = meant !== written && as.type === 'any' ? { typed: textEntry(text, 'any') } : readAs(text, as);
  if (!text.trimStart().startsWith('=')) return read;
  return { ...read, likeFormula: true };
}

function readAs(text: string, as: Reading): CellRead {
  const plain = withoutUnseen(text);
  switch (as.type) {
    case 'number': {
      const value = numberFrom(text, as.decimalComma);
      if (value !== undefined && losesDigits(plain))
        return { typed: textEntry(text, 'number'), problem: TOO_LONG };
      if (value !== undefined) return { typed: value, ...(shownAnew(text) && { anew: shownAnew(text)! }) };
      const read = kept(text, 'number', (shown) => say`“${shown}” is not a number.`);
      if (numberFrom(text, !as.decimalComma) === undefined) return read;
      const mend = as.decimalComma
        ? say`If points are meant as decimal signs here, say so for the whole column.`
        : say`If commas are meant as decimal signs here, say so for the whole column.`;
      return { ...read, problem: { ...read.problem!, mend } };
    }
    case 'date': {
      const day = parseDay(plain, as.dateOrder);
      if (day.ok)
        return { typed: toIsoDay(day.value), ...(hasShortYear(plain) && { anew: 'short year' as const }) };
      return { typed: textEntry(text, 'date'), problem: day.problem };
    }
    case 'month-day': {
      const at = parseMonthDay(plain);
      if (at.ok) return { typed: formatMonthDay(at.value) };
      return { typed: textEntry(text, 'month-day'), problem: at.problem };
    }
    case 'tick':
      if (isYes(plain)) return { typed: true };
      return isNo(plain)
        ? { typed: false }
        : kept(text, 'tick', (shown) => say`“${shown}” is neither yes nor no.`);
    case 'choice':
      return readChoice(text, as.choices);
    case 'text':
    case 'any':
      return { typed: text.trimStart().startsWith('=') ? textEntry(text, as.type) : keepApostrophe(text) };
  }
}

const hasShortYear = (text: string): boolean => /^\d{1,2}\D+\d{1,2}\D+\d{2}$/.test(text);

const keepApostrophe = (text: string): string => (text.startsWith("'") ? `'${text}` : text);

function readChoice(text: string, choices: readonly string[]): CellRead {
  const wanted = text.trim().toLowerCase();
  const found =
    choices.find((choice) => choice === text.trim()) ??
    choices.find((choice) => choice.toLowerCase() === wanted);
  if (found !== undefined) return { typed: textEntry(found, 'choice') };
  if (choices.length === 0) return { typed: textEntry(text.trim(), 'choice') };
  return {
    typed: textEntry(text.trim(), 'choice'),
    problem: {
      code: 'not-a-choice',
      message: say`“${excerpt(text, 40)}” is not one of this column’s choices.`,
      mend: say`Choose one of: ${excerpt(choices.join(', '), 200)}.`,
    },
  };
}

const MENDS: Readonly<Record<string, string>> = {
  number: phrase('Write it in digits alone, as in 12 or 2.5; the unit belongs in the title.'),
  tick: phrase('Write yes or no.'),
};

const kept = (text: string, type: Reading['type'], why: (shown: string) => string): CellRead => ({
  typed: textEntry(text, type),
  problem: {
    code: `not-a-${type}`,
    message: why(excerpt(asText(text), 40)),
    mend: spoken(MENDS[type] ?? phrase('Write it as the column asks.')),
  },
});
