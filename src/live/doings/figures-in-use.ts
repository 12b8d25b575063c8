import { FREEZER, HEN } from '../../planning/garden/figure-names.js';
import {
  cropKey,
  type FigureName,
  figureKey,
  figureText,
  type HowPlanted,
  readFigureName,
} from '../../planning/garden/index.js';
import type { BookReading } from '../book-reading.js';

/** Cells of new rows of Facts. */
export type FigureRow = Readonly<Record<'figure', string>>;

const FROM_SEED: readonly HowPlanted[] = ['direct', 'indoors', 'winter-sown'];
const FOR_YEARS: readonly HowPlanted[] = ['crown', 'tree'];

/**
 * Rows of Facts for the published figures that the plantings of Beds, the batches and the foods of the book rest
 * on, crop by crop; those that are on Facts already, and those that nobody publishes, are left out.
 */
export function figuresInUse(live: BookReading): FigureRow[] {
  const { garden } = live;
  if (!garden) return [];
  const there = new Set([...garden.figures.names.values()].map(figureKey));
  const rows: FigureRow[] = [];
  for (const name of [...ofBeds(live), ...ofBatches(live), ...ofFoods(live)]) {
    const figure = figureText(name);
    const read = readFigureName(figure);
    if (!read.ok || there.has(figureKey(read.value))) continue;
    const found = garden.figures.inUse(name);
    if (!found.ok || found.value.published === null) continue;
    there.add(figureKey(read.value));
    rows.push({ figure });
  }
  return rows;
}

function ofBeds(live: BookReading): FigureName[] {
  const starts = new Map<string, Set<HowPlanted>>();
  for (const { crop, dates } of live.garden!.beds.reckoned.values()) {
    starts.set(crop, (starts.get(crop) ?? new Set()).add(dates.how));
  }
  return [...starts].flatMap(([of, how]): FigureName[] => {
    const has = (some: readonly HowPlanted[]): boolean => some.some((each) => how.has(each));
    const seed = has(FROM_SEED);
    const years = has(FOR_YEARS);
    const what = [
      'yield',
      'spacing',
      ...(years ? (['years to bearing'] as const) : []),
      ...(seed || how.has('set') ? (['days to maturity', 'weeks from the last frost'] as const) : []),
      ...(how.has('indoors') ? (['weeks indoors'] as const) : []),
      ...(seed ? (['germination', 'seed life'] as const) : []),
    ] as const;
    return what.map((each) => ({ of, what: each }));
  });
}

const ofBatches = (live: BookReading): FigureName[] =>
  [...live.garden!.batches.reckoned.values()].flatMap(({ crops, row: { container, way } }) =>
    crops.flatMap(({ crop }): FigureName[] => [
      { of: crop, what: 'bushel weight' },
      ...(container && way ? [{ of: crop, what: 'pounds per container' as const, container, way }] : []),
    ]),
  );

function ofFoods(live: BookReading): FigureName[] {
  const lines = live.foodLines.map(({ input }) => input);
  const names = lines.flatMap(({ food, way, row, lots }): FigureName[] => {
    const container = row?.countedIn ?? lots[0]?.container ?? null;
    const months = cropKey(food);
    return [
      ...(row?.crops ?? []).flatMap(({ crop, pounds }): FigureName[] => {
        const of = cropKey(crop);
        return of === null || container === null || pounds !== null
          ? []
          : [{ of, what: 'pounds per container', container, way }];
      }),
      ...(months === null ? [] : [{ of: months, what: 'months of best quality' as const, way }]),
    ];
  });
  if (lines.some(({ way }) => way === 'frozen')) names.push(FREEZER);
  if (lines.some(({ food }) => /\beggs?\b/i.test(food))) names.push(HEN);
  return names;
}
