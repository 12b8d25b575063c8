import { HyperFormulaEngine } from '../../src/engine/hyperformula-engine.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { openBook } from '../../src/live/live-book.js';
import { newLive } from './tables-support.js';

/** A sheet of one's own with a column of each type, a formula of each kind, and awkward texts. */
export function ownSheet(): { live: LiveBook; sheet: string } {
  const live = openBook(newLive().toJSON());
  const { asOf, basis } = live.household;
  live.attachEngine(new HyperFormulaEngine({ asOf, basis }, 'gpl-v3'));
  const sheet = 'sseed';
  const done = live.apply({
    do: 'add sheet',
    sheet,
    title: 'Seed swaps',
    columns: [
      { id: 'cwhat', title: 'What', as: { type: 'text' } },
      { id: 'cpackets', title: 'Packets', as: { type: 'number', note: 'Whole ones' } },
      { id: 'con', title: 'On', as: { type: 'date' } },
      { id: 'csent', title: 'Sent', as: { type: 'tick' } },
      { id: 'ctwice', title: 'Twice', as: { formula: '=Packets*2' } },
      { id: 'csum', title: 'So far' },
    ],
    rows: [
      {
        id: 'ra',
        cells: {
          cwhat: "'=1+1",
          cpackets: 3,
          con: '2026-05-24',
          csent: true,
          csum: '=SUM([cpackets@$ra]:[cpackets@ra])',
        },
      },
      {
        id: 'rb',
        cells: {
          cwhat: 'Peas, "tall"',
          cpackets: -5,
          con: '1999-12-31',
          csent: false,
          csum: '=SUM([cpackets])',
        },
      },
      { id: 'rc', cells: { cwhat: '_x0041_ < & ü', cpackets: 0.25, csum: '=PINTS_FROZEN("peas", 10)' } },
      { id: 'rd', cells: { cwhat: "''tis", csum: '=IFS([cpackets@ra]>2,"many",TRUE(),"few")' } },
    ],
  });
  if (!done.ok) throw new Error(done.problem.message);
  return { live, sheet };
}
