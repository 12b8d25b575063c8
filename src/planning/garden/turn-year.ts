import { containerWithId } from '../../units/index.js';
import { say } from '../../words/index.js';
import type { DayNumber } from '../types.js';
import { isAmount } from '../words.js';
import type { BatchesPlan } from './batch-types.js';
import type { BedReckoning, BedsPlan } from './beds.js';
import { type FigureName, figureKey, figureText } from './figure-names.js';
import { seasonOfHarvest } from './frost.js';
import type { HarvestPlan, HarvestReckoning } from './harvest-rows.js';
import { type OwnFigures, ownFigures } from './own-figures.js';
import { ownInches } from './plant-yield.js';
import { isPerennial } from './planting-dates.js';
import type { FactRow } from './types.js';
import type { GardenWindows } from './windows.js';
import { shown } from './words.js';

/** Sheets that turning the year touches, by kind. */
export type YearSheet = 'facts' | 'beds' | 'harvest' | 'week';

/** One plain edit. New rows have no ids yet: the book gives them. All of them together are one command. */
export type YearEdit =
  | {
      readonly do: 'insert rows';
      readonly kind: YearSheet;
      readonly rows: readonly { readonly cells: Readonly<Record<string, string | number>> }[];
    }
  | { readonly do: 'remove rows'; readonly kind: YearSheet; readonly rows: readonly string[] }
  | {
      readonly do: 'set cells';
      readonly kind: YearSheet;
      readonly cells: readonly {
        readonly row: string;
        readonly column: string;
        readonly typed: string | number | null;
      }[];
    };

export interface TurnInput {
  readonly harvest: HarvestPlan;
  readonly beds: BedsPlan;
  readonly batches: BatchesPlan;
  readonly facts: readonly FactRow[];
  /** Ids of the rows of Week. */
  readonly weekRows: readonly string[];
  readonly windows: GardenWindows;
  readonly figures: OwnFigures;
  readonly asOf: DayNumber;
}

/** What a season taught of one figure. */
export interface Lesson {
  readonly figure: string;
  readonly unit: string;
  readonly season: number;
  readonly pounds: number;
  /** Plants, or containers. */
  readonly count: number;
  /** What that season gave, each. */
  readonly own: number;
  /** In use before, and from now on. */
  readonly before: number | null;
  readonly after: number | null;
  /** Seasons that it rests on now. */
  readonly seasons: number;
}

/** The year turned: the edits, and what they come to in words. */
export interface TurnedYear {
  /** The season that is closed. */
  readonly season: number;
  readonly edits: readonly YearEdit[];
  readonly learned: readonly Lesson[];
  /** What could not be recorded, with why. */
  readonly notRecorded: readonly string[];
  readonly summary: readonly string[];
}

interface Total {
  readonly name: FigureName;
  readonly season: number;
  readonly spacing: number | null;
  pounds: number;
  plants: number;
}

/** Plants that a season's harvest of a crop came from: of each planting those written, else those planned. */
function plantsOf(bed: BedReckoning, rows: readonly HarvestReckoning[]): number | null {
  const written = rows.flatMap(({ row }) => (isAmount(row.plants) && row.plants > 0 ? [row.plants] : []));
  return written.length > 0 ? Math.max(...written) : isAmount(bed.row.plants) ? bed.row.plants : null;
}

