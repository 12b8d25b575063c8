import { say } from '../../../src/words/index.js';
import { clearBlocks } from './clipboard.js';
import type { GridContext } from './context.js';
import { fillDown } from './fill.js';
import { bookRow, cellAt, focusedPlace, selectedBlock, selectedBlocks } from './places.js';

const GROUP = 'croft';

/** Takes the last step back, or does it again, and says which it was. */
export function replay({ host }: GridContext, which: 'undo' | 'redo'): void {
  const { live } = host;
  const label = which === 'undo' ? live.undoLabel : live.redoLabel;
  const done = which === 'undo' ? live.undo() : live.redo();
  if (which === 'undo') host.say(done ? say`Undone: ${label}.` : say`Nothing to undo.`);
  else host.say(done ? say`Done again: ${label}.` : say`Nothing to redo.`);
}

/** Keys of our own, in place of the library's where it would write to its own data. */
export function addKeys(context: GridContext): void {
  const { hot, binding, edits, run } = context;
  const keys = hot.getShortcutManager().getContext('grid');
  if (!keys) return;
  const add = (
    combinations: string[][],
    callback: () => void,
    runOnlyIf: () => boolean = () => hot.getSelected() !== undefined,
  ): void =>
    // Else the library would open the editor with the key as well.
    keys.addShortcuts([{ keys: combinations, callback, runOnlyIf, group: GROUP, stopPropagation: true }]);

  for (const combination of [
    ['delete'],
    ['backspace'],
    ['control/meta', 'enter'],
    ['home'],
    ['home', 'shift'],
    ['home', 'control/meta'],
  ])
    keys.removeShortcutsByKeys(combination);
  // The library stops at the first column that scrolls; the row's name before it is part of the row.
  add([['home']], () => hot.selectCell(focusedPlace(hot)?.row ?? 0, 0));
  add([['home', 'control/meta']], () => hot.selectCell(0, 0));
  add([['home', 'shift']], () => {
    const { highlight, to } = hot.getSelectedRangeActive() ?? {};
    if (highlight && to) hot.selectCell(highlight.row ?? 0, highlight.col ?? 0, to.row ?? 0, 0);
  });
  add([['delete'], ['backspace']], () => clearBlocks(context, selectedBlocks(hot)));
  add([['control/meta', 'z']], () => replay(context, 'undo'));
  add(
    [
      ['control/meta', 'y'],
      ['control/meta', 'shift', 'z'],
    ],
    () => replay(context, 'redo'),
  );
  add([['control/meta', 'd']], () => {
    const block = selectedBlock(hot);
    if (block) fillDown(context, block);
  });
  add(
    [['space']],
    () => toggleFocused(context),
    () => tickPlace(context) !== null,
  );

  hot.addHook('beforeKeyDown', (event: KeyboardEvent) => {
    if (hot.getActiveEditor()?.isOpened() || !hot.isListening()) return true;
    const place = focusedPlace(hot);
    if (event.key === 'Escape') run.end();
    if (event.key === 'Tab' && place && run.tabOn(hot, place.row, place.col, event.shiftKey ? -1 : 1)) {
      event.preventDefault();
      return false;
    }
    const column = place && place.row >= 0 ? binding.columns[place.col] : undefined;
    if (column?.role !== 'planning') return true;
    const types =
      event.key.length === 1 && !event.ctrlKey && !event.metaKey && !(event.key === ' ' && event.shiftKey);
    if (!types && event.key !== 'F2' && event.key !== 'Enter') return true;
    event.preventDefault();
    edits.refuse(column.id, cellAt(hot, binding, place!.row, place!.col)?.row);
    return false;
  });
}

/** The focused cell where it is one to tick. */
function tickPlace({ hot, binding }: GridContext): { at: number; column: string } | null {
  const place = focusedPlace(hot);
  const column = place && place.row >= 0 ? binding.columns[place.col] : undefined;
  return place && column?.type === 'tick' && column.role !== 'planning'
    ? { at: bookRow(hot, place.row), column: column.id }
    : null;
}

/** Ticks the focused cell, or takes the tick away. */
export function toggleFocused(context: GridContext): void {
  const place = tickPlace(context);
  const line = place && context.binding.lines[place.at];
  if (!place || !line) return;
  const on = context.binding.value(line, place.column) === true;
  context.edits.write([{ ...place, typed: on ? null : true }]);
}
