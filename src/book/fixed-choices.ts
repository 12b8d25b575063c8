import { figureMeant } from '../planning/garden/figure-words.js';
import { HOW_PLANTED, MOUTHS } from '../planning/garden/types.js';
import { COMES_FROM, DRAW_PURPOSES, WAYS_KEPT } from '../planning/types.js';
import { LINE_SOURCES, MEALS } from '../planning/week/types.js';
import { CONTAINERS, containerWithId, UNITS, unitWithId } from '../units/index.js';
import { messages, spoken } from '../words/index.js';
import type { Typed } from './commands.js';
import type { ChoiceSource, ColumnDeclaration } from './kinds/column.js';

const containers = CONTAINERS.map(({ id }) => id);
const measures = [
  ...containers,
  ...UNITS.filter(({ dimension }) => dimension === 'volume' || dimension === 'weight')
    .map(({ id }) => id)
    .filter((id) => !containers.includes(id)),
];

const FIXED: { readonly [S in ChoiceSource]?: readonly string[] } = {
  ways: WAYS_KEPT,
  purposes: DRAW_PURPOSES,
  sources: COMES_FROM,
  containers,
  measures,
  meals: MEALS,
  'line sources': LINE_SOURCES,
  starts: HOW_PLANTED,
  mouths: MOUTHS,
};

/** What a column can hold whatever stands in the book, in the order in which it is offered; stored in English. */
export const fixedChoices = (source: ChoiceSource): readonly string[] | undefined => FIXED[source];

const pluralOf = (id: string): string => (containerWithId(id) ?? unitWithId(id))?.plural ?? id;

/**
 * What is stored for what somebody typed into a column of fixed choices: the English word where it was written in
 * the language spoken (`eingekocht`, `Quart-Gläser`). Anything else stays as it is.
 */
export function choiceMeant(typed: Typed, declaration: ColumnDeclaration | undefined): Typed {
  if (typeof typed !== 'string' || declaration?.choices === undefined) return typed;
  if (declaration.choices === 'figures') return figureMeant(typed);
  if (messages() === null) return typed;
  const wanted = typed.trim().toLowerCase();
  const all = FIXED[declaration.choices] ?? [];
  if (wanted === '' || all.includes(wanted)) return typed;
  const named = (name: string): boolean => spoken(name).toLowerCase() === wanted;
  return all.find((each) => named(each) || named(pluralOf(each))) ?? typed;
}
