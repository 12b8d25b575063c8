import type { ColumnDeclaration } from '../book/index.js';
import { figureShown } from '../planning/garden/index.js';
import { spoken } from '../words/index.js';
import type { ColumnView } from './columns.js';

/** Lists whose entries are words of ours; what stands in the others is what people wrote. */
const OURS: ReadonlySet<ColumnDeclaration['choices']> = new Set([
  'ways',
  'purposes',
  'sources',
  'containers',
  'measures',
  'meals',
  'line sources',
  'starts',
  'mouths',
  'crops',
  'supplies',
]);

/** An entry of a kept column as a reader sees it: one of our own words in the language spoken, anything else as written. */
export function choiceShown(value: string, declaration: ColumnDeclaration | undefined): string {
  const { choices } = declaration ?? {};
  if (choices === 'figures') return figureShown(value);
  return choices !== undefined && OURS.has(choices) ? spoken(value) : value;
}

/** A text of a cell as a reader sees it: what planners answer in words is told, and what was chosen of our own. */
export const textShown = (
  text: string,
  { role, declaration }: Pick<ColumnView, 'role' | 'declaration'>,
): string => (role === 'planning' ? spoken(text) : choiceShown(text, declaration));
