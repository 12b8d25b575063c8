import { COLOURS, KINDS } from '../../src/book/index.js';
import { SETTINGS } from '../../src/book/settings.js';
import { allFigures } from '../../src/facts/all.js';
import { cannedCrops, canning } from '../../src/facts/canning.js';
import { allCautions } from '../../src/facts/cautions.js';
import { crops } from '../../src/facts/crops.js';
import { allLivestock } from '../../src/facts/livestock.js';
import { perPerson } from '../../src/facts/per-person.js';
import { allCanningRules } from '../../src/facts/rules.js';
import { DESCRIBED, sources } from '../../src/facts/sources.js';
import { WAYS } from '../../src/facts/ways.js';
import { functions } from '../../src/formulas/index.js';
import { HOW_PLANTED, MOUTHS } from '../../src/planning/garden/types.js';
import { COMES_FROM, DRAW_PURPOSES } from '../../src/planning/types.js';
import { LINE_SOURCES } from '../../src/planning/week/types.js';
import { PROBLEM_CODES } from '../../src/problem-codes.js';
import { CONTAINERS, UNITS } from '../../src/units/index.js';
import { metricOf } from '../../src/units/system.js';
import { publishedNotes } from './published-notes.js';

/** Words that a household chooses from, besides ways, containers, units and meals. */
const CHOSEN = [...HOW_PLANTED, ...MOUTHS, ...DRAW_PURPOSES, ...COMES_FROM, ...LINE_SOURCES];

/** Figures are published in many more units than people measure in. */
const UNITS_OF_FIGURES = [...new Set(allFigures().map(({ unit }) => unit))];

/** Names of packs that functions take. */
const PACKS = cannedCrops().flatMap((crop) => {
  const found = canning(crop);
  return found.ok ? found.value.packs : [];
});

const text = (value: unknown): string[] => (typeof value === 'string' && value !== '' ? [value] : []);

/** Texts that are declared as data, once, and told in another language where they are shown. */
export function declaredTexts(): Map<string, string[]> {
  return new Map([
    ['problems', Object.values(PROBLEM_CODES)],
    ['units', [...UNITS, ...CONTAINERS].flatMap(({ id, plural }) => [id, plural])],
    [
      'facts',
      [
        ...crops().flatMap(({ name, plural }) => [name, plural]),
        ...allCautions().map((each) => each.text),
        ...WAYS,
        ...PACKS,
      ],
    ],
    [
      'facts/published',
      [
        ...publishedNotes(),
        ...DESCRIBED.map((id) => sources()[id] ?? ''),
        ...allCanningRules().map((each) => each.text),
        ...allLivestock().flatMap(({ basis }) => text(basis)),
        ...perPerson().map(({ basis }) => basis),
        ...UNITS_OF_FIGURES.flatMap((unit) => [unit, ...text(metricOf(unit)?.unit)]),
      ],
    ],
    [
      'book',
      [
        ...Object.values(KINDS).flatMap(({ title, help, empty, row, columns }) => [
          title,
          help,
          empty,
          row,
          ...columns.flatMap((column) => [column.title, column.help, ...text(column.unit)]),
        ]),
        ...CHOSEN,
        ...COLOURS,
        ...SETTINGS.flatMap((each) => [each.title, each.help, ...text(each.unit), ...(each.options ?? [])]),
      ],
    ],
    [
      'formulas',
      functions.flatMap((each) => [
        each.group,
        each.summary,
        each.gives,
        each.source,
        ...text(each.unit),
        ...(each.details ?? []),
        ...text(each.caution),
        ...each.arguments.flatMap((one) => [
          one.help,
          ...text(one.otherwise),
          ...text(one.unit),
          ...(one.kind === 'text' ? (one.values ?? []) : []),
        ]),
      ]),
    ],
  ]);
}
