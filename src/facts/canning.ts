import { excerpt, ok, type Result, refuse } from '../problem.js';
import { orList } from '../units/index.js';
import { say, spoken, spokenTag } from '../words/index.js';
import { type AcidClass, findCrop, firstOfKin } from './crops.js';
import raw from './data/canning.json';
import { figureFrom } from './figure.js';
import type { Figure, RawFigure, RawReading, SourceId } from './figure-types.js';
import { germanMeant } from './german-names.js';
import { type HeadspaceClass, headspace } from './headspace.js';
import { nearestNames, wordsOf } from './names.js';

/** Jars from one bushel, lug, crate or bag, as printed for that container. */
export interface CanningContainer {
  readonly of: string;
  readonly pounds: Figure;
  /** Usual is pounds ÷ printed pounds per quart where both are printed. */
  readonly quarts: Figure | null;
  readonly pints: Figure | null;
}

/** What is published on canning a crop in one pack. Weights are as bought: in pods, in husks, untrimmed. */
export interface Canning {
  readonly crop: string;
  /** The crop that the figures are printed for, where it is another: kale has those of greens. */
  readonly printedFor: string;
  readonly pack: string;
  /** Every pack of the crop, the default (the plainest) first. */
  readonly packs: readonly string[];
  readonly acid: AcidClass;
  readonly headspace: HeadspaceClass | null;
  /** Pounds per quart, the printed average; crushed tomatoes go by their load. */
  readonly poundsPerQuart: Figure | null;
  /** Only where printed per pint: cream-style corn, peppers, mushrooms. */
  readonly poundsPerPint: Figure | null;
  /** Pounds to a canner load of 7 quarts. */
  readonly loadOf7Quarts: Figure | null;
  /** Pounds to a canner load of 9 pints. */
  readonly loadOf9Pints: Figure | null;
  readonly containers: readonly CanningContainer[];
  /** From the container 'bushel', where jars are printed for one. */
  readonly quartsPerBushel: Figure | null;
  readonly pintsPerBushel: Figure | null;
  /** Jar sizes that have a process, where not all do: ['pint', 'half-pint']. */
  readonly onlyJars: readonly string[];
  /** An older edition, kept for comparison. */
  readonly superseded: boolean;
  /** Amounts in and out of a printed recipe, by name: 'pounds', 'pints'. */
  readonly recipe: readonly Figure[];
  /** The source that gives the process without any pounds a jar, where that is so. */
  readonly withoutAmounts: SourceId | null;
  readonly note: string | null;
}

interface RawContainer {
  readonly of: string;
  readonly lb: number | readonly number[];
  readonly quarts?: RawFigure;
  readonly pints?: RawFigure;
}
interface RawCanning {
  readonly crop: string;
  readonly pack: string;
  readonly also?: readonly string[];
  readonly acid: string;
  readonly headspace: string | null;
  readonly quart?: RawFigure;
  readonly pint?: RawFigure;
  readonly load7?: RawFigure;
  readonly load9?: RawFigure;
  readonly per?: readonly RawContainer[];
  readonly only?: readonly string[];
  readonly superseded?: boolean;
  readonly recipe?: Readonly<Record<string, RawFigure>>;
  readonly nothing?: string;
  readonly note?: string;
}

const BY_CROP = new Map<string, RawCanning[]>();
for (const row of raw as unknown as readonly RawCanning[]) {
  const rows = BY_CROP.get(row.crop);
  if (rows) rows.push(row);
  else BY_CROP.set(row.crop, [row]);
}

/**
 * Printed jars per container, with pounds ÷ pounds per quart for usual. The sources round average, load and
 * range separately, so the quotient may fall outside the printed range: the range then reaches to it.
 */
function jars(printed: Figure | null, pounds: number, perJar: Figure | null): Figure | null {
  if (!printed || !perJar) return printed;
  const usual = pounds / perJar.usual;
  return {
    ...printed,
    low: Math.min(printed.low, usual),
    usual,
    high: Math.max(printed.high, usual),
    note: say`usual is ${pounds} pounds ÷ ${Number(perJar.usual.toFixed(3))} pounds a jar`,
  };
}

