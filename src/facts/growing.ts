import { ok, type Result, refuse } from '../problem.js';
import { measureSystem, roundSig } from '../units/index.js';
import { say } from '../words/index.js';
import { findCrop, firstOfKin } from './crops.js';
import raw from './data/growing.json';
import { derived, figureFrom } from './figure.js';
import type { Figure, RawFigure, Said, SourceId } from './figure-types.js';

export type SowMethod = 'direct' | 'indoors' | 'winter-sown' | 'set' | 'crown';
/** From which moment days to maturity count. */
export type MaturityFrom = 'seed' | 'transplant' | 'set' | 'slip' | 'crown' | 'clove' | 'plant';
export type FrostClass = 'hardy' | 'half-hardy' | 'tender' | 'very tender';
/** What a yield is counted in. */
export type YieldOf = 'pound' | 'ear' | 'stalk' | 'head' | 'fruit' | 'bunch' | 'spear';

/** A published yield, per foot of row or per plant, in pounds or in what the source counts. */
export interface Yield extends Figure {
  readonly per: 'row foot' | 'plant';
  readonly of: YieldOf;
}

/** What is published on growing a crop. Amounts for a person or 100 ft of row say in `unit` what they count. */
export interface Growing {
  readonly crop: string;
  /** The crop that the figures are printed for, where it is another: zucchini has those of summer squash. */
  readonly printedFor: string;
  readonly latin: string;
  /** Every published yield, the default first. */
  readonly yields: readonly Yield[];
  /** Inches between plants in the row. */
  readonly spacing: Figure | null;
  /** Inches between rows. */
  readonly rowSpacing: Figure | null;
  /** Inches between plants each way in a wide bed. */
  readonly intensiveSpacing: Figure | null;
  /** Plants, seed, sets or crowns to 100 ft of row; the unit says which. */
  readonly plantingPer100Ft: readonly Figure[];
  readonly seedsPerOunce: Figure | null;
  readonly sow: readonly SowMethod[];
  /** Who says that it can be winter-sown, where it can. */
  readonly winterSownSource: SourceId | null;
  /** Weeks from sowing indoors to setting out. */
  readonly weeksIndoors: Figure | null;
  /** Weeks of sowing or setting out outdoors against the last spring frost; negative = before it. */
  readonly weeksFromLastFrost: Figure | null;
  readonly daysToMaturity: Figure | null;
  readonly maturityFrom: MaturityFrom;
  readonly frost: Said<FrostClass> | null;
  /** US federal minimum germination, percent. */
  readonly germination: Figure | null;
  /** Years that seed keeps. */
  readonly seedLife: Figure | null;
  /** For one person; the unit says what: row feet, plants, hills. */
  readonly perPersonFresh: readonly Figure[];
  readonly perPersonPreserved: readonly Figure[];
  readonly note: string | null;
}

interface RawAmount {
  readonly of: string;
  readonly is: RawFigure;
}
interface RawGrowing {
  readonly crop: string;
  readonly latin: string;
  readonly yields?: readonly { readonly per: string; readonly of: string; readonly is: RawFigure }[];
  readonly spacing?: RawFigure;
  readonly rows?: RawFigure;
  readonly intensive?: RawFigure;
  readonly planting?: readonly RawAmount[];
  readonly perOunce?: RawFigure;
  readonly sow: readonly string[];
  readonly winterSown?: string;
  readonly indoors?: RawFigure;
  readonly out?: RawFigure;
  readonly days?: RawFigure;
  readonly from: string;
  readonly frost?: readonly string[];
  readonly germination?: RawFigure;
  readonly seedLife?: RawFigure;
  readonly fresh?: readonly RawAmount[];
  readonly preserved?: readonly RawAmount[];
  readonly note?: string;
}

const ROWS = new Map((raw as unknown as readonly RawGrowing[]).map((row) => [row.crop, row]));

const PLURAL: Readonly<Record<YieldOf, string>> = {
  pound: 'pounds',
  ear: 'ears',
  stalk: 'stalks',
  head: 'heads',
  fruit: 'fruits',
  bunch: 'bunches',
  spear: 'spears',
};

function yieldFrom(one: { per: string; of: string; is: RawFigure }): Yield[] {
  const of = one.of as YieldOf;
  const per = one.per === 'row' ? 'row foot' : 'plant';
  // Sources print yields of 100 ft of row; per foot is the same figure with the point moved.
  const figure = figureFrom(one.is, `${PLURAL[of]} per ${per}`, one.per === 'row' ? 100 : 1);
  return figure ? [{ ...figure, per, of }] : [];
}

