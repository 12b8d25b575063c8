import { caution } from '../../facts/index.js';
import { phrase, say } from '../../words/index.js';
import { measureName } from '../measure.js';
import { measuredIn, measuredPer } from '../measured.js';
import type { Working, WorkingInput } from '../types.js';
import { amount, type Explained, input, n, some, working } from '../working/parts.js';
import type { BatchesPlan, BatchReckoning } from './batch-types.js';
import { batchCautions, headspaceGuidance, pressureGuidance } from './canning-guidance.js';
import { container, jarsInput, reached, room } from './explain-batch-after.js';
import { figureInputs, learnedSteps } from './explain-yield.js';
import type { OwnFigures } from './own-figures.js';
import type { BatchFigures, GardenHousehold } from './types.js';

const TITLES: Readonly<Record<keyof BatchFigures, string>> = {
  bushels_wanted: phrase('Bushels wanted'),
  jars: phrase('Jars'),
  lids: phrase('Lids'),
  canner_loads: phrase('Canner loads'),
  hours: phrase('Hours'),
  headspace: phrase('Headspace'),
  pressure: phrase('Pressure at your altitude'),
  shelf_room_after: phrase('Shelf room after'),
  freezer_room_after: phrase('Freezer room after'),
  pounds_per_container: phrase('Pounds per container reached'),
  against_published: phrase('Against published'),
};

const UNITS: Readonly<Record<keyof BatchFigures, string>> = {
  bushels_wanted: 'bushels',
  jars: 'containers',
  lids: 'lids',
  canner_loads: 'loads',
  hours: 'hours',
  headspace: '',
  pressure: '',
  shelf_room_after: phrase('quart jars'),
  freezer_room_after: phrase('cubic feet'),
  pounds_per_container: phrase('pounds a container'),
  against_published: '%',
};

const cautionsFor = ({ row }: BatchReckoning): readonly string[] => [
  ...batchCautions(row.food ?? '', row.way),
  ...(row.way === 'frozen' ? [caution('freezer-load').text] : []),
];

function perInputs(at: BatchReckoning): readonly WorkingInput[] {
  return at.crops.flatMap(({ crop, per, pounds, figure, typed }) => [
    ...(pounds === null ? [] : [input(say`Pounds in of ${crop}`, pounds, phrase('pounds'), 'entered')]),
    ...(figure
      ? figureInputs(say`Pounds of ${crop} in a ${container(at)}`, figure, per ?? figure.usual)
      : typed
        ? [input(say`Pounds of ${crop} in a ${container(at)}, by Foods`, per, phrase('pounds'), 'own')]
        : []),
  ]);
}

const whatLacks = (at: BatchReckoning): string =>
  at.cropProblem && !at.cropProblem.ok
    ? `${at.cropProblem.problem.message} ${at.cropProblem.problem.mend}`
    : '';

function jars(at: BatchReckoning): Explained {
  const { jarsFrom, line, jars: count } = at;
  const rule =
    jarsFrom === 'filled'
      ? say`The containers that were filled.`
      : jarsFrom === 'pounds'
        ? say`Pounds in ÷ pounds in a container, rounded up; of several crops, as many as the one that runs out first allows.`
        : say`What is still to put up of this food by Foods, less what open batches with weighed crops will make, shared equally among the batches that wait; rounded up.`;
  return {
    rule,
    inputs: [
      ...(jarsFrom === 'filled'
        ? [input(phrase('Filled'), at.row.filled, measureName(container(at)), 'entered')]
        : perInputs(at)),
      ...(jarsFrom === 'to put up' && line
        ? [
            input(
              phrase('To put up, by Foods'),
              line.toPutUp,
              measureName(line.countedIn ?? container(at)),
              'computed',
            ),
          ]
        : []),
    ],
    steps: [
      ...(jarsFrom === 'pounds'
        ? at.crops.map(({ crop, pounds, per }) =>
            pounds === null || per === null || per === 0
              ? null
              : say`${crop}: ${measuredIn(pounds, 'pound')} ÷ ${measuredIn(per, 'pound')} a ${measureName(container(at), 1)} = ${amount(pounds / per, container(at))}`,
          )
        : []),
      ...at.crops.flatMap(({ figure }) => (figure ? [...learnedSteps(figure), ...figure.notes] : [])),
      count === null ? null : say`so ${amount(count, at.row.container)}`,
    ],
    missing:
      whatLacks(at) ||
      say`Write the food, the way kept and the container; and the pounds in, or a plan for the food in Foods.`,
    cautions: cautionsFor(at),
  };
}

function lids(at: BatchReckoning): Explained {
  const { failures, jars: count } = at;
  return {
    rule: at.done
      ? say`One new lid for each jar that was filled.`
      : say`One new lid for each jar, and as many more as usually fail with you, rounded up.`,
    inputs: [
      jarsInput(at),
      ...(failures === null || at.done
        ? []
        : [
            input(
              phrase('Lids that failed in your batches so far'),
              failures * 100,
              phrase('percent'),
              'learned',
            ),
          ]),
    ],
    steps: [
      at.done || count === null
        ? count === null
          ? null
          : say`${amount(count, at.row.container)} × 1 lid a jar = ${some(at.lids ?? count, 'lid')}`
        : failures === null
          ? say`no batch with its failed seals written down yet, so none are added`
          : say`${amount(count, at.row.container)} × (1 + ${n(failures)}) lids a jar = ${some(count * (1 + failures), 'lid')}, so ${some(at.lids ?? 0, 'lid')}`,
    ],
    missing: say`This container takes no lid, or its number is not known yet.`,
    cautions: [caution('lids-once').text, ...cautionsFor(at)],
  };
}

