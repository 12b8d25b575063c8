import { parseSync } from 'vite';

/** A text for the catalogue; one that is counted has plural forms in other languages. */
export interface SaidText {
  readonly text: string;
  readonly counted: boolean;
}

interface Node {
  readonly type: string;
  readonly [part: string]: unknown;
}

const isNode = (part: unknown): part is Node =>
  typeof part === 'object' && part !== null && typeof (part as Node).type === 'string';

function* nodesIn(part: unknown): Generator<Node> {
  if (Array.isArray(part)) {
    for (const each of part) yield* nodesIn(each);
    return;
  }
  if (!isNode(part)) return;
  yield part;
  for (const [name, inner] of Object.entries(part)) if (name !== 'type') yield* nodesIn(inner);
}

interface Quasi {
  readonly value: { readonly cooked: string };
}

const templateText = (quasis: readonly Quasi[]): string =>
  quasis.reduce((text, { value }, i) => (i === 0 ? value.cooked : `${text}{${i - 1}}${value.cooked}`), '');

/** The text of a literal that has no holes. */
function literal(node: unknown): string | undefined {
  if (!isNode(node)) return undefined;
  if (node.type === 'Literal' && typeof node.value === 'string') return node.value;
  if (node.type !== 'TemplateLiteral') return undefined;
  const quasis = node.quasis as readonly Quasi[];
  return quasis.length === 1 ? quasis[0]!.value.cooked : undefined;
}

const nameOf = (node: unknown): string =>
  isNode(node) && node.type === 'Identifier' ? String(node.name) : '';

/** What follows the number in `some(n, 'week')` and `counted(n, text, 'jar', 'jars')`. */
function countedText(callee: string, given: readonly unknown[]): string | undefined {
  const at = callee === 'some' ? 1 : callee === 'counted' ? 2 : -1;
  if (at < 0) return undefined;
  const [one, many] = [literal(given[at]), literal(given[at + 1])];
  if (many !== undefined) return `{0} ${many}`;
  return one === undefined || given.length > at + 1 ? undefined : `{0} ${one}s`;
}

/** What the source of a module says through `say`, `phrase`, `some` and `counted`, in its order. */
export function saidTexts(file: string, source: string): SaidText[] {
  const found: SaidText[] = [];
  for (const node of nodesIn(parseSync(file, source).program)) {
    if (node.type === 'TaggedTemplateExpression' && nameOf(node.tag) === 'say') {
      const { quasis } = node.quasi as { readonly quasis: readonly Quasi[] };
      found.push({ text: templateText(quasis), counted: false });
    }
    if (node.type !== 'CallExpression') continue;
    const callee = nameOf(node.callee);
    const given = node.arguments as readonly unknown[];
    const text = callee === 'phrase' ? literal(given[0]) : countedText(callee, given);
    if (text !== undefined) found.push({ text, counted: callee !== 'phrase' });
  }
  return found;
}
