import { allMarketContainers } from './bushels.js';
import { cannedCrops, canning } from './canning.js';
import { allDensities } from './densities.js';
import { driedCrops, drying } from './drying.js';
import type { Certainty, Figure, SourceId } from './figure-types.js';
import { freezing, frozenCrops } from './freezing.js';
import { growing, grownCrops } from './growing.js';
import { headspaceClasses } from './headspace.js';
import { allLivestock } from './livestock.js';
import { perPerson } from './per-person.js';
import { pressureFigures } from './pressure.js';
import { staples } from './staples.js';
import { allColdStorage, allQuality } from './storage.js';
import { allFreshQuarts, allTrees } from './trees.js';
import { allWater } from './water.js';

/** A figure in the flat list of the Facts sheet and the docs. */
export interface FlatFigure {
  /** Stable while the data keep their order: topic, crop, figure. */
  readonly id: string;
  readonly topic: string;
  /** Crop, animal or food. */
  readonly of: string;
  /** What the figure is. */
  readonly name: string;
  readonly low: number;
  readonly usual: number;
  readonly high: number;
  readonly unit: string;
  readonly source: SourceId;
  readonly certainty: Certainty;
  readonly note: string;
  readonly figure: Figure;
}

type Named = readonly [of: string, name: string, figure: Figure | null];

function growingFigures(crop: string): Named[] {
  const found = growing(crop);
  if (!found.ok) return [];
  const of = found.value;
  return [
    ...of.yields.map((one): Named => [crop, `yield, ${one.unit}`, one]),
    [crop, 'spacing in the row', of.spacing],
    [crop, 'spacing of rows', of.rowSpacing],
    [crop, 'spacing in a wide bed', of.intensiveSpacing],
    ...of.plantingPer100Ft.map((one): Named => [crop, 'planting for 100 ft of row', one]),
    [crop, 'seeds per ounce', of.seedsPerOunce],
    [crop, 'weeks indoors', of.weeksIndoors],
    [crop, 'weeks from the last frost', of.weeksFromLastFrost],
    [crop, 'days to maturity', of.daysToMaturity],
    [crop, 'least germination', of.germination],
    [crop, 'seed life', of.seedLife],
    ...of.perPersonFresh.map((one): Named => [crop, 'for a person, fresh', one]),
    ...of.perPersonPreserved.map((one): Named => [crop, 'for a person, put up', one]),
  ];
}

function canningFigures(crop: string): Named[] {
  const first = canning(crop);
  if (!first.ok) return [];
  return first.value.packs.flatMap((pack): Named[] => {
    const found = canning(crop, pack);
    if (!found.ok) return [];
    const of = found.value;
    return [
      [crop, `${pack}: pounds per quart`, of.poundsPerQuart],
      [crop, `${pack}: pounds per pint`, of.poundsPerPint],
      [crop, `${pack}: load of 7 quarts`, of.loadOf7Quarts],
      [crop, `${pack}: load of 9 pints`, of.loadOf9Pints],
      ...of.containers.flatMap((box): Named[] => [
        [crop, `${pack}: quarts per ${box.of}`, box.quarts],
        [crop, `${pack}: pints per ${box.of}`, box.pints],
      ]),
      ...of.recipe.map((one): Named => [crop, `${pack}: recipe, ${one.unit}`, one]),
    ];
  });
}

function freezingFigures(crop: string): Named[] {
  const found = freezing(crop);
  if (!found.ok) return [];
  return [
    [crop, 'pounds per pint', found.value.poundsPerPint],
    ...found.value.yields.map((one): Named => [crop, `pints per ${one.of}`, one.pints]),
  ];
}

function dryingFigures(crop: string): Named[] {
  const found = drying(crop);
  if (!found.ok) return [];
  return [
    [crop, `dried from ${found.value.freshPounds} pounds`, found.value.driedPounds],
    [crop, `dried from ${found.value.freshPounds} pounds`, found.value.driedPints],
  ];
}

function everything(): readonly (readonly [topic: string, rows: readonly Named[]])[] {
  return [
    ['growing', grownCrops().flatMap(growingFigures)],
    [
      'trees',
      allTrees().flatMap((tree): Named[] => [
        [tree.crop, `yield, ${tree.kind}`, tree.yield],
        [tree.crop, `years to bearing, ${tree.kind}`, tree.yearsToBearing],
        [tree.crop, `years to full yield, ${tree.kind}`, tree.yearsToFull],
        [tree.crop, `years productive, ${tree.kind}`, tree.yearsProductive],
        [tree.crop, `spacing, ${tree.kind}`, tree.spacing],
      ]),
    ],
    ['trees', allFreshQuarts().map(([crop, figure]): Named => [crop, 'fresh quart', figure])],
    ['bushels', allMarketContainers().map((one): Named => [one.crop, `pounds per ${one.of}`, one.pounds])],
    ['canning', cannedCrops().flatMap(canningFigures)],
    ['pressure', pressureFigures()],
    ['headspace', headspaceClasses().map((one): Named => [one.class, 'headspace', one])],
    ['freezing', frozenCrops().flatMap(freezingFigures)],
    ['drying', driedCrops().flatMap(dryingFigures)],
    [
      'water',
      allWater().flatMap((one): Named[] => {
        const what = [one.form, one.state].filter((word) => word !== '').join(', ');
        return [
          [one.crop, `water, ${what}`, one.water],
          [one.crop, `refuse, ${what}`, one.refuse],
        ];
      }),
    ],
    [
      'quality',
      allQuality().map((one): Named => [one.of, `best quality, ${one.way}`, one.weeks ?? one.months]),
    ],
    [
      'cold storage',
      allColdStorage().flatMap((one): Named[] => [
        [one.crop, 'temperature', one.fahrenheit],
        [one.crop, 'relative humidity', one.humidity],
        [one.crop, 'months', one.months],
      ]),
    ],
    [
      'livestock',
      allLivestock().flatMap((one): Named[] => [
        [one.animal, 'dressing', one.dressing],
        [one.animal, `take-home share, ${one.basis ?? ''}`, one.takeHomePercent],
        [one.animal, `take-home weight, ${one.liveWeight ?? ''} lb live`, one.takeHome],
        [one.animal, one.measure, one.value],
      ]),
    ],
    [
      'staples',
      staples().map((one): Named => [one.item, `from ${one.fromAmount} ${one.fromUnit}`, one.gives]),
    ],
    ['per person', perPerson().map((one): Named => [one.food, `${one.form}, ${one.basis}`, one.amount])],
    ['densities', allDensities().map(([food, figure]): Named => [food, 'pounds per cup', figure])],
  ];
}

let flat: readonly FlatFigure[] | null = null;

/** Every figure of the facts in one flat list, for a Facts sheet and the docs. Made once, when first asked for. */
export function allFigures(): readonly FlatFigure[] {
  if (flat) return flat;
  const used = new Map<string, number>();
  flat = everything().flatMap(([topic, rows]) =>
    rows.flatMap(([of, name, figure]) => {
      if (!figure) return [];
      const base = `${topic}/${of}/${name}`.toLowerCase().replace(/\s+/g, '-');
      const turn = (used.get(base) ?? 0) + 1;
      used.set(base, turn);
      const { low, usual, high, unit, source, certainty } = figure;
      const id = turn === 1 ? base : `${base}/${turn}`;
      return [
        { id, topic, of, name, low, usual, high, unit, source, certainty, note: figure.note ?? '', figure },
      ];
    }),
  );
  return flat;
}
