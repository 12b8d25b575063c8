import type { KeepStatus } from '../../src/storage/status.js';

/** One entry that the page made: what it wrote where, and when in turn. */
export interface Entry {
  readonly turn: number;
  readonly sheet: string;
  readonly row: string;
  readonly column: string;
}

/** Name of the function that the page calls with entries that it was told are saved. */
export const SAVED = 'croftSaved';

/**
 * Runs in the page: edits without pause, each entry a number that tells its turn, and passes on what the
 * status says is saved. Ends only with the page.
 */
export async function editWithoutPause({ from, seed }: { from: number; seed: number }): Promise<void> {
  const book = document.querySelector('croft-book')!;
  const live = book.live!;
  const tell = (window as unknown as Record<string, (entries: Entry[]) => void>).croftSaved!;
  let state = seed >>> 0;
  const random = (below: number): number => {
    state = (state * 1_664_525 + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
  let waiting: Entry[] = [];
  book.addEventListener('croft-status', (event) => {
    if ((event as CustomEvent<KeepStatus>).detail.state !== 'saved') return;
    if (waiting.length > 0) tell(waiting);
    waiting = [];
  });
  for (let turn = from; ; turn++) {
    const shelf = live.rowIds('shelf');
    const row = shelf[random(shelf.length)]!;
    const kind = random(8);
    if (kind === 0) {
      const id = `kill${turn}`;
      live.apply({
        do: 'insert rows',
        sheet: 'draws',
        before: null,
        rows: [{ id, cells: { date: '2026-02-01', food: 'Tomatoes', amount: 1, note: turn } }],
      });
      waiting.push({ turn, sheet: 'draws', row: id, column: 'note' });
    } else if (kind === 1) {
      // A block, as pasted: all of it or nothing.
      const cells = shelf.slice(0, 12).map((each) => ({ row: each, column: 'note', typed: turn }));
      live.apply({ do: 'set cells', sheet: 'shelf', cells });
      for (const cell of cells) waiting.push({ turn, sheet: 'shelf', row: cell.row, column: 'note' });
    } else if (kind === 2) {
      live.set('shelf', row, 'note', turn);
      live.undo();
      live.redo();
      waiting.push({ turn, sheet: 'shelf', row, column: 'note' });
    } else {
      live.set('shelf', row, 'note', turn);
      waiting.push({ turn, sheet: 'shelf', row, column: 'note' });
    }
    if (random(3) === 0) await new Promise((done) => setTimeout(done, random(25)));
  }
}

/** Runs in the page: what stands in these cells now. */
export const read = (cells: readonly Entry[]): unknown[] => {
  const live = document.querySelector('croft-book')!.live!;
  return cells.map(({ sheet, row, column }) => live.value(sheet, row, column));
};