/** Totals of the harvest by crop, season and spacing. */
function yields(input: TurnInput, notRecorded: string[]): Total[] {
  const groups = new Map<string, HarvestReckoning[]>();
  for (const at of input.harvest.reckoned.values()) {
    if (at.row.amount === null) continue;
    if (at.crop === null || !at.pounds?.ok) {
      notRecorded.push(
        say`A harvest${at.crop === null ? '' : say` of ${at.crop}`} is left out: ${
          at.pounds && !at.pounds.ok ? at.pounds.problem.message : say`what came in is not named.`
        }`,
      );
      continue;
    }
    const season = at.season ?? seasonOfHarvest(input.windows.years, input.asOf).year;
    const key = `${at.crop}|${season}`;
    const group = groups.get(key);
    if (group) group.push(at);
    else groups.set(key, [at]);
  }
  const totals: Total[] = [];
  for (const [key, rows] of groups) {
    const [crop = '', year = ''] = key.split('|');
    const season = Number(year);
    const name: FigureName = { of: crop, what: 'yield' };
    // A planting of that season that gave nothing counts too: its plants stood in the ground.
    const beds = [...input.beds.reckoned.values()].filter(
      ({ crop: of, yearsOff, dates }) =>
        of === crop &&
        yearsOff === 0 &&
        (!dates.sown || isPerennial(dates.how) || dates.season.year === season),
    );
    const loose = rows.filter(({ bed }) => bed === null);
    const bySpacing = new Map<number | null, Total>();
    let lacking = false;
    for (const bed of beds) {
      const own = rows.filter((row) => row.bed === bed);
      const plants = plantsOf(bed, own);
      if (plants === null && own.length > 0) lacking = true;
      if (plants === null) continue;
      const spacing = ownInches(bed.row) ?? null;
      const total = bySpacing.get(spacing) ?? { name, season, spacing, pounds: 0, plants: 0 };
      total.plants += plants;
      for (const { pounds } of own) total.pounds += pounds?.ok ? pounds.value : 0;
      bySpacing.set(spacing, total);
    }
    const loosePounds = loose.reduce((sum, { pounds }) => sum + (pounds?.ok ? pounds.value : 0), 0);
    const loosePlants = Math.max(0, ...loose.map(({ row }) => (isAmount(row.plants) ? row.plants : 0)));
    if (bySpacing.size === 0 && loosePlants > 0) {
      bySpacing.set(null, { name, season, spacing: null, pounds: loosePounds, plants: loosePlants });
    } else if (loose.length > 0) {
      // Harvest of the crop as a whole belongs to all its plantings, by their plants.
      const all = [...bySpacing.values()];
      const plants = all.reduce((sum, one) => sum + one.plants, 0);
      for (const one of all) one.pounds += plants > 0 ? (loosePounds * one.plants) / plants : 0;
    }
    const found = [...bySpacing.values()].filter(({ plants }) => plants > 0);
    if (lacking || found.length === 0) {
      notRecorded.push(
        say`${crop}, ${season}: how many plants the harvest came from is not written. Write “Plants planned” in Beds or “Plants” in Harvest, then turn the year.`,
      );
      continue;
    }
    totals.push(...found);
  }
  return totals;
}

/** Pounds per container reached in batches of one crop, for seasons that Facts has no record of yet. */
function containers(input: TurnInput): Total[] {
  const totals = new Map<string, Total>();
  for (const { row, done, crops } of input.batches.reckoned.values()) {
    const [only, ...more] = crops;
    if (!done || !only || more.length > 0 || only.pounds === null || !(only.pounds > 0)) continue;
    // Pounds written in Foods are of that food alone, a sauce say: they teach nothing of the plain crop in a jar.
    if (only.typed) continue;
    if (row.way === null || row.container === null || !containerWithId(row.container)) continue;
    const name: FigureName = {
      of: only.crop,
      what: 'pounds per container',
      container: row.container,
      way: row.way,
    };
    const season = seasonOfHarvest(input.windows.years, row.date ?? input.asOf).year;
    if (recorded(input.facts, name, season, null, input.figures)) continue;
    const key = `${figureKey(name)}|${season}`;
    const total = totals.get(key) ?? { name, season, spacing: null, pounds: 0, plants: 0 };
    total.pounds += only.pounds;
    total.plants += row.filled ?? 0;
    totals.set(key, total);
  }
  return [...totals.values()];
}

function recorded(
  facts: readonly FactRow[],
  name: FigureName,
  season: number,
  spacing: number | null,
  figures: OwnFigures,
): FactRow | undefined {
  return facts.find((row) => {
    const read = figures.names.get(row.id);
    return (
      read &&
      figureKey(read) === figureKey(name) &&
      row.season === season &&
      row.spacing === spacing &&
      row.pounds !== null
    );
  });
}

function lesson(total: Total, before: OwnFigures, after: OwnFigures): Lesson {
  const was = before.inUse(total.name);
  const is = after.inUse(total.name);
  return {
    figure: figureText(total.name),
    unit: is.ok ? is.value.unit : '',
    season: total.season,
    pounds: total.pounds,
    count: total.plants,
    own: total.pounds / total.plants,
    before: was.ok ? was.value.usual : null,
    after: is.ok ? is.value.usual : null,
    seasons: is.ok ? new Set(is.value.seasons.map(({ year }) => year)).size : 0,
  };
}

