import { type KindDeclaration, kept, planningColumns } from './column.js';

/** Planning columns of Household, by column id. */
export interface PersonFigures {
  readonly part_of_table: number | null;
}

export const household: KindDeclaration = {
  kind: 'household',
  title: 'Household',
  help: 'Who eats at the table, where the garden lies, and what the plan counts on.',
  empty:
    'Nobody at the table yet. Write a row for each person; a share of 1 is a grown appetite, a small child may be 0.5.',
  row: 'person',
  columns: [
    kept('name', 'Name', 'text', 'Who eats at the table.', { width: 160 }),
    kept('share', 'Share at the table', 'number', 'Appetite: 1 is a grown one, 0.5 half of that.', {
      min: 0,
      decimals: 2,
      width: 110,
    }),
    kept('note', 'Note', 'text', 'Anything worth remembering.', { width: 220 }),
    ...planningColumns<PersonFigures>({
      part_of_table: {
        title: 'Part of the table',
        type: 'number',
        unit: '%',
        decimals: 0,
        width: 110,
        help: 'This share as a percentage of all shares.',
      },
    }),
  ],
};
