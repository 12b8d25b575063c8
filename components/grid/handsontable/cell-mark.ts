import type { CellMark } from '../grid-view.js';
import type { Look } from './renderer.js';

/** Classes that cells with a mark may wear. */
export const MARK_CLASSES: readonly string[] = ['croft-asked', 'croft-right', 'croft-wrong'];

/** How a cell looks with what the element around says of it. */
export function withMark(look: Look, { tone, sign, words }: CellMark): Look {
  return {
    ...look,
    classes: [...look.classes, `croft-${tone}`],
    sign,
    invalid: look.invalid || tone === 'wrong',
    note: [words, look.note].filter(Boolean).join(' '),
    remark: [words, look.remark].filter(Boolean).join('\n'),
  };
}
