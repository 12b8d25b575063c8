import { readTypedNumber } from '../../book/index.js';
import { ok, type Result, refuse } from '../../problem.js';
import { phrase, say, spoken } from '../../words/index.js';
import type { BookReading } from '../book-reading.js';
import { foodKey, lineKey } from '../food-key.js';

/** A food as it is kept, of which something can be taken. */
export interface TakeLine {
  readonly key: string;
  readonly food: string;
  readonly way: string;
  /** Id of what it is counted in; null where nobody has written that. */
  readonly counted: string | null;
  /** What is left, in that; null where it cannot be reckoned. */
  readonly left: number | null;
  /** How many draws there were of it. */
  readonly draws: number;
}

/** What one draw says, before it is a row. */
export interface Take {
  readonly line: TakeLine;
  readonly amount: number;
  /** Id of the measure; null for what the food is counted in. */
  readonly measure: string | null;
}

/**
 * What the Shelf holds, as Foods lists it, and as the Shelf says it where Foods does not: what is taken most often
 * first, and of as many draws in the order of the sheets.
 */
export function takeLines(live: BookReading): TakeLine[] {
  const drawn = new Map<string, number>();
  for (const { key } of rowsOf(live, 'draws')) drawn.set(key, (drawn.get(key) ?? 0) + 1);
  const lines = new Map<string, TakeLine>();
  for (const { key, food, way, text, figure } of rowsOf(live, 'foods')) {
    const counted = text('counted_in') || null;
    lines.set(key, { key, food, way, counted, left: figure('on_hand'), draws: drawn.get(key) ?? 0 });
  }
  const listed = new Set(lines.keys());
  for (const { key, food, way, text, figure } of rowsOf(live, 'shelf')) {
    if (listed.has(key)) continue;
    const [counted, left, before] = [text('container') || null, figure('left'), lines.get(key)];
    const draws = drawn.get(key) ?? 0;
    if (!before) lines.set(key, { key, food, way, counted, left, draws });
    else lines.set(key, { ...before, left: before.counted === counted ? sum(before.left, left) : null });
  }
  return [...lines.values()]
    .filter(({ food, way, left }) => food !== '' && way !== '' && left !== 0)
    .sort((a, b) => b.draws - a.draws);
}

const sum = (a: number | null, b: number | null): number | null => (a === null || b === null ? null : a + b);

/** The rows of a sheet that name foods as they are kept, with how their cells are read. */
function* rowsOf(live: BookReading, kind: 'foods' | 'shelf' | 'draws') {
  const sheet = live.sheetOfKind(kind);
  if (sheet === undefined) return;
  for (const row of live.rowIds(sheet)) {
    const text = (column: string): string => String(live.value(sheet, row, column) ?? '').trim();
    const figure = (column: string): number | null => {
      const value = live.value(sheet, row, column);
      return typeof value === 'number' ? value : null;
    };
    const [food, way] = [text('food'), text('way')];
    yield { key: lineKey(foodKey(food), way.toLowerCase()), food, way, text, figure };
  }
}

/** The lines whose food or way holds every word of `text`, numbers left out; all of them where it is blank. */
export function linesNamed(lines: readonly TakeLine[], text: string): TakeLine[] {
  const exact = lines.filter(({ food }) => foodKey(food) === foodKey(text));
  if (exact.length > 0) return exact;
  const words = text.toLowerCase().split(/\s+/).filter(Boolean);
  return lines.filter((line) => {
    const all = `${line.food} ${line.way} ${spoken(line.way)}`.toLowerCase();
    return words.every((word) => all.includes(word));
  });
}

const HOW = phrase('Write it in digits, as in 2, 0.5 or 1 1/2.');

/** How much was typed, above 0. Refused (`no-amount`) where it is no such number. */
export function amountTyped(typed: string): Result<number> {
  const n = readTypedNumber(typed.trim());
  if (n === undefined)
    return refuse('no-amount', say`“${typed.trim().slice(0, 40)}” is not a number.`, spoken(HOW));
  if (n > 0) return ok(n);
  return refuse('no-amount', say`Nothing is taken by ${typed.trim().slice(0, 40)}.`, spoken(HOW));
}

/** The row of Draws that says it; `day` as in 2026-02-15. */
export const drawOf = (
  { line, amount, measure }: Take,
  day: string,
  purpose: string,
): Readonly<Record<string, string | number | null>> => ({
  date: day,
  food: line.food,
  way: line.way,
  amount,
  container: measure,
  purpose: purpose || null,
});
