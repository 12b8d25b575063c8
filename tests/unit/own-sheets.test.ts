import { afterEach, beforeEach, expect, it } from 'vitest';
import { openBook } from '../../src/core.js';
import { copySheet } from '../../src/live/doings/copy-sheet.js';
import { sheetFromKind } from '../../src/live/doings/sheet-from-kind.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { AS_OF, startingBook } from '../support/random-book.js';

let live: LiveBook;
beforeEach(() => {
  live = startingBook();
});
afterEach(() => live.close());

/** Copies a sheet; answers the id of the copy. */
function copy(sheet: string, title = 'Copy'): string {
  const command = copySheet(live, sheet, title);
  if (!command.ok) throw new Error(command.problem.message);
  const done = live.apply(command.value);
  if (!done.ok) throw new Error(done.problem.message);
  return live.sheets().find((each) => each.title === title)!.id;
}

const titles = (sheet: string) => live.columns(sheet).map(({ title }) => title);
const row = (sheet: string, i: number): Record<string, unknown> =>
  Object.fromEntries(
    live.columns(sheet).map(({ id, title }) => [title, live.value(sheet, live.rowIds(sheet)[i]!, id)]),
  );
const table = (sheet: string) => live.rowIds(sheet).map((_, i) => Object.values(row(sheet, i)));

function richSheet(): void {
  live.apply({
    do: 'add sheet',
    sheet: 'rich',
    title: 'Rich',
    columns: [
      { id: 'total', title: 'Total', as: { formula: '=Amount*2+SUM(B1:B2)' } },
      { id: 'amount', title: 'Amount', as: { type: 'number', decimals: 1, measure: 'cup', summary: 'sum' } },
      { id: 'code', title: 'Code', as: { type: 'text', width: 222, note: 'From the fair' } },
      { id: 'any', title: 'Anything', as: { marks: [{ when: 'double', colour: 'sky' }], pinned: true } },
      { id: 'hand', title: 'On hand', as: { plan: { kind: 'foods', column: 'on_hand', by: 'any' } } },
      { id: 'kind', title: 'Kind', as: { type: 'choice', choices: ['a', 'b'], hidden: true } },
    ],
    rows: [
      { id: 'x1', cells: { amount: 2, code: '007', any: 'tomatoes', kind: 'a' } },
      { id: 'x2', cells: { amount: '=Rich!B1+1', code: '12', any: "'15", kind: 'c' } },
      { id: 'x3', cells: { amount: '=Notes!A1', any: 'peas' } },
    ],
  });
  live.apply({
    do: 'mark cells',
    sheet: 'rich',
    cells: [{ row: 'x2', column: 'code' }],
    colour: 'leaf',
    note: 'Ask Ben',
  });
  live.apply({ do: 'group rows', sheet: 'rich', by: 'kind' });
}

it('copies a sheet of one’s own with all that is on it, and takes the copy back in one step', () => {
  richSheet();
  const saved = JSON.stringify(live.toJSON());
  const to = copy('rich');
  expect(titles(to)).toEqual(titles('rich'));
  expect(table(to)).toEqual(table('rich'));
  const plain = (sheet: string) =>
    live.columns(sheet).map(({ id: _, taken, ...rest }) => ({ ...rest, taken: taken?.column }));
  expect(plain(to)).toEqual(plain('rich'));
  const [id, code] = [live.rowIds(to)[1]!, live.columns(to)[2]!.id];
  expect([live.colourOf(to, id, code), live.noteOf(to, id, code)]).toEqual(['leaf', 'Ask Ben']);
  expect(live.groupsOf(to)?.map(({ label }) => label)).toEqual(['a', 'c', '(blank)']);
  expect(live.undoLabel).toBe('copy of “Rich”');
  live.undo();
  expect(JSON.stringify(live.toJSON())).toBe(saved);
});

