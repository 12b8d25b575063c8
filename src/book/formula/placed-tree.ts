import { parse, tokenize } from '@borgar/fx';
import { BROKEN, mapParts, type ReferencePart } from './stored.js';

/** From where to where a part stands in the stored formula, with the brackets that are around it alone. */
export interface Span {
  readonly from: number;
  readonly until: number;
}

/** A part of a stored formula that knows where it stands, so that it can be rewritten and the rest stay as typed. */
export type PlacedPart = Span &
  (
    | { readonly is: 'number'; readonly value: number }
    | { readonly is: 'text'; readonly value: string }
    | { readonly is: 'reference'; readonly reference: ReferencePart }
    | { readonly is: 'call'; readonly name: string; readonly parts: readonly PlacedPart[] }
    | {
        readonly is: 'operator';
        readonly operator: string;
        readonly parts: readonly PlacedPart[];
        /** Brackets stand around it. */
        readonly bracketed: boolean;
      }
    | { readonly is: 'other' }
  );

interface Node {
  readonly type: string;
  readonly loc?: readonly [number, number];
  readonly operator?: string;
  readonly value?: unknown;
  readonly callee?: { readonly name: string };
  readonly arguments?: readonly (Node | null)[];
}

/** Longer or deeper ones are not taken apart: nobody follows them. */
const LONGEST = 2000;
const DEEPEST = 40;

/** A stored formula in parts; undefined where it cannot be read so. */
export function placedTree(stored: string): PlacedPart | undefined {
  if (stored.length > LONGEST || stored.includes(BROKEN)) return undefined;
  const references = new Map<number, ReferencePart>();
  // Names that are as long as the references in whose place they stand: places stay what they are.
  const named = mapParts(stored, (part) => {
    references.set(part.at, part);
    return '_'.repeat(part.text.length);
  });
  try {
    const tree = parse(tokenize(named, { withLocation: true })) as unknown as Node;
    return placed(tree, named, references, 0);
  } catch {
    return undefined;
  }
}

function placed(
  node: Node,
  text: string,
  references: ReadonlyMap<number, ReferencePart>,
  depth: number,
): PlacedPart {
  if (depth > DEEPEST || !node.loc) throw new Error('not read');
  const [from, until] = node.loc;
  const below = (each: Node | null): PlacedPart => {
    // An argument that is left out stands nowhere.
    if (!each) return { is: 'other', from: until, until };
    return placed(each, text, references, depth + 1);
  };
  const whole = (span: Span): Span => withBrackets(text, span);
  switch (node.type) {
    case 'Literal':
      if (typeof node.value === 'number')
        return { is: 'number', value: node.value, ...whole({ from, until }) };
      return { is: 'text', value: String(node.value), ...whole({ from, until }) };
    case 'ReferenceIdentifier': {
      const reference = references.get(from);
      if (!reference) throw new Error('a name that is none of ours');
      return { is: 'reference', reference, ...whole({ from, until }) };
    }
    case 'CallExpression': {
      const parts = (node.arguments ?? []).filter((each) => each !== null).map(below);
      // One that is left out in between makes the places of arguments say nothing.
      if (parts.length !== (node.arguments ?? []).length) throw new Error('an argument is left out');
      return { is: 'call', name: node.callee?.name.toUpperCase() ?? '', parts, ...whole({ from, until }) };
    }
    case 'UnaryExpression':
    case 'BinaryExpression': {
      const parts = (node.arguments ?? []).map(below);
      const { operator = '' } = node;
      const [first, last] = [parts[0]!, parts.at(-1)!];
      // The parser’s own places leave out brackets with which a part begins or ends.
      const bare = {
        from: parts.length === 1 && operator !== '%' ? Math.min(from, first.from) : first.from,
        until: operator === '%' ? text.indexOf('%', last.until) + 1 : last.until,
      };
      const span = whole(bare);
      return { is: 'operator', operator, parts, bracketed: span.from < bare.from, ...span };
    }
    default:
      return { is: 'other', ...whole({ from, until }) };
  }
}

/** With the brackets around it, where they are not those of a function. */
function withBrackets(text: string, { from, until }: Span): Span {
  const before = /\(\s*$/.exec(text.slice(0, from));
  const after = /^\s*\)/.exec(text.slice(until));
  if (!before || !after || /[\w.]$/.test(text.slice(0, before.index))) return { from, until };
  return withBrackets(text, { from: before.index, until: until + after[0].length });
}
