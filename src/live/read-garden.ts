import type { BookState, CellValue } from '../book/index.js';
import { settingOf } from '../book/index.js';
import { batches } from '../book/kinds/batches.js';
import { beds } from '../book/kinds/beds.js';
import { facts } from '../book/kinds/facts.js';
import { harvest } from '../book/kinds/harvest.js';
import { supplies } from '../book/kinds/supplies.js';
import {
  type BatchRow,
  cropKey,
  type FactRow,
  type GardenHousehold,
  type HarvestRow,
  HOW_PLANTED,
  type HowPlanted,
  MOUTHS,
  type PlantingRow,
  type SupplyRow,
} from '../planning/garden/index.js';
import type { Household } from '../planning/types.js';
import { WAYS_KEPT } from '../planning/types.js';
import type { Problem } from '../problem.js';
import { measureSystem } from '../units/index.js';
import { phrase, say, spoken } from '../words/index.js';
import { CellReader, inCustomary } from './cell-reader.js';
import { foodKey } from './food-key.js';
import { type ReadRow, readCrops } from './read-rows.js';

type Cells = (column: string) => CellValue;
const food = (text: string): string | null => (text === '' ? null : foodKey(text) || null);
const crop = (text: string): string | null => (text === '' ? null : cropKey(text));

const MISSING = {
  crop: phrase('The crop is missing.'),
  food: phrase('The food is missing.'),
  'way it is kept': phrase('The way it is kept is missing.'),
  container: phrase('The container is missing.'),
};

const missing = (what: keyof typeof MISSING, mend: string): Problem => ({
  code: 'missing',
  message: spoken(MISSING[what]),
  mend,
});

/** 'tree', or “tree in its 3rd year”: how it was started, and the year of what stands for years. */
function readHow(r: CellReader): { how: HowPlanted | null; year: number | null } {
  const text = r.text('how_started').toLowerCase();
  const aged = /^(tree|crown)s?\b.*?(\d{1,3})/.exec(text);
  if (aged) return { how: aged[1] as HowPlanted, year: Number(aged[2]) };
  return { how: r.choice('how_started', HOW_PLANTED), year: null };
}

const whole = (r: CellReader, column: string, least: number, most: number, what: string): number | null => {
  const n = r.number(column);
  if (n === null || (n >= least && n <= most)) return n;
  r.note(column, {
    code: 'number-out-of-range',
    message: say`${n} is no ${what}: it is left out of the plan.`,
    mend: say`Write a number from ${least} to ${most}.`,
  });
  return null;
};

/** A row of Beds. */
export function readPlanting(id: string, cells: Cells): ReadRow<PlantingRow> {
  const r = new CellReader(beds, cells);
  const { how, year } = readHow(r);
  const typed: PlantingRow = {
    id,
    crop: crop(r.text('crop')),
    variety: r.text('variety'),
    ownYield: r.number('own_yield'),
    ownSpacing: r.number('own_spacing'),
    how,
    nthYear: whole(r, 'nth_year', 1, 200, say`year of a tree`) ?? year,
    plants: r.number('plants'),
    sownOn: r.day('sown_on'),
    ownFrom: r.monthDay('own_from'),
    ownTo: r.monthDay('own_to'),
    seedsOnHand: r.number('seeds_on_hand'),
    packetYear: whole(r, 'packet_year', 1900, 2200, say`year`),
  };
  if (typed.crop === null && (typed.plants !== null || typed.variety !== '')) {
    r.note('crop', missing('crop', say`Write the crop; until then the row is not planned.`));
  }
  return { typed, problems: r.problems };
}

/** A row of Harvest. */
export function readHarvest(id: string, cells: Cells): ReadRow<HarvestRow> {
  const r = new CellReader(harvest, cells);
  const planting = r.text('planting');
  const typed: HarvestRow = {
    id,
    date: r.day('date'),
    planting: planting === '' ? null : planting,
    crop: crop(r.text('crop')),
    amount: r.number('amount'),
    unit: r.measure('unit') ?? (measureSystem() === 'metric' ? 'kilogram' : null),
    plants: r.number('plants'),
  };
  if (typed.amount !== null && typed.planting === null && typed.crop === null) {
    r.note(
      'crop',
      missing('crop', say`Choose the planting or write the crop; until then it is not counted.`),
    );
  }
  return { typed, problems: r.problems };
}

/** A row of Batches. */
export function readBatch(id: string, cells: Cells): ReadRow<BatchRow> {
  const r = new CellReader(batches, cells);
  const { crops, unread } = readCrops(r.text('pounds_in'));
  if (unread[0] !== undefined) {
    r.note('pounds_in', {
      code: 'crops-unread',
      message: say`“${unread[0].slice(0, 40)}” is not a crop with its pounds.`,
      mend: say`Write the crop, then the pounds that go in, with ; between crops: tomato 21; onion 3`,
    });
  }
  const lot = r.text('lot');
  const typed: BatchRow = {
    id,
    date: r.day('date'),
    food: food(r.text('food')),
    foodName: r.text('food'),
    way: r.choice('way', WAYS_KEPT),
    container: r.container('container'),
    crops,
    filled: r.number('filled'),
    failed: r.number('failed'),
    hoursALoad: r.number('hours_a_load'),
    loadsOf: r.number('loads_of'),
    mouth: r.choice('mouth', MOUTHS),
    lot: lot === '' ? null : lot,
  };
  if (typed.filled !== null) {
    if (typed.food === null)
      r.note('food', missing('food', say`Write what was put up; then the batch can be posted.`));
    else if (typed.way === null) r.note('way', missing('way it is kept', say`Choose canned, frozen, dried…`));
    else if (typed.container === null)
      r.note('container', missing('container', say`Choose quart jar, freezer bag, pound…`));
  }
  return { typed, problems: r.problems };
}

/** A row of Supplies. */
export function readSupply(id: string, cells: Cells): ReadRow<SupplyRow> {
  const r = new CellReader(supplies, cells);
  return {
    typed: {
      id,
      item: r.text('item'),
      onHand: r.number('on_hand'),
      usedFor: food(r.text('used_for')),
      perContainer: r.number('per_container'),
    },
    problems: r.problems,
  };
}

/** A row of Facts. */
export function readFact(id: string, cells: Cells): ReadRow<FactRow> {
  const r = new CellReader(facts, cells);
  return {
    typed: {
      id,
      figure: r.text('figure'),
      ownValue: r.number('own_value'),
      season: whole(r, 'season', 1900, 2200, say`year`),
      pounds: r.number('pounds'),
      plants: r.number('plants'),
      spacing: r.number('spacing'),
    },
    problems: r.problems,
  };
}

/** The household with the settings that only the garden and the shelf room ask for. Unreadable ones count as blank. */
export function withGarden(household: Household, state: BookState): GardenHousehold {
  const number = (id: string): number | null => {
    const value = state.settings[id] ?? settingOf(id)?.usual;
    const { min = 0, max = 1e9 } = settingOf(id) ?? {};
    return typeof value === 'number' && value >= min && value <= max
      ? inCustomary(value, settingOf(id)?.unit)
      : null;
  };
  return {
    ...household,
    lastFrostChance: number('last_frost_chance'),
    firstFrostChance: number('first_frost_chance'),
    shelfRoom: number('shelf_room'),
    freezerRoom: number('freezer_room'),
    groundRowFeet: number('ground_row_feet'),
  };
}