function container(row: RawContainer, quart: Figure | null, pint: Figure | null): CanningContainer[] {
  const lb = typeof row.lb === 'number' ? [row.lb] : row.lb;
  const source = String((row.quarts ?? row.pints)?.[0]?.[0] ?? '');
  const pounds = figureFrom([[source, ...lb]] as readonly RawReading[], `pounds per ${row.of}`);
  if (!pounds) return [];
  const by = (raw: RawFigure | undefined, jar: string, per: Figure | null) =>
    jars(figureFrom(raw, `${jar} per ${row.of}`), pounds.usual, per);
  return [
    { of: row.of, pounds, quarts: by(row.quarts, 'quarts', quart), pints: by(row.pints, 'pints', pint) },
  ];
}

const CLASS: Readonly<Record<string, HeadspaceClass>> = {
  '1 inch': 'low-acid',
  '1/2 inch': 'fruit',
  '1/4 inch': 'jam',
};

function build(crop: string, row: RawCanning, packs: readonly string[]): Canning {
  const quart = figureFrom(row.quart, 'pounds per quart');
  const pint = figureFrom(row.pint, 'pounds per pint');
  const containers = (row.per ?? []).flatMap((one) => container(one, quart, pint));
  const bushel = containers.find((one) => one.of === 'bushel');
  return {
    crop,
    printedFor: row.crop,
    pack: row.pack,
    packs,
    acid: row.acid as AcidClass,
    headspace: row.headspace === null ? null : (CLASS[row.headspace] ?? null),
    poundsPerQuart: quart,
    poundsPerPint: pint,
    loadOf7Quarts: figureFrom(row.load7, 'pounds per load of 7 quarts'),
    loadOf9Pints: figureFrom(row.load9, 'pounds per load of 9 pints'),
    containers,
    quartsPerBushel: bushel?.quarts ?? null,
    pintsPerBushel: bushel?.pints ?? null,
    onlyJars: row.only ?? [],
    superseded: row.superseded ?? false,
    recipe: Object.entries(row.recipe ?? {}).flatMap(([unit, is]) => figureFrom(is, unit) ?? []),
    withoutAmounts: row.nothing ?? null,
    note: row.note ?? null,
  };
}

function pick(rows: readonly RawCanning[], pack: string): RawCanning | undefined {
  const words = wordsOf(pack);
  return (
    rows.find((row) => wordsOf(row.pack) === words) ??
    rows.find((row) => (row.also ?? []).some((name) => wordsOf(name) === words)) ??
    rows.find((row) => germanMeant('words', [row.pack], pack)) ??
    rows.find((row) => germanMeant('words', row.also ?? [], pack))
  );
}

const built = new Map<string, Canning>();

/**
 * What is published on canning a crop, in the plainest pack unless `pack` names another ('crushed', 'juice',
 * 'sauce'), in English or German. Always to be shown with `cautions('canning')`; there are no process times here.
 * Refused: `unknown-crop`, `nothing-published`, or `unknown-pack` (which lists the packs).
 */
export function canning(crop: string, pack?: string): Result<Canning> {
  const found = findCrop(crop);
  if (!found.ok) return found;
  const name = found.value.name;
  const rows = firstOfKin(found.value, (one) => BY_CROP.get(one))?.value;
  if (!rows) {
    return refuse(
      'nothing-published',
      say`no canning figures are published here for ${name}.`,
      say`See a tested process of your food-safety authority, or keep it another way.`,
    );
  }
  const packs = rows.map((row) => row.pack);
  const row = pack === undefined || pack.trim() === '' ? rows[0] : pick(rows, pack);
  if (!row) {
    const near = nearestNames(
      pack ?? '',
      packs.flatMap((one) => [one, spoken(one)].map((name) => [wordsOf(name), spoken(one)] as const)),
    );
    return refuse(
      'unknown-pack',
      near.length > 0
        ? say`no pack of ${name} called "${excerpt(pack ?? '')}": did you mean ${orList(near)}?`
        : say`no pack of ${name} called "${excerpt(pack ?? '')}".`,
      say`Write ${orList(packs.map(spoken))}.`,
    );
  }
  // Its notes are in the language that was spoken.
  const key = `${name}|${row.pack}|${spokenTag()}`;
  const value = built.get(key) ?? build(name, row, packs);
  built.set(key, value);
  return ok(value);
}

/** Names of the crops and foods with canning figures of their own. */
export const cannedCrops = (): readonly string[] => [...BY_CROP.keys()];

/** Inches of headspace for a pack, where its class is known. */
export function headspaceOf(of: Canning): Figure | null {
  const found = of.headspace === null ? null : headspace(of.headspace);
  return found?.ok ? found.value : null;
}
