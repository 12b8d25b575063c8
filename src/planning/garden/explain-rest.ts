import { caution, figureSource } from '../../facts/index.js';
import { toIsoDay } from '../dates.js';
import type { Working, WorkingInput } from '../types.js';
import { type Explained, input, n, some, working } from '../working/parts.js';
import { figureInputs, learnedSteps } from './explain-yield.js';
import { planFacts, reckonFact } from './facts-rows.js';
import { figureText } from './figure-names.js';
import type { HarvestPlan, HarvestReckoning } from './harvest-rows.js';
import { type OwnFigures, teaches } from './own-figures.js';
import type { SuppliesPlan, SupplyReckoning } from './supplies.js';
import type { FactFigures, FactRow, HarvestFigures, SupplyFigures } from './types.js';

const ofWhat = (at: HarvestReckoning): string => (at.bed ? 'of this planting' : 'of this crop');

function harvest(at: HarvestReckoning, column: keyof HarvestFigures): Explained {
  const { soFar, plants, plan, planIs, plantsAre } = at;
  const lacking =
    at.pounds && !at.pounds.ok
      ? `${at.pounds.problem.message} ${at.pounds.problem.mend}`
      : 'Write the planting or the crop, and how much came in.';
  const all: WorkingInput = input(`Pounds ${ofWhat(at)} up to this day`, soFar, 'pounds', 'computed');
  const here = at.pounds?.ok ? [input('This row, in pounds', at.pounds.value, 'pounds', 'entered')] : [];
  switch (column) {
    case 'pounds_so_far':
      return {
        rule: `The pounds ${ofWhat(at)} that came in up to this day and with it, in this season.`,
        inputs: [...here, ...(at.season === null ? [] : [input('Season', at.season, 'year', 'computed')])],
        steps: [
          soFar !== null && at.pounds?.ok
            ? `${n(soFar - at.pounds.value)} lb before + ${n(at.pounds.value)} lb here = ${n(soFar)} lb`
            : null,
        ],
        missing: lacking,
      };
    case 'per_plant_so_far':
      return {
        rule: 'Pounds so far ÷ the plants that they came from: those written here, else those planned.',
        inputs: [
          all,
          input(plantsAre === 'planned' ? 'Plants planned' : 'Plants', plants, 'plants', 'entered'),
        ],
        steps: [
          soFar === null || !plants
            ? null
            : `${n(soFar)} lb ÷ ${some(plants, 'plant')} = ${n(soFar / plants)} lb a plant`,
        ],
        missing: soFar === null ? lacking : 'Write the plants it came from, or the plants planned in Beds.',
      };
    default:
      return {
        rule: 'Pounds so far as a percentage of the pounds expected from the plants planned; of the pounds wanted where no plants are planned.',
        inputs: [
          all,
          input(planIs === 'wanted' ? 'Pounds wanted' : 'Pounds expected', plan, 'pounds', 'computed'),
        ],
        steps: [
          soFar === null || !plan
            ? null
            : `${n(soFar)} lb ÷ ${n(plan)} lb × 100 = ${n((soFar / plan) * 100)} %`,
        ],
        missing: soFar === null ? lacking : 'Beds has no plants planned of it, and Foods wants none.',
      };
  }
}

const HARVEST_TITLES: Readonly<Record<keyof HarvestFigures, readonly [title: string, unit: string]>> = {
  pounds_so_far: ['Pounds so far', 'pounds'],
  per_plant_so_far: ['Pounds a plant so far', 'pounds a plant'],
  against_plan: ['Against plan', '%'],
};

/** The working of a planning figure of Harvest. Undefined for a row or column that is not there. */
export function explainHarvest(
  plan: HarvestPlan,
  rowId: string,
  column: keyof HarvestFigures,
): Working | undefined {
  const at = plan.reckoned.get(rowId);
  const row = plan.rows.get(rowId);
  if (!at || !row || !Object.hasOwn(HARVEST_TITLES, column)) return undefined;
  const [title, unit] = HARVEST_TITLES[column];
  return working(title, row.figures[column], unit, harvest(at, column));
}

