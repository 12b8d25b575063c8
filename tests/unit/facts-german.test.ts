import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { KINDS } from '../../src/book/index.js';
import { blankBook, type LiveBook, openBook, parseBook } from '../../src/core.js';
import { crops, WAYS } from '../../src/facts/index.js';
import { callFunction, functionNamed, type GivenValue } from '../../src/formulas/index.js';
import { shownCell } from '../../src/live/shown.js';
import { CROP_FIGURES, FREEZER, HEN } from '../../src/planning/garden/figure-names.js';
import { figureMeant } from '../../src/planning/garden/figure-words.js';
import { publishedFigure } from '../../src/planning/garden/published.js';
import { publishedGuide } from '../../src/planning/published-guide.js';
import { speak } from '../../src/words/index.js';
import { catalogueOfSource } from '../support/catalogue.js';
import { textsOfWorking, withoutTheirs } from '../support/said-in-german.js';

afterAll(() => speak('en'));

/** What a lookup answers without the words that it is told in: numbers, or the code of what is in the way. */
function meant(answer: unknown): unknown {
  if (typeof answer === 'number') return answer;
  if (typeof answer !== 'object' || answer === null) return null;
  const { problem } = answer as { readonly problem?: { readonly code: string } };
  return problem ? problem.code : Object.values(answer).map(meant);
}

const CONTEXT = { asOf: 46_000, basis: 'usual' } as const;
/** Functions of a crop, with what else they are given. */
const OF_A_CROP: readonly (readonly [name: string, ...more: (GivenValue | undefined)[]])[] = [
  ['YIELD_PER_PLANT', 'pound'],
  ['YIELD_PER_ROW_FOOT', 'each'],
  ['PLANTS_FOR', 100],
  ['POUNDS_PER_JAR'],
  ['POUNDS_PER_JAR', 'pint'],
  ['JARS_PER_BUSHEL'],
  ['BUSHEL_POUNDS'],
  ['PINTS_FROZEN', 10],
  ['DRIED_FROM', 10],
  ['ALTITUDE_PRESSURE', 1500, 'dial'],
  ['START_ON', '2026-05-24'],
];

const lookups = () =>
  crops().map(({ name }) => [
    name,
    ...OF_A_CROP.map(([of, ...more]) => callFunction(functionNamed(of)!, [name, ...more], CONTEXT)),
    ...CROP_FIGURES.map((what) => publishedFigure({ of: name, what })),
    ...WAYS.flatMap((way) => [
      publishedGuide.qualityMonths(way, name),
      ...['quart jar', 'pint jar', 'quart freezer bag', 'pound'].map((container) =>
        publishedGuide.poundsPerContainer(name, container, way),
      ),
    ]),
  ]);

describe('a figure looked up in German', () => {
  it('is the one that English gives, for every crop', async () => {
    const all = () => [...lookups(), publishedFigure(FREEZER), publishedFigure(HEN)].map(meant);
    const english = all();
    await speak('de');
    expect(all()).toEqual(english);
  });
});

/** What the people of the demo wrote is theirs. */
const HOUSEHOLD = readFileSync('demo/data/tamarack-bench.json', 'utf8');

function opened(): LiveBook {
  const found = parseBook(HOUSEHOLD);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return openBook(found.book);
}

interface Planned {
  readonly at: string;
  readonly value: unknown;
  readonly texts: readonly string[];
}

describe('the name of a figure in German', () => {
  it('is read as the figure that it names, and stored as in English', async () => {
    await speak('de');
    const live = openBook(blankBook('Haus', 'b1'));
    const [row] = live.insertRows('facts', [{}]).rows as [string];
    const offered = live.choices('facts', row, 'figure') ?? [];
    expect(offered.map(({ label }) => label)).toContain('Tomate, Ertrag');
    expect(new Set(offered.map(({ label }) => label)).size).toBe(offered.length);
    for (const { value, label } of offered) expect(figureMeant(label), label).toBe(value);
    const typed = 'tomate,  US-Pfund je Pint-Glas, Eingekocht';
    live.set('facts', row, 'figure', typed);
    const stored = () => live.toJSON().sheets.facts!.rows[row]!.cells.figure;
    expect(stored()).toBe('tomato, pounds per pint jar, canned');
    expect(live.value('facts', row, 'published')).not.toBeNull();
    expect(shownCell(live, 'facts', row, live.column('facts', 'figure')!, false).text).toBe(
      'Tomate, US-Pfund je Pint-Glas, eingekocht',
    );
    // Measured in kilograms, it is called by them, and understood by both.
    live.apply({ do: 'set setting', setting: 'measures', typed: 'metric' });
    live.set('facts', row, 'figure', 'Karotte, Kilogramm je Quart-Glas, eingekocht');
    expect(stored()).toBe('carrot, pounds per quart jar, canned');
    live.set('facts', row, 'figure', 'Karotte, US-Pfund je Quart-Glas, eingekocht');
    expect(stored()).toBe('carrot, pounds per quart jar, canned');
    live.set('facts', row, 'figure', 'Schnee, Höhe');
    expect(stored()).toBe('Schnee, Höhe');
    live.close();
  });
});

/** Days and numbers stand for themselves; texts are told in the language spoken. */
const withoutWords = (value: unknown): unknown =>
  typeof value === 'string' && !/^\d{4}-\d\d-\d\d$/.test(value) ? 'text' : value;

/** Rows of a sheet that are looked at: there are hundreds of draws, all told alike. */
const ENOUGH = 45;

/** The planning cells of a book, with what their workings say. */
const plannedIn = (live: LiveBook): Planned[] =>
  live.sheets().flatMap(({ id: sheet, kind }) =>
    (KINDS[kind as keyof typeof KINDS]?.columns ?? [])
      .filter(({ role }) => role === 'planning')
      .flatMap(({ id: column }) =>
        live
          .rowIds(sheet)
          .slice(0, ENOUGH)
          .map((row) => {
            const working = live.working(sheet, row, column);
            return {
              at: `${sheet}/${row}/${column}`,
              value: withoutWords(live.value(sheet, row, column)),
              texts: textsOfWorking(working),
            };
          }),
      ),
  );

/** Pieces of our English texts of three words or more, as they stand between holes. */
const ENGLISH = [...catalogueOfSource()]
  .filter(([part]) => ['facts', 'facts/published', 'planning', 'live', 'book'].includes(part))
  .flatMap(([, texts]) => texts)
  .flatMap((text) => text.split(/\{\d\}/))
  .map((piece) => piece.trim())
  .filter((piece) => /\p{L}{2,} \p{L}{2,} \p{L}{2,}/u.test(piece) && !HOUSEHOLD.includes(piece));

describe('the household’s book in German', () => {
  let english: Planned[] = [];
  let german: Planned[] = [];
  beforeAll(async () => {
    await speak('en');
    const first = opened();
    english = plannedIn(first);
    first.close();
    await speak('de');
    const second = opened();
    german = plannedIn(second);
    second.close();
  }, 60_000);

  it('has the figures of the English one', () => {
    expect(german.map(({ at, value }) => [at, value])).toEqual(english.map(({ at, value }) => [at, value]));
  });

  it('has workings without an English sentence, but for titles of sources', () => {
    const bare = withoutTheirs();
    const said = [...new Set(german.flatMap(({ texts }) => texts))];
    const wrong = said.filter((text) =>
      ENGLISH.some((piece) => text.includes(piece) && bare(text).includes(piece)),
    );
    expect(wrong.slice(0, 20)).toEqual([]);
  });
});
