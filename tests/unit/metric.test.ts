import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SETTINGS } from '../../src/book/settings.js';
import { type LiveBook, openBook, parseBook } from '../../src/core.js';
import { measureIn, metricOf } from '../../src/units/index.js';
import { spoken } from '../../src/words/index.js';
import { wrongIn } from '../support/read-steps.js';

/** Measures of a US customary household. Containers (a quart jar) are chosen by the household, and keep their names. */
const CUSTOMARY =
  /\b(?:lbs?|pounds?|ounces?|oz|ft|feet|foot|inch|inches|bushels?|bu|quarts?(?! jars?\b)|pints?(?! jars?\b| freezer)|gallons?(?! freezer| jar)|cups?|acres?|psi|°F)\b/i;

/** Printed by a source, in its own measures; no plan reckons with them. */
const PRINTED = /^no bushel weight|^ends as for|^a pint weighs about/i;

/** A household that counts a food in pounds, or writes a dish in cups, has chosen that itself. */
const CHOSEN = /(?:[\d.,]*[\d⅓⅔½¼¾⅛] |^)(?:pounds?|cups?|quart freezer bags?)\b|, pounds?(?=,)/g;
const CHOOSING: ReadonlySet<string> = new Set(['shelf', 'draws', 'foods', 'dishes', 'week', 'batches']);

/** Quoted, it is the name of a figure or what somebody would write. */
const bare = (text: string): string => text.replace(/“[^”]*”|"[^"]*"/g, '');

const ROWS = 8;

function open(): LiveBook {
  const read = parseBook(readFileSync('demo/data/tamarack-bench.json', 'utf8'));
  if (!read.ok) throw new Error('the demo book does not open');
  return openBook(read.book);
}

const customary = open();
const metric = open();
beforeAll(() => metric.apply({ do: 'set setting', setting: 'measures', typed: 'metric' }), 90_000);
afterAll(() => {
  metric.close();
  customary.close();
});

const columns = customary
  .sheets()
  .flatMap(({ id, kind }) =>
    customary
      .columns(id)
      .flatMap(({ id: column, role }) => (role === 'planning' ? [{ sheet: id, kind, column }] : [])),
  );

describe('settings of a metric household', () => {
  it('are explained in the units that they are written in', () => {
    measureIn('metric');
    for (const { id, unit, help } of SETTINGS) {
      if (unit !== undefined && metricOf(unit)) expect(bare(spoken(help)), id).not.toMatch(CUSTOMARY);
    }
    measureIn('US customary');
    expect(spoken(SETTINGS.find(({ id }) => id === 'altitude_ft')!.help)).toMatch(/^Feet/);
  });
});

describe.each(columns)('$kind, $column, for a metric household', ({ sheet, kind, column }) => {
  const rows = customary.rowIds(sheet).slice(0, ROWS);

  it('names no customary unit', () => {
    const { title, unit, help } = metric.column(sheet, column)!;
    for (const text of [title, unit ?? '', help]) expect(bare(text)).not.toMatch(CUSTOMARY);
  });

  it('shows the same amount, in metric units', () => {
    const declared = customary.column(sheet, column)!.unit;
    for (const row of rows) {
      const was = customary.value(sheet, row, column);
      const now = metric.value(sheet, row, column);
      const unit = customary.unit(sheet, row, column) ?? '';
      const own = kind === 'facts' ? String(customary.value(sheet, row, 'unit') ?? '') : unit;
      const turned = /jar|bag|can$/.test(own) ? null : metricOf(own);
      const counted =
        kind === 'facts' ? column === 'own_seasons' : column !== 'holds' && declared === undefined;
      if (typeof was !== 'number' || !turned || counted) continue;
      // What was written is turned to six digits.
      expect(
        Math.abs(Number(now) / (was * turned.factor || 1) - (was === 0 ? 0 : 1)),
        `${row}: ${was} ${own}`,
      ).toBeLessThan(2e-5);
      if (kind !== 'facts') expect(metric.unit(sheet, row, column)).toBe(turned.unit);
    }
  });

  it('is worked out in metric units, and the arithmetic is right', () => {
    for (const row of rows) {
      const working = metric.working(sheet, row, column);
      if (!working) continue;
      const { title, unit, rule, inputs, steps, missing = '', changes = [] } = working;
      const texts = [title, unit, rule, missing, ...changes, ...steps.map(({ text }) => text)];
      for (const { name, unit: of } of inputs) texts.push(name, of);
      for (const text of texts) {
        if (PRINTED.test(text)) continue;
        const own = CHOOSING.has(kind) ? text.replace(CHOSEN, '') : text;
        expect(bare(own), text).not.toMatch(CUSTOMARY);
      }
      for (const { text } of steps) expect(wrongIn(text)).toBeNull();
    }
  });
});

describe('what a household writes', () => {
  it('means the same when it goes over to metric measures, and back in one step', () => {
    const live = open();
    const [beds] = live.sheets().filter(({ kind }) => kind === 'beds');
    const row = live.rowIds(beds!.id)[0]!;
    live.set(beds!.id, row, 'own_spacing', 12);
    const before = live.toJSON();
    live.apply({ do: 'set setting', setting: 'measures', typed: 'metric' });
    expect(live.value(beds!.id, row, 'own_spacing')).toBe(30.48);
    expect(live.setting('altitude_ft')).toBe(701.04);
    live.undo();
    expect(live.toJSON()).toEqual(before);
    live.close();
  });

  it('is read in the household’s measures', () => {
    const live = open();
    live.apply({ do: 'set setting', setting: 'measures', typed: 'metric' });
    const beds = live.sheets().find(({ kind }) => kind === 'beds')!.id;
    const { rows } = live.insertRows(beds, [{ crop: 'kale', plants: 10, own_spacing: 50, own_yield: 0.5 }]);
    expect(live.value(beds, rows[0]!, 'row_feet')).toBeCloseTo(5, 9);
    expect(live.value(beds, rows[0]!, 'expected_pounds')).toBeCloseTo(5, 9);
    live.close();
  });
});
