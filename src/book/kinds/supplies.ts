import type { SupplyFigures } from '../../planning/garden/types.js';
import { type KindDeclaration, kept, planningColumns } from './column.js';

export const supplies: KindDeclaration = {
  kind: 'supplies',
  title: 'Supplies',
  help: 'Lids, jars, bags, vinegar, sugar, salt: what is on hand, and what the batches to come will take.',
  empty: 'No supplies written down yet. Count your lids first: flat lids seal reliably once.',
  row: 'item',
  columns: [
    kept(
      'item',
      'Item',
      'choice',
      'Lids (regular or wide), rings, a jar or a bag by its size, or anything else.',
      {
        choices: 'supplies',
        open: true,
        width: 160,
      },
    ),
    kept('on_hand', 'On hand', 'number', 'How many or how much you have. Blank counts as none.', {
      min: 0,
      decimals: 1,
      width: 80,
    }),
    kept('unit', 'Unit', 'text', 'What it is counted in, as you buy it: each, pounds, cups.', { width: 90 }),
    kept('used_for', 'Used for', 'choice', 'The food whose batches take it. Blank: all of them.', {
      choices: 'foods',
      open: true,
      width: 140,
    }),
    kept(
      'per_container',
      'In one container',
      'number',
      'How much of it goes into one container, by your tested recipe, in the same unit. Not needed for lids, rings, jars and bags.',
      { min: 0, decimals: 3, width: 96 },
    ),
    kept('note', 'Note', 'text', 'Anything worth remembering.', { width: 160 }),
    ...planningColumns<SupplyFigures>({
      wanted: {
        title: 'Wanted',
        type: 'number',
        decimals: 1,
        width: 84,
        help: 'What the batches still to be put up will take.',
      },
      short: {
        title: 'Short',
        type: 'number',
        decimals: 1,
        width: 84,
        help: 'What is wanted and not on hand.',
      },
    }),
  ],
};
