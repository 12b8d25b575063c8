import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readLotLine } from '../../components/sheet/lot-line.js';
import { readAltitude } from '../../components/sheet/read-altitude.js';
import { blankBook } from '../../src/book/index.js';
import { HyperFormulaEngine } from '../../src/engine/hyperformula-engine.js';
import { saysUnknownFunction } from '../../src/engine/messages.js';
import { EXAMPLE_CONTEXT } from '../../src/formulas/example-working.js';
import { exampleTexts, functionNamed, tryFunction } from '../../src/formulas/index.js';
import { openBook } from '../../src/live/live-book.js';
import { guessReading } from '../../src/tables/guess.js';
import { dateOrderOf } from '../../src/tables/plan.js';
import { german } from '../../src/words/german.js';
import { speakWith } from '../../src/words/index.js';

beforeAll(() => speakWith('de', german));
afterAll(() => speakWith('en-US', null));

const open = () =>
  openBook(blankBook('Vorrat', 'vorrat'), {
    engine: new HyperFormulaEngine({ asOf: 20_485, basis: 'usual' }),
    today: () => 20_485,
  });

describe('what is typed in German', () => {
  it.each([
    ['Birnen 2,5 Pint-Gläser', 'Birnen', 2.5, 'pint jar'],
    ['Tomaten 24 Gläser', 'Tomaten', 24, null],
    ['3 Quart-Gläser von Pfirsichen', 'Pfirsichen', 3, 'quart jar'],
    ['Eier 2 Dutzend', 'Eier', 2, 'dozen'],
  ])('%s is a lot', (line, food, count, container) => {
    expect(readLotLine(line, 'canned')).toEqual({ ok: true, value: { food, count, container } });
  });

  it('is a day with the day first, whatever the measures, in a cell and in a file', () => {
    const live = open();
    const { rows } = live.insertRows('shelf', [{ put_up_on: '4.5.2026' }]);
    expect(live.value('shelf', rows[0]!, 'put_up_on')).toBe('2026-05-04');
    expect(dateOrderOf(live)).toBe('day first');
    live.close();
  });

  it('is a tick in a table', () => {
    const rows = ['ja', 'nein', 'ja'].map((cell, i) => ({ line: i + 1, cells: [cell] }));
    expect(guessReading(rows, 0, { dateOrder: 'day first', semicolons: true }).type).toBe('tick');
  });

  it('is an altitude in the measures that the household reads', () => {
    expect(readAltitude('1.200 ft')).toBe(1200);
    expect(readAltitude('370 m')).toBe(1214);
    expect(readAltitude('370', 'metric')).toBe(370);
    expect(readAltitude('1.200 ft', 'metric')).toBe(365.76);
  });

  it('is a number for a function that is tried', () => {
    const weeks = functionNamed('WEEKS_OF_SUPPLY')!;
    expect(exampleTexts(weeks)).toEqual(['24', '0,8']);
    const { formula, answer } = tryFunction(weeks, ['24', '0,5'], EXAMPLE_CONTEXT);
    expect(formula).toBe('=WEEKS_OF_SUPPLY(24, 0.5)');
    expect(answer.ok && answer.value.text).toBe('48 Wochen');
  });
});

it('each name stands once in the lists to choose from, and means what the cell holds', () => {
  const live = open();
  const { rows } = live.insertRows('shelf', [
    { food: 'Eier', container: 'each' },
    { food: 'Kohl', container: 'Stück' },
  ]);
  const offered = (row: string | null) => live.choices('shelf', row, 'container')!;
  for (const row of [null, ...rows]) {
    const labels = offered(row).map(({ label }) => label);
    expect(labels).toEqual([...new Set(labels)]);
    expect(labels).toContain('Stück');
  }
  expect(offered(rows[0]!).find(({ label }) => label === 'Stück')!.value).toBe('each');
  expect(live.value('shelf', rows[1]!, 'container')).toBe(
    offered(null).find(({ label }) => label === 'Stück')!.value,
  );
  live.close();
});

describe('what a formula says in German', () => {
  it('is that there is no such function, and the list offers others', () => {
    const live = open();
    const { rows } = live.insertRows('shelf', [{ note: '=SUMM(1)' }]);
    const value = live.value('shelf', rows[0]!, 'note') as { readonly message: string };
    expect(value.message).toMatch(/^Es gibt keine Funktion namens SUMM/);
    expect(saysUnknownFunction(value.message)).toBe(true);
    live.close();
  });

  it('follows the language of the page', () => {
    const live = open();
    const { rows } = live.insertRows('shelf', [{ note: '=PLANTS_FOR("potatoe", 5)' }]);
    const message = () => (live.value('shelf', rows[0]!, 'note') as { readonly message: string }).message;
    expect(message()).toMatch(/^keine Kultur namens „potatoe“/i);
    speakWith('en-US', null);
    expect(message()).toMatch(/^no crop called "potatoe"/i);
    speakWith('de', german);
    expect(message()).toMatch(/^keine Kultur namens „potatoe“/i);
    live.close();
  });
});
