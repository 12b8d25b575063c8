import { allFigures, type FlatFigure, figureSource, wordsOf } from '../../facts/index.js';
import { say } from '../../words/index.js';
import type { RowPlan } from '../types.js';
import { type FigureName, readFigureName } from './figure-names.js';
import { type InUse, isOwnValue, type OwnFigures, ownFigures, seasonLacks, teaches } from './own-figures.js';
import type { FactFigures, FactRow } from './types.js';
import { problem, problemsOf, shown } from './words.js';

/** A row of Facts reckoned: a figure that plans use, or a published one shown for its source. */
export type FactReckoning =
  | { readonly kind: 'used'; readonly row: FactRow; readonly name: FigureName; readonly figure: InUse | null }
  | { readonly kind: 'shown'; readonly row: FactRow; readonly figure: FlatFigure };

let flat: Map<string, FlatFigure> | null = null;

/** A figure of the published list by its id, or as 'crop, name'. */
function flatFigure(text: string): FlatFigure | null {
  if (!flat) {
    flat = new Map();
    for (const one of allFigures()) {
      for (const name of [one.id, `${one.of} ${one.name}`]) {
        const key = wordsOf(name.replaceAll(',', ' '));
        if (!flat.has(key)) flat.set(key, one);
      }
    }
  }
  return flat.get(wordsOf(text.replaceAll(',', ' '))) ?? null;
}

const BLANK: FactFigures = {
  published: null,
  low: null,
  high: null,
  unit: null,
  source: null,
  own_seasons: null,
  learned: null,
  in_use: null,
};

/** The figure of a row as plans use it, or as published; null with neither. */
export function reckonFact(row: FactRow, figures: OwnFigures): FactReckoning | null {
  const name = figures.names.get(row.id);
  if (name) {
    const found = figures.inUse(name);
    return { kind: 'used', row, name, figure: found.ok ? found.value : null };
  }
  const figure = row.figure.trim() === '' ? null : flatFigure(row.figure);
  return figure ? { kind: 'shown', row, figure } : null;
}

function shownOnly(row: FactRow, figure: FlatFigure): RowPlan<FactFigures> {
  const unused =
    row.ownValue === null
      ? null
      : problem(
          'figure-not-used',
          say`No plan reads this figure: it is shown for its source.`,
          say`Write the own value under a figure that plans use, such as “tomato, yield”.`,
        );
  const problems = problemsOf<keyof FactFigures>({ in_use: unused });
  return {
    figures: {
      ...BLANK,
      published: shown(figure.usual),
      low: shown(figure.low),
      high: shown(figure.high),
      unit: figure.unit,
      source: figureSource(figure.figure),
    },
    ...(problems ? { problems } : {}),
  };
}

function used(row: FactRow, name: FigureName, figures: OwnFigures): RowPlan<FactFigures> {
  const found = figures.inUse(name);
  const lacks = seasonLacks(row);
  const season = !teaches(name)
    ? row.season === null && row.pounds === null
      ? null
      : problem(
          'season-teaches-nothing',
          say`A season’s totals teach yields and pounds per container only.`,
          say`Write an own value instead.`,
        )
    : lacks === null
      ? null
      : problem(
          'season-incomplete',
          say`The season is not counted: ${lacks} is missing.`,
          say`Write ${lacks}.`,
        );
  const badOwn =
    row.ownValue === null || isOwnValue(name, row.ownValue)
      ? null
      : problem(
          'bad-amount',
          say`${row.ownValue} cannot be the value of “${row.figure}”: it is left out.`,
          name.what === 'germination'
            ? say`Write a percentage above 0 and up to 100.`
            : say`Write a number from 0 up.`,
        );
  const value = found.ok ? found.value : null;
  const years = new Set(value?.seasons.map(({ year }) => year));
  const problems = problemsOf<keyof FactFigures>({
    own_seasons: season,
    in_use: badOwn ?? (found.ok ? null : found.problem),
  });
  return {
    figures: {
      published: shown(value?.published?.usual),
      low: shown(value?.published?.low),
      high: shown(value?.published?.high),
      unit: value?.unit ?? null,
      source: value?.published?.source ?? null,
      own_seasons: years.size,
      learned: shown(value?.learned?.usual),
      in_use: shown(value?.usual),
    },
    ...(problems ? { problems } : {}),
  };
}

/** The planning columns of Facts. */
export function planFacts(
  rows: readonly FactRow[],
  figures: OwnFigures = ownFigures(rows),
): ReadonlyMap<string, RowPlan<FactFigures>> {
  const plans = new Map<string, RowPlan<FactFigures>>();
  for (const row of rows) {
    const name = figures.names.get(row.id);
    if (name) {
      plans.set(row.id, used(row, name, figures));
      continue;
    }
    const found = reckonFact(row, figures);
    if (found?.kind === 'shown') {
      plans.set(row.id, shownOnly(row, found.figure));
      continue;
    }
    const read = row.figure.trim() === '' ? null : readFigureName(row.figure);
    const unread = read && !read.ok ? read.problem : null;
    plans.set(row.id, {
      figures: BLANK,
      ...(unread ? { problems: { published: unread } } : {}),
    });
  }
  return plans;
}
