import { growing } from '../../facts/index.js';
import { ok, type Result, refuse } from '../../problem.js';
import { turnedUnit } from '../../units/index.js';
import { phrase, say } from '../../words/index.js';
import { yieldPerPlant } from '../growing.js';
import { learnedYield, type YieldRange } from '../learned.js';
import { measured } from '../measured.js';
import { isAmount } from '../words.js';
import { type FigureName, figureKey, readFigureName } from './figure-names.js';
import { figureCalled } from './figure-words.js';
import { type Narrow, type Published, publishedFigure } from './published.js';
import type { FactRow } from './types.js';

/** Raw totals of one season, as written on Facts. */
export interface SeasonRecord {
  readonly year: number;
  readonly pounds: number;
  readonly plants: number;
  readonly spacing: number | null;
}

/** A figure as a plan uses it: own first, then learned, then published. */
export interface InUse extends Published {
  readonly name: FigureName;
  readonly published: Published | null;
  readonly own: number | null;
  readonly learned: YieldRange | null;
  /** The seasons that it was learned from. */
  readonly seasons: readonly SeasonRecord[];
}

/** The household's own and learned figures, with the published ones behind them. */
export interface OwnFigures {
  /** Refused with what would fill it. */
  inUse(name: FigureName, narrow?: Narrow): Result<InUse>;
  /** Rows of Facts whose figure could be read, with it. */
  readonly names: ReadonlyMap<string, FigureName>;
  /** All of the household's figures as one text: two equal ones plan alike. */
  readonly fingerprint: string;
}

/** Figures that season totals teach: pounds over a count. */
export const teaches = ({ what }: FigureName): boolean =>
  what === 'yield' || what === 'pounds per container' || what === 'eggs a year' || what === 'weight of one';

/** Whether a household's value can stand for a figure: from 0 up, but weeks about a frost may be before it. */
export function isOwnValue({ what }: FigureName, n: number | null): n is number {
  if (n === null) return false;
  if (what === 'weeks from the last frost') return n >= -60 && n <= 60;
  return what === 'germination' ? n > 0 && n <= 100 : isAmount(n);
}

/** Why a row's season cannot be counted, in words; null when it can or when the row has none. */
export function seasonLacks(row: FactRow): string | null {
  if (row.season === null && row.pounds === null && row.plants === null) return null;
  if (row.season === null) return say`the year of the season`;
  if (!isAmount(row.pounds)) return say`the pounds of that season`;
  return isAmount(row.plants) && row.plants > 0 ? null : say`the plants (or containers), above 0`;
}

/** One record for each year: totals of rows for the same season are added up. */
function bySeason(rows: readonly FactRow[]): SeasonRecord[] {
  const years = new Map<string, SeasonRecord>();
  for (const row of rows) {
    if (row.season === null || seasonLacks(row) !== null) continue;
    const key = `${row.season}|${row.spacing ?? ''}`;
    const was = years.get(key);
    years.set(key, {
      year: row.season,
      pounds: (was?.pounds ?? 0) + (row.pounds ?? 0),
      plants: (was?.plants ?? 0) + (row.plants ?? 0),
      spacing: row.spacing,
    });
  }
  return [...years.values()].sort((a, b) => a.year - b.year);
}

/** Whether pounds per foot of row are the published figure, so that spacing changes what a plant gives. */
function byRowFoot(crop: string): boolean {
  const of = growing(crop);
  if (!of.ok) return false;
  const pounds = of.value.yields.filter((one) => one.of === 'pound');
  return pounds.length > 0 && pounds.every((one) => one.per === 'row foot');
}

/**
 * Plants of a season, as so many at the spacing asked for: pounds per foot of row stay fixed, so twenty plants
 * at 6 inches count as ten at 12.
 */
function plantsAtSpacing(
  record: SeasonRecord,
  usual: number | undefined,
  inches: number | undefined,
): number {
  const from = record.spacing ?? usual;
  const to = inches ?? usual;
  return from && to ? (record.plants * from) / to : record.plants;
}

/** Seasons of one year counted once, whatever they were spaced at. */
function totals(records: readonly SeasonRecord[], plantsOf: (record: SeasonRecord) => number) {
  const years = new Map<number, { pounds: number; plants: number }>();
  for (const record of records) {
    const was = years.get(record.year) ?? { pounds: 0, plants: 0 };
    years.set(record.year, { pounds: was.pounds + record.pounds, plants: was.plants + plantsOf(record) });
  }
  return [...years.values()];
}

