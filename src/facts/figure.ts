import type { Certainty, Figure, RawFigure, RawMark, RawReading, Reading } from './figure-types.js';

const certaintyOf = (mark: RawMark | undefined): Certainty =>
  mark?.m ? 'from memory' : mark?.d ? 'derived' : 'published';

/** One reading of the data files, with its numbers divided by `per` (100 for yields per 100 ft). */
export function readingFrom(raw: RawReading, per = 1): Reading {
  const [source, ...rest] = raw;
  const last = rest.at(-1);
  const mark = typeof last === 'object' ? last : undefined;
  const numbers = rest.filter((part): part is number => typeof part === 'number').map((n) => n / per);
  const low = numbers[0] ?? Number.NaN;
  const high = numbers.at(-1) ?? Number.NaN;
  const usual = numbers.length === 3 ? (numbers[1] ?? Number.NaN) : (low + high) / 2;
  return {
    low,
    usual,
    high,
    source: String(source),
    certainty: certaintyOf(mark),
    ...(mark?.n === undefined ? {} : { note: mark.n }),
    ...(mark?.x ? { aside: true } : {}),
  };
}

/**
 * A figure from its readings, the default first: `usual` is the default's; low and high span all readings
 * of the same measure. A recalled reading never widens the range of a published one.
 */
export function figureFrom(raw: RawFigure | undefined, unit: string, per = 1): Figure | null {
  const readings = (raw ?? []).map((one) => readingFrom(one, per));
  const first = readings[0];
  if (!first) return null;
  const counted = readings.filter(
    (one) =>
      one === first || (!one.aside && (first.certainty === 'from memory' || one.certainty !== 'from memory')),
  );
  return {
    low: Math.min(...counted.map((one) => one.low)),
    usual: first.usual,
    high: Math.max(...counted.map((one) => one.high)),
    unit,
    source: first.source,
    certainty: first.certainty,
    ...(first.note === undefined ? {} : { note: first.note }),
    readings,
  };
}

/**
 * A figure that follows from another by arithmetic: each number goes through `change`, and the result is
 * marked derived (or stays from memory). `change` may turn the order round, as a reciprocal does.
 */
export function derived(from: Figure, unit: string, note: string, change: (n: number) => number): Figure {
  const certainty: Certainty = from.certainty === 'from memory' ? 'from memory' : 'derived';
  const one = change(from.low);
  const other = change(from.high);
  const reading: Reading = {
    low: Math.min(one, other),
    usual: change(from.usual),
    high: Math.max(one, other),
    source: from.source,
    certainty,
    note,
  };
  const { aside: _aside, ...plain } = reading;
  return { ...plain, unit, readings: [reading] };
}
