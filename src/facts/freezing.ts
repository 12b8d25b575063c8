import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { findCrop, firstOfKin } from './crops.js';
import raw from './data/freezing.json';
import { derived, figureFrom } from './figure.js';
import type { Figure, RawFigure, RawReading } from './figure-types.js';

/** One printed line: pints frozen from a market container. */
export interface FrozenYield {
  /** 'bushel', 'lug', '15 lb' and so on; 'lb' where only pounds per pint are printed. */
  readonly of: string;
  readonly pounds: Figure | null;
  readonly pints: Figure | null;
  readonly poundsPerPint: Figure | null;
  readonly note: string | null;
}

/** What is published on freezing a crop. Weights are as bought: in pods, in husks. */
export interface Freezing {
  readonly crop: string;
  readonly printedFor: string;
  /** Pounds as bought to a frozen pint. Worked out from the container, and marked so, where not printed. */
  readonly poundsPerPint: Figure | null;
  readonly pintsPerBushel: Figure | null;
  readonly yields: readonly FrozenYield[];
}

interface RawFreezing {
  readonly crop: string;
  readonly pack?: string;
  readonly of: string;
  readonly lb?: readonly number[];
  readonly pints?: RawFigure;
  readonly perPint?: RawFigure;
  readonly note?: string;
}

const BY_CROP = new Map<string, RawFreezing[]>();
for (const row of raw as unknown as readonly RawFreezing[]) {
  const rows = BY_CROP.get(row.crop);
  if (rows) rows.push(row);
  else BY_CROP.set(row.crop, [row]);
}

const recalled = (reading: RawReading): boolean => {
  const mark = reading.at(-1);
  return typeof mark === 'object' && mark.m === 1;
};

/** One figure of several lines: each reading once, looked-up ones before recalled ones. */
function together(all: readonly (RawFigure | undefined)[], unit: string): Figure | null {
  const once = new Map(all.flatMap((one) => one ?? []).map((one) => [JSON.stringify(one), one]));
  const readings = [...once.values()].sort((a, b) => Number(recalled(a)) - Number(recalled(b)));
  return figureFrom(readings, unit);
}

function line(row: RawFreezing): FrozenYield {
  const source = String((row.pints ?? row.perPint)?.[0]?.[0] ?? '');
  return {
    of: row.of,
    pounds: row.lb ? figureFrom([[source, ...row.lb]], `pounds per ${row.of}`) : null,
    pints: figureFrom(row.pints, `pints per ${row.of}`),
    poundsPerPint: figureFrom(row.perPint, 'pounds per pint'),
    note: row.note ?? null,
  };
}

function workedOut(yields: readonly FrozenYield[]): Figure | null {
  for (const one of yields) {
    const pounds = one.pounds?.usual;
    if (one.pints && pounds !== undefined) {
      const note = say`${pounds} pounds ÷ the pints printed for a ${one.of}`;
      return derived(one.pints, 'pounds per pint', note, (pints) => pounds / pints);
    }
  }
  return null;
}

/**
 * What is published on freezing a crop: pounds to a pint and pints to a bushel or other container.
 * Refused: `unknown-crop`, or `nothing-published`.
 */
export function freezing(crop: string): Result<Freezing> {
  const found = findCrop(crop);
  if (!found.ok) return found;
  const rows = firstOfKin(found.value, (name) => BY_CROP.get(name));
  if (!rows) {
    return refuse(
      'nothing-published',
      say`no frozen yield is published here for ${found.value.name}.`,
      say`Enter your own pounds to a pint.`,
    );
  }
  // Sauce and the like are other products: their lines stay in the list, not in the figures.
  const plain = rows.value.filter((row) => row.pack === undefined);
  const yields = rows.value.map(line);
  return ok({
    crop: found.value.name,
    printedFor: rows.crop.name,
    poundsPerPint:
      together(
        plain.map((row) => row.perPint),
        'pounds per pint',
      ) ?? workedOut(plain.map(line)),
    pintsPerBushel: together(
      plain.filter((row) => row.of === 'bushel').map((row) => row.pints),
      'pints per bushel',
    ),
    yields,
  });
}

/** Names of the crops with frozen yields of their own. */
export const frozenCrops = (): readonly string[] => [...BY_CROP.keys()];
