import { caution, figureSource, noteInWords } from '../../facts/index.js';
import { phrase, say, spoken } from '../../words/index.js';
import { toIsoDay } from '../dates.js';
import { figureIn, measuredIn } from '../measured.js';
import type { Working, WorkingInput } from '../types.js';
import { amount, type Explained, input, n, some, working } from '../working/parts.js';
import { figureInputs, learnedSteps } from './explain-yield.js';
import { planFacts, reckonFact } from './facts-rows.js';
import { figureCalled } from './figure-words.js';
import type { HarvestPlan, HarvestReckoning } from './harvest-rows.js';
import { type OwnFigures, teaches } from './own-figures.js';
import type { SuppliesPlan, SupplyReckoning } from './supplies.js';
import type { FactFigures, FactRow, HarvestFigures, SupplyFigures } from './types.js';

const ofWhat = (at: HarvestReckoning): string => (at.bed ? say`of this planting` : say`of this crop`);

function harvest(at: HarvestReckoning, column: keyof HarvestFigures): Explained {
  const { soFar, plants, plan, planIs, plantsAre } = at;
  const lacking =
    at.pounds && !at.pounds.ok
      ? `${at.pounds.problem.message} ${at.pounds.problem.mend}`
      : say`Write the planting or the crop, and how much came in.`;
  const all: WorkingInput = input(
    say`Pounds ${ofWhat(at)} up to this day`,
    soFar,
    phrase('pounds'),
    'computed',
  );
  const here = at.pounds?.ok
    ? [input(phrase('This row, in pounds'), at.pounds.value, phrase('pounds'), 'entered')]
    : [];
  switch (column) {
    case 'pounds_so_far':
      return {
        rule: say`The pounds ${ofWhat(at)} that came in up to this day and with it, in this season.`,
        inputs: [
          ...here,
          ...(at.season === null ? [] : [input(phrase('Season'), at.season, phrase('year'), 'computed')]),
        ],
        steps: [
          soFar !== null && at.pounds?.ok
            ? say`${measuredIn(soFar - at.pounds.value, 'pound')} before + ${measuredIn(at.pounds.value, 'pound')} here = ${measuredIn(soFar, 'pound')}`
            : null,
        ],
        missing: lacking,
      };
    case 'per_plant_so_far':
      return {
        rule: say`Pounds so far ÷ the plants that they came from: those written here, else those planned.`,
        inputs: [
          all,
          input(
            plantsAre === 'planned' ? phrase('Plants planned') : 'Plants',
            plants,
            phrase('plants'),
            'entered',
          ),
        ],
        steps: [
          soFar === null || !plants
            ? null
            : say`${measuredIn(soFar, 'pound')} ÷ ${some(plants, 'plant')} = ${measuredIn(soFar / plants, 'pound')} a plant`,
        ],
        missing:
          soFar === null ? lacking : say`Write the plants it came from, or the plants planned in Beds.`,
      };
    default:
      return {
        rule: say`Pounds so far as a percentage of the pounds expected from the plants planned; of the pounds wanted where no plants are planned.`,
        inputs: [
          all,
          input(
            planIs === 'wanted' ? phrase('Pounds wanted') : phrase('Pounds expected'),
            plan,
            phrase('pounds'),
            'computed',
          ),
        ],
        steps: [
          soFar === null || !plan
            ? null
            : say`${measuredIn(soFar, 'pound')} ÷ ${measuredIn(plan, 'pound')} × 100 = ${n((soFar / plan) * 100)} %`,
        ],
        missing: soFar === null ? lacking : say`Beds has no plants planned of it, and Foods wants none.`,
      };
  }
}

