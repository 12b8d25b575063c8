import type { FactFigures } from '../../planning/garden/types.js';
import { type KindDeclaration, kept, planningColumns } from './column.js';

export const facts: KindDeclaration = {
  kind: 'facts',
  title: 'Facts',
  help: 'The figures that the plans rest on: published ones with their sources, your own beside them, and what each season brought.',
  empty:
    'Only published figures count so far. Choose one, such as “tomato, yield”, to see where it comes from; write your own value to have it used everywhere.',
  row: 'figure',
  columns: [
    kept(
      'figure',
      'Figure',
      'choice',
      'Of what, and which figure: “tomato, yield”, “tomato, pounds per quart jar, canned”.',
      {
        choices: 'figures',
        open: true,
        width: 220,
      },
    ),
    kept(
      'own_value',
      'Own value',
      'number',
      'Your own figure, in the unit shown. It wins everywhere, and says so.',
      {
        decimals: 3,
        width: 88,
      },
    ),
    kept('season', 'Season', 'number', 'The year of a season whose totals stand in this row.', {
      min: 1900,
      decimals: 0,
      width: 76,
    }),
    kept('pounds', 'Pounds', 'number', 'All the pounds of that season: raw totals, never an average.', {
      min: 0,
      decimals: 1,
      width: 84,
    }),
    kept(
      'plants',
      'Plants or containers',
      'number',
      'The plants that they came from; for pounds per container, the containers filled.',
      {
        min: 0,
        decimals: 0,
        width: 92,
      },
    ),
    kept(
      'spacing',
      'Spacing then',
      'number',
      'Inches between plants in that season, where it was not the spacing in use.',
      {
        unit: 'in',
        min: 0,
        decimals: 1,
        hidden: true,
        width: 84,
      },
    ),
    kept('note', 'Note', 'text', 'Anything worth remembering: a late frost, a new variety.', { width: 160 }),
    ...planningColumns<FactFigures>({
      published: {
        title: 'Published',
        type: 'number',
        decimals: 3,
        width: 110,
        range: ['low', 'high'],
        help: 'The published central figure, with its range.',
      },
      low: {
        title: 'Published, low',
        type: 'number',
        decimals: 3,
        hidden: true,
        width: 84,
        help: 'The low end of what is published, over all sources.',
      },
      high: {
        title: 'Published, high',
        type: 'number',
        decimals: 3,
        hidden: true,
        width: 84,
        help: 'The high end of what is published, over all sources.',
      },
      unit: { title: 'Unit', type: 'text', width: 120, help: 'What the figure is counted in.' },
      source: { title: 'Source', type: 'text', width: 240, help: 'Who publishes it, and where.' },
      own_seasons: {
        title: 'Own seasons',
        type: 'number',
        decimals: 0,
        width: 84,
        help: 'Seasons of your own that it is learned from.',
      },
      learned: {
        title: 'Learned',
        type: 'number',
        decimals: 3,
        width: 84,
        help: 'Your seasons and the published figure together: the more seasons, the more yours count.',
      },
      in_use: {
        title: 'In use',
        type: 'number',
        decimals: 3,
        width: 84,
        help: 'The figure that plans count on: your own, else learned, else published.',
      },
    }),
  ],
};
