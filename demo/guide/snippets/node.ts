import { evaluate, openBook, type Problem, parseBook } from 'croftsheet/core';

/** Weeks that each lot of a shelf lasts, or what is wrong with the file. */
export function weeksLeft(json: string): Map<string, unknown> | readonly Problem[] {
  const parsed = parseBook(json);
  if (!parsed.ok) return parsed.problems;
  const book = openBook(parsed.book);
  const weeks = new Map(
    book.rowIds('shelf').map((lot) => {
      const food = String(book.value('shelf', lot, 'food'));
      return [food, book.value('shelf', lot, 'weeks_of_supply')];
    }),
  );
  book.close();
  return weeks;
}

/** 17⅔ quarts to the bushel. */
export const quarts = evaluate('=JARS_PER_BUSHEL("tomato", "quart")', { asOf: '2026-02-01' });