const figureWords = (n: number | null): string =>
  n === null ? say`not known` : String(Math.round(n * 100) / 100);

/**
 * Closes the season: its raw totals go into Facts, Harvest and Week are emptied, plantings are made ready for the
 * next year. Changes nothing itself: it answers edits, which the book does as one command that can be undone.
 */
export function turnYear(input: TurnInput): TurnedYear {
  const notRecorded: string[] = [];
  const totals = [...yields(input, notRecorded), ...containers(input)]
    .filter(({ pounds, plants }) => isAmount(pounds / plants) && isAmount(pounds))
    .sort((a, b) => (figureText(a.name) < figureText(b.name) ? -1 : 1));
  const seasons = [...input.harvest.reckoned.values()].flatMap(({ season }) =>
    season === null ? [] : [season],
  );
  const season =
    seasons.length > 0 ? Math.max(...seasons) : seasonOfHarvest(input.windows.years, input.asOf).year;

  const inserted: { cells: Record<string, string | number> }[] = [];
  const updates: { row: string; column: string; typed: string | number | null }[] = [];
  let facts: FactRow[] = [...input.facts];
  for (const [i, total] of totals.entries()) {
    const was = recorded(input.facts, total.name, total.season, total.spacing, input.figures);
    const pounds = shown(total.pounds + (was?.pounds ?? 0)) ?? 0;
    const plants = shown(Math.max(total.plants, was?.plants ?? 0)) ?? 0;
    if (was) {
      updates.push(
        { row: was.id, column: 'pounds', typed: pounds },
        { row: was.id, column: 'plants', typed: plants },
      );
      facts = facts.map((row) => (row === was ? { ...row, pounds, plants } : row));
      continue;
    }
    const spacing = total.spacing === null ? {} : { spacing: total.spacing };
    inserted.push({
      cells: { figure: figureText(total.name), season: total.season, pounds, plants, ...spacing },
    });
    facts.push({
      id: `new ${i}`,
      figure: figureText(total.name),
      ownValue: null,
      season: total.season,
      pounds,
      plants,
      spacing: total.spacing,
    });
  }
  const after = ownFigures(facts);
  const learned = totals.map((total) => lesson(total, input.figures, after));

  const beds: typeof updates = [];
  for (const { row, dates } of input.beds.reckoned.values()) {
    // What was sown for the season to come, as garlic is in fall, stays as it is.
    if (row.sownOn !== null && dates.season.year <= season && !isPerennial(dates.how)) {
      beds.push({ row: row.id, column: 'sown_on', typed: null });
    }
    if (row.nthYear !== null) beds.push({ row: row.id, column: 'nth_year', typed: row.nthYear + 1 });
  }
  const harvestRows = [...input.harvest.reckoned.keys()];
  const edits: YearEdit[] = [];
  if (inserted.length > 0) edits.push({ do: 'insert rows', kind: 'facts', rows: inserted });
  if (updates.length > 0) edits.push({ do: 'set cells', kind: 'facts', cells: updates });
  if (beds.length > 0) edits.push({ do: 'set cells', kind: 'beds', cells: beds });
  if (harvestRows.length > 0) edits.push({ do: 'remove rows', kind: 'harvest', rows: harvestRows });
  if (input.weekRows.length > 0) edits.push({ do: 'remove rows', kind: 'week', rows: input.weekRows });
  return {
    season,
    edits,
    learned,
    notRecorded,
    summary: [
      say`The season of ${season} is closed. The shelf and its draws are carried forward as they stand.`,
      ...learned.map(
        ({ figure, own, unit, before, after: now, seasons: n }) =>
          say`${figure}: ${figureWords(own)} ${unit} this season; the plan counted on ${figureWords(before)} and now counts on ${figureWords(now)}, learned from ${n} ${n === 1 ? 'season' : 'seasons'}.`,
      ),
      ...notRecorded,
      say`Emptied: ${harvestRows.length} ${harvestRows.length === 1 ? 'row' : 'rows'} of Harvest, ${input.weekRows.length} of Week. Undo brings them back.`,
    ],
  };
}