const amounts = (all: readonly RawAmount[] | undefined, per: string): Figure[] =>
  (all ?? []).flatMap((one) => figureFrom(one.is, `${one.of} ${per}`) ?? []);

function build(crop: string, row: RawGrowing): Growing {
  const [frost, frostSource = '', frostMark] = row.frost ?? [];
  return {
    crop,
    printedFor: row.crop,
    latin: row.latin,
    yields: (row.yields ?? []).flatMap(yieldFrom),
    spacing: figureFrom(row.spacing, 'inches between plants'),
    rowSpacing: figureFrom(row.rows, 'inches between rows'),
    intensiveSpacing: figureFrom(row.intensive, 'inches each way'),
    plantingPer100Ft: amounts(row.planting, 'per 100 ft of row'),
    seedsPerOunce: figureFrom(row.perOunce, 'seeds per ounce'),
    sow: row.sow as readonly SowMethod[],
    winterSownSource: row.winterSown ?? null,
    weeksIndoors: figureFrom(row.indoors, 'weeks indoors'),
    weeksFromLastFrost: figureFrom(row.out, 'weeks from the last frost'),
    daysToMaturity: figureFrom(row.days, `days from ${row.from}`),
    maturityFrom: row.from as MaturityFrom,
    frost: frost
      ? {
          value: frost as FrostClass,
          source: frostSource,
          certainty: frostMark === 'm' ? 'from memory' : 'published',
        }
      : null,
    germination: figureFrom(row.germination, 'percent'),
    seedLife: figureFrom(row.seedLife, 'years'),
    perPersonFresh: amounts(row.fresh, 'per person'),
    perPersonPreserved: amounts(row.preserved, 'per person'),
    note: row.note ?? null,
  };
}

const built = new Map<string, Growing>();

/**
 * What is published on growing a crop: yields, spacing, sowing, dates against the last frost, days to
 * maturity, frost class, germination and seed. Figures not published are null or empty.
 * Refused: `unknown-crop`, or `nothing-published` where no source looked up has the crop.
 */
export function growing(crop: string): Result<Growing> {
  const found = findCrop(crop);
  if (!found.ok) return found;
  const name = found.value.name;
  const known = built.get(name);
  if (known) return ok(known);
  const row = firstOfKin(found.value, (one) => ROWS.get(one));
  if (!row) {
    return refuse(
      'nothing-published',
      say`no growing figures are published here for ${name}.`,
      say`Enter your own yield and spacing.`,
    );
  }
  const value = build(name, row.value);
  built.set(name, value);
  return ok(value);
}

/**
 * The default yield of a crop per row foot or per plant, in pounds unless `of` says otherwise; null where
 * none is published so. K-State MF315 leads where it has the crop; the range spans every source.
 */
export function yieldOf(of: Growing, per: 'row foot' | 'plant', unit?: YieldOf): Yield | null {
  const here = of.yields.filter((one) => one.per === per);
  return (unit ? here.find((one) => one.of === unit) : here[0]) ?? null;
}

/**
 * By which yield a planting is reckoned: the published row-foot yield where there is one (pounds per row
 * foot then stay fixed, and spacing changes only plants and seeds), else the one per plant; null for neither.
 */
export const reckonedBy = (of: Growing): Yield | null =>
  yieldOf(of, 'row foot') ?? of.yields.find((one) => one.per === 'plant') ?? null;

/**
 * What a plant gives when a row-foot yield is shared by plants `inches` apart (more than 0); derived.
 * Null where there is neither spacing nor row-foot yield. `inches` defaults to the usual published spacing.
 */
export function plantShare(of: Growing, inches?: number, unit?: YieldOf): Figure | null {
  const row = yieldOf(of, 'row foot', unit);
  const apart = inches ?? of.spacing?.usual;
  if (!row || apart === undefined || !(apart > 0)) return null;
  return derived(
    row,
    `${PLURAL[row.of]} per plant`,
    measureSystem() === 'metric'
      ? say`yield of a metre of row × ${roundSig(apart * 2.54, 6)} centimetres between plants ÷ 100`
      : say`yield of a foot of row × ${apart} inches between plants ÷ 12`,
    (n) => (n * apart) / 12,
  );
}

/** Names of the crops with growing figures of their own. */
export const grownCrops = (): readonly string[] => [...ROWS.keys()];
