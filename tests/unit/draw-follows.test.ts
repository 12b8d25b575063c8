import { expect, it } from 'vitest';
import { openBook } from '../../src/core.js';
import { AS_OF, startingBook } from '../support/random-book.js';

it('a draw without an amount follows when its food is no longer kept in one way only', () => {
  const live = startingBook();
  const cells = { date: '2026-01-01', food: 'tomato', amount: 'x' };
  live.apply({ do: 'insert rows', sheet: 'draws', before: null, rows: [{ id: 'd1', cells }] });
  const said = () => live.working('draws', 'd1', 'in_counted');
  expect(said()?.missing).toBe('Write how much was taken.');
  for (const [sheet, rows] of [
    ['shelf', ['l1', 'l2']],
    ['foods', ['f1']],
  ] as const)
    live.apply({ do: 'remove rows', sheet, rows });
  const anew = openBook(live.toJSON(), { asOf: AS_OF });
  expect(said()).toEqual(anew.working('draws', 'd1', 'in_counted'));
});
