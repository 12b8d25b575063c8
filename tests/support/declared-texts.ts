import { COLOURS, KINDS } from '../../src/book/index.js';
import { SETTINGS } from '../../src/book/settings.js';
import { allCautions } from '../../src/facts/cautions.js';
import { crops } from '../../src/facts/crops.js';
import { WAYS } from '../../src/facts/ways.js';
import { functions } from '../../src/formulas/index.js';
import { HOW_PLANTED, MOUTHS } from '../../src/planning/garden/types.js';
import { COMES_FROM, DRAW_PURPOSES } from '../../src/planning/types.js';
import { LINE_SOURCES } from '../../src/planning/week/types.js';
import { PROBLEM_CODES } from '../../src/problem-codes.js';
import { CONTAINERS, UNITS } from '../../src/units/index.js';

/** Words that a household chooses from, besides ways, containers, units and meals. */
const CHOSEN = [...HOW_PLANTED, ...MOUTHS, ...DRAW_PURPOSES, ...COMES_FROM, ...LINE_SOURCES];

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
        ...each.arguments.flatMap((one) => [one.help, ...text(one.otherwise), ...text(one.unit)]),
      ]),
    ],
  ]);
}
