import { ok, type Result, refuse } from '../problem.js';
import { phrase, say } from '../words/index.js';
import { cropCalled } from './crops.js';
import raw from './data/densities.json';
import { figureFrom } from './figure.js';
import type { Figure, RawFigure } from './figure-types.js';

const ROWS = new Map(
  (raw as unknown as readonly { food: string; is: RawFigure }[]).flatMap((row) => {
    const figure = figureFrom(row.is, 'pounds per cup');
    return figure ? [[row.food, figure] as const] : [];
  }),
);

/**
 * Density of a food, in pounds per US liquid cup, only where a source gives one (most foods have none).
 * Refused: `no-density`.
 */
export function densityOf(food: string): Result<Figure> {
  const name = cropCalled(food)?.name ?? food.trim().toLowerCase();
  const found = ROWS.get(name);
  return found
    ? ok(found)
    : refuse(
        'no-density',
        say`no weight of a cup is published here for ${food.trim() || phrase('a blank food')}.`,
        say`Weigh a cup of it and give your own figure.`,
      );
}

/** Every food with a published density. */
export const allDensities = (): readonly (readonly [string, Figure])[] => [...ROWS];