function supply(at: SupplyReckoning, column: keyof SupplyFigures): Explained {
  const { batches, wanted, row, item } = at;
  const what = batches.map(({ batch, wants }) => {
    const { foodName, date } = batch.row;
    return `${foodName || 'a batch'}${date === null ? '' : `, ${toIsoDay(date)}`}: ${n(wants)}`;
  });
  const cautions = item.is === 'lids' ? { cautions: [caution('lids-once').text] } : {};
  if (column === 'short') {
    return {
      rule: 'What is wanted, less what is on hand; blank on hand counts as none.',
      inputs: [input('Wanted', wanted, '', 'computed'), input('On hand', row.onHand ?? 0, '', 'entered')],
      steps: [
        wanted === null
          ? null
          : `${n(wanted)} wanted − ${n(row.onHand ?? 0)} on hand = ${n(wanted - (row.onHand ?? 0))}${wanted < (row.onHand ?? 0) ? ', so 0: nothing is short' : ''}`,
      ],
      missing: at.problem ? `${at.problem.message} ${at.problem.mend}` : 'What is wanted is not known.',
      ...cautions,
    };
  }
  const rule =
    item.is === 'lids'
      ? 'New lids for the batches still to be put up, with as many more as usually fail.'
      : item.is === 'rings'
        ? 'One for each jar of the greatest batch: rings come off once the jars have sealed (common practice, no source).'
        : item.is === 'container'
          ? 'The containers of the batches still to be put up.'
          : 'The containers of the batches still to be put up × how much goes into one, by your tested recipe.';
  return {
    rule,
    inputs: item.is === 'ingredient' ? [input('In one container', row.perContainer, '', 'own')] : [],
    steps: what,
    missing: at.problem ? `${at.problem.message} ${at.problem.mend}` : 'No batches are planned.',
    ...cautions,
  };
}

/** The working of a planning figure of Supplies. Undefined for a row or column that is not there. */
export function explainSupply(
  plan: SuppliesPlan,
  rowId: string,
  column: keyof SupplyFigures,
): Working | undefined {
  const at = plan.reckoned.get(rowId);
  const row = plan.rows.get(rowId);
  if (!at || !row || (column !== 'wanted' && column !== 'short')) return undefined;
  return working(column === 'wanted' ? 'Wanted' : 'Short', row.figures[column], '', supply(at, column));
}

const FACT_TITLES: Readonly<Record<keyof FactFigures, string>> = {
  published: 'Published',
  low: 'Published, low end',
  high: 'Published, high end',
  unit: 'Unit',
  source: 'Source',
  own_seasons: 'Own seasons',
  learned: 'Learned',
  in_use: 'In use',
};

/** The working of a planning figure of Facts: every published figure with its source. */
export function explainFact(
  row: FactRow,
  figures: OwnFigures,
  column: keyof FactFigures,
): Working | undefined {
  if (!Object.hasOwn(FACT_TITLES, column)) return undefined;
  const at = reckonFact(row, figures);
  const value = planFacts([row], figures).get(row.id)?.figures[column] ?? null;
  const title = `${FACT_TITLES[column]}: ${at?.kind === 'used' ? figureText(at.name) : row.figure}`;
  if (!at) {
    return working(title, null, '', {
      rule: 'The figure named in this row.',
      missing: 'Choose a figure, such as “tomato, yield”.',
    });
  }
  if (at.kind === 'shown') {
    const { figure } = at.figure;
    const origin = figure.certainty === 'derived' ? 'computed' : figure.certainty;
    return working(title, value, figure.unit, {
      rule: 'A published figure. No plan reads it: it is shown for its source.',
      inputs: [input(at.figure.name, figure.usual, figure.unit, origin, figureSource(figure))],
      steps: figure.note === undefined ? [] : [figure.note],
      missing: 'Choose “tomato, yield” or the like for a figure that plans use.',
    });
  }
  const { figure, name } = at;
  if (!figure) {
    return working(title, value, '', {
      rule: 'Own first, then learned, then published.',
      missing: `Nothing is published for it. Write your own value${teaches(name) ? ', or a season’s pounds and plants' : ''}.`,
    });
  }
  const isPublished = column === 'published' || column === 'low' || column === 'high' || column === 'source';
  const { published } = figure;
  return working(title, value, figure.unit, {
    rule: isPublished
      ? 'As published. Where sources differ the ends span them, and each is named.'
      : 'The own value if there is one; else what was learned: own mean × Z + published × (1 − Z), Z = n ÷ (n + 2) with n own seasons; else published.',
    inputs: isPublished
      ? published
        ? [input('Published', published.usual, published.unit, published.origin, published.source)]
        : []
      : figureInputs('In use', figure),
    steps: [...(isPublished ? [] : learnedSteps(figure)), ...(published?.notes ?? [])],
    missing: column === 'learned' ? 'No season is written down yet.' : 'Nothing is published for it.',
  });
}