/** The household's figures from its rows of Facts; the first own value of a figure counts. */
export function ownFigures(rows: readonly FactRow[]): OwnFigures {
  const names = new Map<string, FigureName>();
  const groups = new Map<string, FactRow[]>();
  for (const row of rows) {
    const read = row.figure.trim() === '' ? null : readFigureName(row.figure);
    if (!read?.ok) continue;
    names.set(row.id, read.value);
    const key = figureKey(read.value);
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  }
  const answers = new Map<string, Result<InUse>>();

  const reckon = (name: FigureName, narrow: Narrow): Result<InUse> => {
    const group = groups.get(figureKey(name)) ?? [];
    const written = group.find(({ ownValue }) => isOwnValue(name, ownValue))?.ownValue ?? null;
    const inches = narrow.inches ?? (name.what === 'yield' ? ownSpacing(name.of) : undefined);
    const found = publishedFigure(name, { ...narrow, inches });
    const published = found.ok ? found.value : name.what === 'yield' ? byThePiece(name.of, inches) : null;
    const seasons = teaches(name) ? bySeason(group) : [];
    const scaled = name.what === 'yield' && !narrow.kind && byRowFoot(name.of);
    const usual = scaled ? spacingInUse(name.of) : undefined;
    const taught =
      seasons.length > 0
        ? learnedYield(
            published,
            totals(seasons, (record) =>
              scaled ? plantsAtSpacing(record, usual, narrow.inches) : record.plants,
            ),
          )
        : null;
    // Pounds of next to no plants are a slip of the key, and teach nothing.
    const learned = taught && isAmount(taught.high) && isAmount(taught.usual) ? taught : null;
    const unit = published?.unit ?? unitOf(name);
    // What the household writes is in its own measures.
    const own = written === null ? null : written / (turnedUnit(unit)?.factor ?? 1);
    const shared = { name, published, own, learned, seasons };
    if (own !== null) {
      const from = { source: say`your own figure, on Facts`, origin: 'own', notes: [] } as const;
      return ok({ ...shared, low: own, usual: own, high: own, unit, ...from });
    }
    if (learned) {
      const years = new Set(seasons.map(({ year }) => year)).size;
      const source = say`learned from ${years} ${years === 1 ? 'season' : 'seasons'} of your own${
        published ? say`, with ${published.source}` : ''
      }`;
      return ok({ ...shared, ...learned, unit, source, origin: 'learned', notes: published?.notes ?? [] });
    }
    if (published) return ok({ ...published, ...shared });
    return found.ok
      ? refuse('nothing-published', say`Nothing is known of ${figureCalled(name)}.`, say`Give your own.`)
      : found;
  };

  const inUse = (name: FigureName, narrow: Narrow = {}): Result<InUse> => {
    const key = `${figureKey(name)}|${narrow.inches ?? ''}|${narrow.kind ?? ''}`;
    let answer = answers.get(key);
    if (!answer) {
      answer = reckon(name, narrow);
      if (answers.size < 20_000) answers.set(key, answer);
    }
    return answer;
  };

  /** Inches between plants that the household wrote on Facts. */
  const ownSpacing = (of: string): number | undefined => {
    const found = inUse({ of, what: 'spacing' });
    return found.ok && found.value.own !== null && found.value.own > 0 ? found.value.own : undefined;
  };
  const spacingInUse = (of: string): number | undefined => {
    const found = inUse({ of, what: 'spacing' });
    return found.ok && found.value.usual > 0 ? found.value.usual : undefined;
  };
  /** A yield published by the ear, head or fruit, in pounds by the household's own weight of one. */
  const byThePiece = (of: string, inches: number | undefined): Published | null => {
    const weight = inUse({ of, what: 'weight of one' });
    const pieces = yieldPerPlant(of, 'each', inches);
    if (!weight.ok || !pieces.ok || !(weight.value.usual > 0)) return null;
    const each = weight.value.usual;
    return {
      low: pieces.value.lean * each,
      usual: pieces.value.usual * each,
      high: pieces.value.good * each,
      unit: phrase('pounds a plant'),
      source: pieces.value.source,
      origin: 'computed',
      notes: [...pieces.value.notes, say`worked out: ${measured(each, 'pounds')} each, your own weight`],
    };
  };

  return { inUse, names, fingerprint: JSON.stringify(rows.map(({ id: _id, ...figures }) => figures)) };
}

function unitOf({ what }: FigureName): string {
  switch (what) {
    case 'yield':
      return 'pounds a plant';
    case 'weight of one':
    case 'bushel weight':
      return 'pounds';
    case 'spacing':
      return 'inches between plants';
    case 'days to maturity':
      return 'days';
    case 'weeks indoors':
    case 'weeks from the last frost':
      return 'weeks';
    case 'germination':
      return 'percent';
    case 'seed life':
    case 'years to bearing':
      return 'years';
    case 'pounds per container':
      return 'pounds a container';
    case 'months of best quality':
      return 'months';
    case 'pounds per cubic foot':
      return what;
    case 'eggs a year':
      return 'eggs a hen in a year';
  }
}

/** The published figures alone, for a household that has none of its own. */
export const publishedOnly: OwnFigures = ownFigures([]);