const HARVEST_TITLES: Readonly<Record<keyof HarvestFigures, readonly [title: string, unit: string]>> = {
  pounds_so_far: [phrase('Pounds so far'), 'pounds'],
  per_plant_so_far: [phrase('Pounds a plant so far'), phrase('pounds a plant')],
  against_plan: [phrase('Against plan'), '%'],
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

/** So many of an item, as it is counted: lids, rings, a container; an ingredient in the measure of its own recipe. */
function supplied(value: number, { item, row }: SupplyReckoning): string {
  if (item.is === 'lids') return some(value, 'lid');
  if (item.is === 'rings') return some(value, 'ring');
  return item.is === 'container' ? amount(value, item.container) : `${n(value)} ${row.item.trim()}`;
}

function supply(at: SupplyReckoning, column: keyof SupplyFigures): Explained {
  const { batches, wanted, row, item } = at;
  const what = batches.map(({ batch, wants }) => {
    const { foodName, date } = batch.row;
    return `${foodName || say`a batch`}${date === null ? '' : `, ${toIsoDay(date)}`}: ${supplied(wants, at)}`;
  });
  const cautions = item.is === 'lids' ? { cautions: [caution('lids-once').text] } : {};
  if (column === 'short') {
    return {
      rule: say`What is wanted, less what is on hand; blank on hand counts as none.`,
      inputs: [
        input(phrase('Wanted'), wanted, '', 'computed'),
        input(phrase('On hand'), row.onHand ?? 0, '', 'entered'),
      ],
      steps: [
        wanted === null
          ? null
          : say`${supplied(wanted, at)} wanted − ${supplied(row.onHand ?? 0, at)} on hand = ${supplied(wanted - (row.onHand ?? 0), at)}${wanted < (row.onHand ?? 0) ? say`, so 0: nothing is short` : ''}`,
      ],
      missing: at.problem ? `${at.problem.message} ${at.problem.mend}` : say`What is wanted is not known.`,
      ...cautions,
    };
  }
  const rule =
    item.is === 'lids'
      ? say`New lids for the batches still to be put up, with as many more as usually fail.`
      : item.is === 'rings'
        ? say`One for each jar of the greatest batch: rings come off once the jars have sealed (common practice, no source).`
        : item.is === 'container'
          ? say`The containers of the batches still to be put up.`
          : say`The containers of the batches still to be put up × how much goes into one, by your tested recipe.`;
  return {
    rule,
    inputs: item.is === 'ingredient' ? [input(phrase('In one container'), row.perContainer, '', 'own')] : [],
    steps: what,
    missing: at.problem ? `${at.problem.message} ${at.problem.mend}` : say`No batches are planned.`,
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
  published: phrase('Published'),
  low: phrase('Published, low end'),
  high: phrase('Published, high end'),
  unit: phrase('Unit'),
  source: phrase('Source'),
  own_seasons: phrase('Own seasons'),
  learned: phrase('Learned'),
  in_use: phrase('In use'),
};

/** The working of a planning figure of Facts: every published figure with its source. */
export function explainFact(
  row: FactRow,
  figures: OwnFigures,
  column: keyof FactFigures,
): Working | undefined {
  if (!Object.hasOwn(FACT_TITLES, column)) return undefined;
  const at = reckonFact(row, figures);
  const planned = planFacts([row], figures).get(row.id)?.figures[column] ?? null;
  const value = column === 'unit' && typeof planned === 'string' ? figureIn(null, planned).unit : planned;
  const title = `${spoken(FACT_TITLES[column])}: ${at?.kind === 'used' ? figureCalled(at.name) : row.figure}`;
  if (!at) {
    return working(title, null, '', {
      rule: say`The figure named in this row.`,
      missing: say`Choose a figure, such as “tomato, yield”.`,
    });
  }
  if (at.kind === 'shown') {
    const { figure } = at.figure;
    const origin = figure.certainty === 'derived' ? 'computed' : figure.certainty;
    return working(title, value, figure.unit, {
      rule: say`A published figure. No plan reads it: it is shown for its source.`,
      inputs: [input(at.figure.name, figure.usual, figure.unit, origin, figureSource(figure))],
      steps: figure.note === undefined ? [] : [noteInWords(figure.note)],
      missing: say`Choose “tomato, yield” or the like for a figure that plans use.`,
    });
  }
  const { figure, name } = at;
  if (!figure) {
    return working(title, value, '', {
      rule: say`Own first, then learned, then published.`,
      missing: say`Nothing is published for it. Write your own value${teaches(name) ? say`, or a season’s pounds and plants` : ''}.`,
    });
  }
  const isPublished = column === 'published' || column === 'low' || column === 'high' || column === 'source';
  const { published } = figure;
  return working(title, value, figure.unit, {
    rule: isPublished
      ? say`As published. Where sources differ the ends span them, and each is named.`
      : say`The own value if there is one; else what was learned: own mean × Z + published × (1 − Z), Z = n ÷ (n + 2) with n own seasons; else published.`,
    inputs: isPublished
      ? published
        ? [input(phrase('Published'), published.usual, published.unit, published.origin, published.source)]
        : []
      : figureInputs('In use', figure),
    steps: [...(isPublished ? [] : learnedSteps(figure)), ...(published?.notes ?? [])],
    missing: column === 'learned' ? say`No season is written down yet.` : say`Nothing is published for it.`,
  });
}
