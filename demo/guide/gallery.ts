import type { CautionId } from '../../src/facts/index.js';

/** A sheet ready to be pasted: its book is `demo/data/ID.json`. */
export interface ReadySheet {
  readonly id: string;
  readonly title: string;
  /** What it answers, and what to write. */
  readonly about: string;
  readonly sheet: string;
  readonly columns: readonly string[];
  /** Columns in which readers may write. */
  readonly open: readonly string[];
  /** Cautions that go along where the sheet’s own kind brings none. */
  readonly cautions?: readonly CautionId[];
  /** It has formulas of its own, for which the formula engine is loaded. */
  readonly formulas?: true;
}

export const READY_SHEETS: readonly ReadySheet[] = [
  {
    id: 'freezer-list',
    title: 'Freezer list by age',
    about:
      'What lies in the freezer, in which basket, since when, and until when it is at its best. Write one line for each lot, the oldest first.',
    sheet: 'freezer',
    columns: ['food', 'container', 'count', 'place', 'months_kept', 'best_by'],
    open: ['count'],
  },
  {
    id: 'canning-tally',
    title: 'Canning tally',
    about:
      'Every batch of the year: pounds in, jars filled, seals that failed, and how many pounds went into a jar.',
    sheet: 'tally',
    columns: ['date', 'food', 'container', 'filled', 'failed', 'canner_loads', 'pounds_per_container'],
    open: ['filled', 'failed'],
  },
  {
    id: 'seed-inventory',
    title: 'Seed inventory',
    about:
      'The packets in the tin, how many plants are wanted, how many seeds those take at the published germination, and how many to buy.',
    sheet: 'seeds',
    columns: ['crop', 'variety', 'packet', 'seeds', 'plants', 'wanted', 'buy'],
    open: ['seeds', 'plants'],
    formulas: true,
  },
  {
    id: 'potato-cellar',
    title: 'Potato cellar',
    about:
      'What is left in each bin after what was carried up, how many weeks it lasts, and what will not be eaten before it is past its best.',
    sheet: 'potatoes',
    columns: ['place', 'count', 'left', 'weeks_of_supply', 'eaten_by', 'at_risk', 'note'],
    open: ['count'],
  },
  {
    id: 'egg-and-feed',
    title: 'Egg and feed record',
    about:
      'Eggs and feed week by week, eggs a hen, and pounds of feed to the dozen. Put your number of hens into the formula where it says 11.',
    sheet: 'hens',
    columns: ['week', 'eggs', 'feed', 'hen', 'dozen', 'note'],
    open: ['eggs', 'feed'],
    cautions: ['raw-egg'],
    formulas: true,
  },
  {
    id: 'orchard-harvest',
    title: 'Orchard harvest',
    about:
      'What came in from each tree, in pounds or bushels, added up through the season and set against what the trees may give.',
    sheet: 'orchard',
    columns: ['date', 'planting', 'amount', 'unit', 'pounds_so_far', 'per_plant_so_far', 'note'],
    open: ['amount'],
  },
  {
    id: 'herb-drying',
    title: 'Herb drying',
    about:
      'When each herb was hung and put into its jar, what it weighed fresh and dried, and how many ounces fresh make one dried.',
    sheet: 'herbs',
    columns: ['herb', 'hung', 'jarred', 'days', 'fresh', 'dried', 'ratio'],
    open: ['fresh', 'dried'],
    cautions: ['dry-goods-moisture'],
    formulas: true,
  },
  {
    id: 'jar-and-lid-count',
    title: 'Jar and lid count',
    about: 'Jars and lids on hand against what the planned batches will take, and how many are short.',
    sheet: 'supplies',
    columns: ['item', 'on_hand', 'wanted', 'short', 'note'],
    open: ['on_hand'],
  },
  {
    id: 'dry-store',
    title: 'Dry store',
    about:
      'Flour, oats, beans and sugar: how much there is, in which bin, and for how many weeks it lasts at your table.',
    sheet: 'dry',
    columns: ['food', 'count', 'place', 'weeks_of_supply', 'eaten_by', 'note'],
    open: ['count'],
  },
  {
    id: 'school-garden-plot',
    title: 'School-garden plot',
    about:
      'Who grows what: plants, feet of row, when to start, when the harvest begins, and how many pounds may be expected.',
    sheet: 'plot',
    columns: ['crop', 'note', 'plants', 'row_feet', 'start_on', 'harvest_from', 'expected_pounds'],
    open: ['plants'],
  },
];
