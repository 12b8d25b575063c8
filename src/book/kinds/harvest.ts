import type { HarvestFigures } from '../../planning/garden/types.js';
import { type KindDeclaration, kept, planningColumns } from './column.js';

export const harvest: KindDeclaration = {
  kind: 'harvest',
  title: 'Harvest',
  help: 'What came in from the garden, day by day. At the end of the year its totals teach the yields.',
  empty:
    'Nothing brought in yet. Each time you pick, write a row: the day, the planting or the crop, and how much.',
  row: 'harvest',
  columns: [
    kept('date', 'Date', 'date', 'The day it came in.', { width: 108 }),
    kept(
      'planting',
      'Planting',
      'choice',
      'The planting of Beds that it came from. Blank: all plantings of the crop.',
      {
        choices: 'plantings',
        width: 170,
      },
    ),
    kept('crop', 'Crop', 'choice', 'The crop, where no planting is named.', {
      choices: 'crops',
      open: true,
      width: 130,
    }),
    kept('amount', 'Amount', 'number', 'How much, in the unit beside it.', {
      min: 0,
      decimals: 2,
      width: 80,
    }),
    kept('unit', 'Unit', 'choice', 'Pounds, bushels, pecks, or pieces. Blank: pounds.', {
      choices: 'measures',
      width: 100,
    }),
    kept('plants', 'Plants', 'number', 'Plants that it came from, where it was not all of those planned.', {
      min: 0,
      decimals: 0,
      width: 80,
    }),
    kept('note', 'Note', 'text', 'Anything worth remembering.', { width: 160 }),
    ...planningColumns<HarvestFigures>({
      pounds_so_far: {
        title: 'Pounds so far',
        type: 'number',
        unit: 'lb',
        decimals: 1,
        width: 92,
        help: 'Pounds of the planting, or of the whole crop, that came in up to this day in this season.',
      },
      per_plant_so_far: {
        title: 'A plant so far',
        type: 'number',
        unit: 'lb',
        decimals: 2,
        width: 92,
        help: 'Pounds so far, by the plants that they came from.',
      },
      against_plan: {
        title: 'Against plan',
        type: 'number',
        unit: '%',
        decimals: 0,
        width: 88,
        help: 'Pounds so far as a percentage of the pounds expected; of those wanted where no plants are planned.',
      },
    }),
  ],
};