it('has formulas that point into the copy, and elsewhere where they did', () => {
  richSheet();
  const to = copy('rich');
  const amount = live.columns(to)[1]!.id;
  live.set(to, live.rowIds(to)[0]!, amount, 10);
  expect(row(to, 0).Total).toBe(10 * 2 + 10 + 11);
  expect(row('rich', 0).Total).toBe(2 * 2 + 2 + 3);
  live.set('snotes', 'n1', 'ca', 5);
  expect([row(to, 2).Amount, row('rich', 2).Amount]).toEqual([5, 5]);
  expect(row(to, 0)['On hand']).toBe(24.5);
});

it('copies Foods with its figures, which follow the food that is named', () => {
  live.apply({
    do: 'add column',
    sheet: 'foods',
    column: 'mine',
    before: null,
    title: 'Mine',
    formula: '=On_hand*2',
  });
  const to = copy('foods');
  expect(titles(to)).toEqual(titles('foods'));
  expect(table(to)).toEqual(table('foods'));
  live.insertRows('draws', [{ date: '2026-01-10', food: 'peas', amount: 4, container: 'pint freezer bag' }]);
  expect([row(to, 1)['On hand'], row(to, 1).Mine]).toEqual([26, 52]);
  const food = live.columns(to)[0]!.id;
  live.set(to, live.rowIds(to)[0]!, food, 'peas');
  expect(row(to, 0)['On hand']).toBe(26);
});

it('names rows of which several are called the same in a column of their own', () => {
  const to = copy('shelf');
  expect(titles(to)).toEqual([...titles('shelf'), 'Row']);
  expect(table(to).map((cells) => cells.slice(0, -1))).toEqual(table('shelf'));
  live.insertRows('draws', [{ date: '2026-01-10', food: 'tomatoes', amount: 3, container: 'pint' }]);
  expect(table(to).map((cells) => cells.slice(0, -1))).toEqual(table('shelf'));
});

it('keeps what cannot be taken as it stood, and says the day', () => {
  const to = copy('batches');
  expect(titles(to)).toContain(`Lids on ${AS_OF}`);
  expect(live.columns(to).every(({ role }) => role === 'own')).toBe(true);
  expect(table(to)).toEqual(table('batches'));
  for (const kind of ['household', 'draws', 'dishes', 'week', 'beds', 'harvest', 'supplies', 'facts'])
    expect(table(copy(kind, kind === 'draws' ? 'D' : `Copy of ${kind}`)).length).toBe(
      live.rowIds(kind).length,
    );
});

it('opens afresh as it stood', () => {
  richSheet();
  for (const kind of ['rich', 'shelf', 'dishes', 'beds']) copy(kind, `Copy of ${kind}`);
  const again = openBook(live.toJSON(), { asOf: AS_OF });
  for (const { id } of live.sheets())
    for (const each of live.rowIds(id))
      for (const { id: column } of live.columns(id))
        expect(again.value(id, each, column)).toEqual(live.value(id, each, column));
  again.close();
});

it('makes a sheet like one of a kind, with the figures that were chosen', () => {
  const done = live.apply(
    sheetFromKind(live, { kind: 'foods', title: 'Fair', planning: ['on_hand', 'use_low', 'took_from'] }),
  );
  expect(done.ok).toBe(true);
  const to = live.sheets().at(-1)!.id;
  expect(titles(to).slice(0, 7)).toEqual([
    'Food',
    'Way kept',
    'Counted in',
    'Comes from',
    'On hand',
    'Use, low',
    'Crops in it',
  ]);
  const column = (title: string) => live.columns(to).find((each) => each.title === title)!;
  expect([column('Way kept').type, column('Own target').type, column('Next supply').type]).toEqual([
    'choice',
    'number',
    'date',
  ]);
  live.insertRows(to, [{ [column('Food').id]: 'Peas' }]);
  expect(row(to, 0)).toMatchObject({ 'On hand': 30, 'Use, low': live.value('foods', 'f2', 'use_low') });
});