/** Jars ÷ jars in a load, or loads × hours. */
function loadStep({ row, jars: count }: BatchReckoning, hours: boolean, found: number | null): string | null {
  if (found === null || count === null) return null;
  if (hours)
    return row.hoursALoad === null
      ? null
      : say`${some(found, 'load')} × ${some(row.hoursALoad, 'hour')} a load = ${some(found * row.hoursALoad, 'hour')}`;
  const of = row.loadsOf ?? (row.container === 'pint jar' ? 9 : 7);
  return say`${amount(count, row.container)} ÷ ${amount(of, row.container)} a load = ${some(count / of, 'load')}, so ${some(found, 'load')}`;
}

function loads(at: BatchReckoning, hours: boolean): Explained {
  const { row } = at;
  const count = at.loads?.ok ? at.loads.value : null;
  return {
    rule: hours
      ? say`Canner loads × the hours that a load takes you, from first to last. How long the jars are processed is never given here.`
      : say`Jars ÷ jars in a load, rounded up.`,
    inputs: [
      ...(hours ? [] : [jarsInput(at)]),
      ...(hours && count !== null ? [input(phrase('Canner loads'), count, phrase('loads'), 'computed')] : []),
      ...(hours ? [input(phrase('Hours a load, with you'), row.hoursALoad, phrase('hours'), 'own')] : []),
      ...(hours
        ? []
        : row.loadsOf === null
          ? at.loadSource
            ? [
                input(
                  phrase('Jars in a usual load'),
                  row.container === 'pint jar' ? 9 : 7,
                  measureName(container(at)),
                  'published',
                  at.loadSource,
                ),
              ]
            : []
          : [input(phrase('Jars in a load of your canner'), row.loadsOf, measureName(container(at)), 'own')]),
    ],
    steps: [loadStep(at, hours, count)],
    missing: hours
      ? say`Write the hours that a load takes you.`
      : at.loads && !at.loads.ok
        ? say`${at.loads.problem.message} Write the jars in a load of your canner.`
        : say`Only canned food goes into a canner, and the jars are to be known first.`,
    cautions: cautionsFor(at),
  };
}

function bushels(at: BatchReckoning): Explained {
  return {
    rule: say`Bushels of the main crop: by the jars printed for a bushel where there are such, else pounds ÷ pounds of a bushel. Not rounded, as part of a bushel can be bought.`,
    inputs: [
      jarsInput(at),
      ...perInputs(at),
      ...(at.bushels?.ok && at.bushelSource
        ? [input(phrase('Bushels'), at.bushels.value, phrase('bushels'), 'published', at.bushelSource)]
        : []),
    ],
    steps: [
      at.bushels?.ok && at.jars !== null && at.jars > 0 && at.bushels.value > 0
        ? say`${amount(at.jars, at.row.container)} ÷ ${measuredPer(at.jars / at.bushels.value, container(at), 'bushel')} = ${measuredIn(at.bushels.value, 'bushel')}`
        : null,
    ],
    missing:
      at.bushels && !at.bushels.ok
        ? `${at.bushels.problem.message} ${at.bushels.problem.mend}`
        : whatLacks(at) || say`The number of containers is not known yet.`,
  };
}

function explained(
  at: BatchReckoning,
  column: keyof BatchFigures,
  household: GardenHousehold,
  figures: OwnFigures,
): Explained {
  const { row } = at;
  switch (column) {
    case 'jars':
      return jars(at);
    case 'lids':
      return lids(at);
    case 'canner_loads':
      return loads(at, false);
    case 'hours':
      return loads(at, true);
    case 'bushels_wanted':
      return bushels(at);
    case 'shelf_room_after':
      return room(at, 'shelf', household, figures);
    case 'freezer_room_after':
      return room(at, 'freezer', household, figures);
    case 'pounds_per_container':
      return reached(at, false);
    case 'against_published':
      return reached(at, true);
    default: {
      const found =
        column === 'headspace'
          ? headspaceGuidance(row.food ?? '')
          : pressureGuidance(row.food ?? '', household.altitudeFt);
      return {
        rule:
          column === 'headspace'
            ? say`The headspace class of the food in its plainest pack. Another pack or recipe may want another: the tested process says.`
            : say`Gauge pressure by altitude from the published tables, for foods that they cover. Dial and weighted gauges step at different altitudes. The time is in the tested process, and never here.`,
        inputs: [
          input(phrase('Food'), row.foodName, '', 'entered'),
          ...(column === 'pressure'
            ? [input(phrase('Altitude'), household.altitudeFt, 'ft', 'entered')]
            : []),
          ...(found.source
            ? [
                input(
                  column === 'headspace' ? 'Headspace' : 'Pressure',
                  found.text,
                  '',
                  'published',
                  found.source,
                ),
              ]
            : []),
        ],
        missing: say`Shown for canned food.`,
        cautions: batchCautions(row.food ?? '', 'canned'),
      };
    }
  }
}

/** The working of a planning figure of a batch. Undefined for a row or column that is not there. */
export function explainBatch(
  plan: BatchesPlan,
  household: GardenHousehold,
  figures: OwnFigures,
  rowId: string,
  column: keyof BatchFigures,
): Working | undefined {
  const at = plan.reckoned.get(rowId);
  const row = plan.rows.get(rowId);
  if (!at || !row || !Object.hasOwn(TITLES, column)) return undefined;
  const unit = column === 'jars' && at.row.container !== null ? measureName(at.row.container) : UNITS[column];
  return working(TITLES[column], row.figures[column], unit, explained(at, column, household, figures));
}
