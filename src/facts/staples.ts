import raw from './data/staples.json';
import { figureFrom } from './figure.js';
import type { Figure, RawFigure } from './figure-types.js';
import { wordsOf } from './names.js';

/** A pantry conversion: from so much of something to so much of something else. */
export interface Staple {
  /** 'wheat', 'dry beans', 'grain', 'eggs', 'servings', 'canning', 'freezing', 'measures', 'energy'. */
  readonly group: string;
  readonly item: string;
  readonly fromAmount: number;
  readonly fromUnit: string;
  /** How much that gives; its unit says of what. */
  readonly gives: Figure;
}

interface RawStaple {
  readonly group: string;
  readonly item: string;
  readonly from: readonly (number | string)[];
  readonly unit: string;
  readonly is: RawFigure;
}

const ALL: readonly Staple[] = (raw as unknown as readonly RawStaple[]).flatMap((row) => {
  const gives = figureFrom(row.is, row.unit);
  if (!gives) return [];
  return [
    {
      group: row.group,
      item: row.item,
      fromAmount: Number(row.from[0]),
      fromUnit: String(row.from[1]),
      gives,
    },
  ];
});

/** Pantry conversions whose group or item holds these words, each with its source; all of them when blank. */
export function staples(about = ''): readonly Staple[] {
  const words = wordsOf(about);
  return words === ''
    ? ALL
    : ALL.filter((one) => one.group === words || ` ${wordsOf(one.item)} `.includes(` ${words} `));
}
