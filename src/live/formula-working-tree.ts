import { parse, tokenize } from '@borgar/fx';
import { oneValueAt } from '../book/formula/one-value.js';
import { mapParts, type StoredReference, written } from '../book/formula/stored.js';
import type { CellAddress } from '../book/index.js';
import { takesOneValue } from './engine-sync.js';

/**
 * A formula in parts. `stored` is the part as a formula of its own that can be worked out anywhere in the
 * book: every reference names its sheet, and a column's name that means the cell of the same row is that cell.
 */
export type FormulaPart =
  | { readonly is: 'number'; readonly value: number; readonly stored: string }
  | { readonly is: 'text'; readonly value: string; readonly stored: string }
  | { readonly is: 'cell'; readonly at: CellAddress; readonly stored: string }
  | {
      readonly is: 'cells';
      readonly from: StoredReference;
      readonly to: StoredReference;
      readonly stored: string;
    }
  | {
      readonly is: 'call';
      readonly name: string;
      readonly args: readonly (FormulaPart | undefined)[];
      readonly stored: string;
    }
  | {
      readonly is: 'operator';
      readonly operator: string;
      readonly parts: readonly [FormulaPart] | readonly [FormulaPart, FormulaPart];
      readonly stored: string;
    }
  | { readonly is: 'array'; readonly values: readonly (readonly Value[])[]; readonly stored: string }
  | { readonly is: 'other'; readonly stored: string };

type Value = number | string | boolean;

/** Stands for the row in which the formula stands, so that a column's formula is taken apart once for all of its rows. */
export const HERE = 'row-of-formula';

/** The row that a part speaks of, for the row in which its formula stands. */
export const rowAt = (row: string, home: string): string => (row === HERE ? home : row);

/** A part as a formula of its own, for the row in which it stands. */
export const standingAt = (stored: string, home: string): string =>
  `=${stored.replaceAll(`@${HERE}]`, `@${home}]`)}`;

/** Longer formulas are not taken apart: nobody follows them step by step. */
const LONGEST = 2000;
const DEEPEST = 40;

/** What of the parser's tree is read here. */
interface Node {
  readonly type: string;
  readonly operator?: string;
  readonly value?: unknown;
  readonly raw?: string;
  readonly callee?: { readonly name: string };
  readonly arguments?: readonly (Node | null)[];
  readonly elements?: readonly (readonly Node[])[];
}

type Reference = Extract<FormulaPart, { is: 'cell' | 'cells' | 'other' }>;

/** A stored formula of the sheet `home` in parts; undefined where it cannot be read so, or is too long. */
export function partsOf(stored: string, home: string): FormulaPart | undefined {
  if (stored.length > LONGEST) return undefined;
  const references: Reference[] = [];
  let mark = '_ref_';
  while (stored.includes(mark)) mark += '_';
  let oneValue: ReturnType<typeof oneValueAt> | undefined;
  const marked = mapParts(stored, ({ from, to, text, at }) => {
    const here = (r: StoredReference): StoredReference => ({
      ...r,
      sheet: r.sheet ?? from.sheet ?? home,
    });
    const sheet = from.sheet ?? home;
    if (from.byName) {
      oneValue ??= oneValueAt(stored, takesOneValue);
      const single = sheet === home && oneValue(at, text.length);
      references.push(single ? cell(sheet, HERE, from.column ?? '') : cells(here(from), here(from)));
    } else if (to || from.row === undefined || from.column === undefined) {
      references.push(cells(here(from), here(to ?? from)));
    } else references.push(cell(sheet, from.row, from.column));
    return `${mark}${references.length - 1}_`;
  });
  try {
    const tree = parse(tokenize(marked)) as Node;
    return read(tree, 0, (name) => {
      const index = name.startsWith(mark) ? Number(name.slice(mark.length, -1)) : Number.NaN;
      return references[index] ?? { is: 'other', stored: name };
    });
  } catch {
    return undefined;
  }
}

const cell = (sheet: string, row: string, column: string): Reference => ({
  is: 'cell',
  at: { sheet, row, column },
  stored: `[${sheet}.${column}@${row}]`,
});

const cells = (from: StoredReference, to: StoredReference): Reference => ({
  is: 'cells',
  from,
  to,
  stored: from.byName ? written(from) : `${written(from)}:${written(to)}`,
});

function read(node: Node, depth: number, reference: (name: string) => Reference): FormulaPart {
  if (depth > DEEPEST) throw new Error('too deep');
  const below = (child: Node): FormulaPart => read(child, depth + 1, reference);
  switch (node.type) {
    case 'Literal':
      if (typeof node.value === 'number') return { is: 'number', value: node.value, stored: node.raw ?? '' };
      if (typeof node.value === 'string') {
        const text = (node.raw ?? '').replace(/^"|"$/g, '').replaceAll('""', '"');
        return { is: 'text', value: text, stored: node.raw ?? '' };
      }
      return { is: 'other', stored: node.raw ?? '' };
    case 'ReferenceIdentifier':
      return reference(String(node.value));
    case 'CallExpression': {
      const args = (node.arguments ?? []).map((arg) => (arg ? below(arg) : undefined));
      const name = node.callee?.name.toUpperCase() ?? '';
      return { is: 'call', name, args, stored: `${name}(${args.map((arg) => arg?.stored ?? '').join(',')})` };
    }
    case 'UnaryExpression': {
      const [child] = node.arguments ?? [];
      const part = below(child!);
      const operator = node.operator ?? '';
      const stored = operator === '%' ? `(${part.stored}%)` : `(${operator}${part.stored})`;
      return { is: 'operator', operator, parts: [part], stored };
    }
    case 'BinaryExpression': {
      const [left, right] = (node.arguments ?? []).map((each) => below(each!));
      const operator = node.operator ?? '';
      return {
        is: 'operator',
        operator,
        parts: [left!, right!],
        stored: `(${left!.stored}${operator}${right!.stored})`,
      };
    }
    case 'ArrayExpression': {
      const rows = (node.elements ?? []).map((row) => row.map((each) => below(each).stored).join(','));
      const values = (node.elements ?? []).map((row) => row.map(({ value }) => value as Value));
      return { is: 'array', values, stored: `{${rows.join(';')}}` };
    }
    default:
      return { is: 'other', stored: node.raw ?? '' };
  }
}
