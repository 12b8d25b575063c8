import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { allFigures, crops, findCrop, sources, sourceText } from '../../src/facts/index.js';
import { DATA_SCHEMAS } from '../../src/facts/schemas.js';

const folder = new URL('../../src/facts/data/', import.meta.url);
const files = readdirSync(folder).map((file) => file.replace(/\.json$/, ''));
const read = (file: string): unknown => JSON.parse(readFileSync(new URL(`${file}.json`, folder), 'utf8'));

describe('data files', () => {
  it('has a schema for every file, and a file for every schema', () => {
    expect(files.sort()).toEqual(Object.keys(DATA_SCHEMAS).sort());
  });

  it.each(Object.entries(DATA_SCHEMAS))('%s matches its schema', (file, schema) => {
    const result = schema.safeParse(read(file));
    expect(result.success ? [] : result.error.issues).toEqual([]);
  });

  it('turns away a row whose range runs backwards, or without a source', () => {
    const row = (is: unknown) => DATA_SCHEMAS.densities.safeParse([{ food: 'x', is }]).success;
    expect(row([['mu', 2, 3]])).toBe(true);
    expect(row([['mu', 3, 2]])).toBe(false);
    expect(row([[2, 3]])).toBe(false);
    expect(row([])).toBe(false);
  });
});

/** Every array of the data that looks like a reading gives its source first. */
function sourcesIn(value: unknown, found: string[] = []): string[] {
  if (Array.isArray(value)) {
    if (typeof value[0] === 'string' && typeof value[1] === 'number') found.push(value[0]);
    else for (const one of value) sourcesIn(one, found);
  } else if (typeof value === 'object' && value !== null) {
    for (const [key, one] of Object.entries(value)) {
      if (key === 'source' && typeof one === 'string') found.push(one);
      else sourcesIn(one, found);
    }
  }
  return found;
}

describe('sources', () => {
  const known = sources();
  const used = files.filter((file) => file !== 'sources').flatMap((file) => sourcesIn(read(file)));

  it('names every source that a figure gives', () => {
    const missing = used.flatMap((id) => id.split('+')).filter((id) => !(id in known));
    expect(missing).toEqual([]);
    expect(used.length).toBeGreaterThan(1000);
  });

  it('cites publishers and titles, not addresses or machine codes', () => {
    const odd = Object.values(known).filter((text) =>
      /https?:|www\.|\.(?:com|org|net|edu|gov)\b|_|\/|PFS|NDB/.test(text),
    );
    expect(odd).toEqual([]);
  });

  it('says that a figure is in one or more of several sources, where the sources are not told apart', () => {
    expect(sourceText('mu+ume')).toMatch(/^one or more of: University of Missouri.*; University of Maine/);
  });
});

describe('every figure', () => {
  const all = allFigures();

  it('has a source, a unit and a range in order', () => {
    expect(all.length).toBeGreaterThan(1000);
    const wrong = all.filter(
      (one) =>
        !one.source ||
        !one.unit ||
        ![one.low, one.usual, one.high].every(Number.isFinite) ||
        one.low > one.usual + 1e-9 ||
        one.usual > one.high + 1e-9,
    );
    expect(wrong.map((one) => one.id)).toEqual([]);
  });

  it('has an id of its own', () => {
    expect(new Set(all.map((one) => one.id)).size).toBe(all.length);
  });

  it('keeps what its first reading says as the usual figure, or says why not', () => {
    const moved = all.filter((one) => one.figure.readings[0]?.usual !== one.usual && one.note === '');
    expect(moved.map((one) => one.id)).toEqual([]);
  });

  it('marks recalled figures as such: the whole drying table is recalled', () => {
    const drying = all.filter((one) => one.topic === 'drying');
    expect(drying.length).toBeGreaterThan(20);
    expect(drying.every((one) => one.certainty === 'from memory')).toBe(true);
  });

  it('never lets a recalled reading widen a published range', () => {
    const wrong = all.filter((one) => {
      if (one.certainty !== 'published' || one.note.startsWith('usual is')) return false;
      const sure = one.figure.readings.filter((each) => each.certainty !== 'from memory' && !each.aside);
      return (
        one.low < Math.min(...sure.map((each) => each.low)) ||
        one.high > Math.max(...sure.map((each) => each.high))
      );
    });
    expect(wrong.map((one) => one.id)).toEqual([]);
  });
});

describe('crop registry', () => {
  it('finds every crop by its name, its plural and each of its synonyms', () => {
    for (const crop of crops()) {
      for (const name of [crop.name, crop.plural, crop.name.toUpperCase(), ...crop.also]) {
        const found = findCrop(name);
        expect(found.ok && found.value.name, name).toBe(crop.name);
      }
    }
  });

  it('holds every crop that a data file names', () => {
    const names = new Set(crops().map((crop) => crop.name));
    const rows = ['growing', 'trees', 'canning', 'freezing', 'water', 'bushels', 'cold'].flatMap(
      (file) => read(file) as { crop: string }[],
    );
    expect(rows.map((row) => row.crop).filter((name) => !names.has(name))).toEqual([]);
  });

  it('points from a crop only to crops that exist', () => {
    const names = new Set(crops().map((crop) => crop.name));
    expect(crops().filter((crop) => crop.like !== null && !names.has(crop.like))).toEqual([]);
  });
});
