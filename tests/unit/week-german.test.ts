import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ShownLists, shownLists } from '../../components/lists/list-lines.js';
import { openBook, parseBook } from '../../src/core.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { civilToDay } from '../../src/planning/dates.js';
import { speak } from '../../src/words/index.js';

const DEMO = join(import.meta.dirname, '../../demo/data/tamarack-bench.json');

function demo(): LiveBook {
  const parsed = parseBook(readFileSync(DEMO, 'utf8'));
  if (!parsed.ok) throw new Error(parsed.problems[0]!.message);
  return openBook(parsed.book);
}

const lists = (live: LiveBook): ShownLists => shownLists(live, civilToDay(2026, 2, 16))!;
const meals = ({ days }: ShownLists) =>
  days.flatMap((day) => day.meals.map(({ meal, short }) => [day.words, meal, short]));
const cautions = (shown: ShownLists) => shown.lists.cautions.map(({ text }) => text).join(' ');

describe('the lists of a week in German', () => {
  let live: LiveBook;
  beforeAll(async () => {
    await speak('de');
    live = demo();
  }, 60_000);
  afterAll(() => speak('en'));

  it('name days and meals, and say beside a meal what it lacks', () => {
    const shown = meals(lists(live));
    expect(shown).toContainEqual(['Di., 17. Feb.', 'Frühstück', '']);
    // As English says it below: short of parsnips.
    expect(shown.find(([day]) => day === 'Sa., 21. Feb.')).toEqual([
      'Sa., 21. Feb.',
      'Mittag',
      'es fehlt: ½ US-Pfund von Parsnips (eingekellert)',
    ]);
  });

  it('have the same ticks in every language, and cautions in the one spoken', async () => {
    const german = lists(live);
    expect(cautions(german)).toContain('Zweifel');
    await speak('en');
    const english = lists(live);
    expect(cautions(english)).toContain('doubt');
    expect(cautions(english)).not.toContain('Zweifel');
    expect(meals(english)).toContainEqual(['Sat, Feb 21', 'midday', 'short: ½ pound of Parsnips (cellared)']);
    const keys = ({ bringUp, shopping, prep }: ShownLists) =>
      [...bringUp, ...shopping, ...prep].flatMap(({ lines }) =>
        lines.map(({ key, amount, measure }) => [key, amount, measure]),
      );
    expect(keys(german)).toEqual(keys(english));
    await speak('de');
  });
});
