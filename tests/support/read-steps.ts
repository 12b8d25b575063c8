/** Reads the steps of a working as a reader with pencil and paper would: what is left of `=` reckoned anew. */

const FRACTIONS: Readonly<Record<string, number>> = {
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '½': 1 / 2,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
};
const NUMBER = /[−-]?(?:\d[\d,]*(?:\.\d+)?[⅓⅔½¼¾⅛⅜⅝⅞]?|[⅓⅔½¼¾⅛⅜⅝⅞])/;

/** From, to: a number as shown may be rounded. */
type Span = readonly [number, number];

function spanOf(text: string): Span {
  const sign = /^[−-]/.test(text) ? -1 : 1;
  const plain = text.replace(/[−,-]/g, '');
  const fraction = FRACTIONS[plain.at(-1) ?? ''];
  const digits = fraction === undefined ? plain : plain.slice(0, -1);
  const n = sign * ((digits === '' ? 0 : Number(digits)) + (fraction ?? 0));
  const decimals = digits.split('.')[1]?.length ?? 0;
  const off = fraction === undefined ? 0.5001 * 10 ** -Math.max(decimals, 3) : 0.001;
  return [n - off, n + off];
}

/** The first number of a text; not a number where there is none. */
export function readNumber(text: string): number {
  const found = NUMBER.exec(text)?.[0];
  if (found === undefined) return Number.NaN;
  const [low, high] = spanOf(found);
  return (low + high) / 2;
}

const corners = (a: Span, b: Span, reckon: (x: number, y: number) => number): Span => {
  const all = a.flatMap((x) => b.map((y) => reckon(x, y)));
  return [Math.min(...all), Math.max(...all)];
};

const DO: Readonly<Record<string, (x: number, y: number) => number>> = {
  '×': (x, y) => x * y,
  '÷': (x, y) => x / y,
  '+': (x, y) => x + y,
  '−': (x, y) => x - y,
};

/** Numbers and signs of an expression; null where it is more than that (a date, a comparison). */
function tokens(text: string): string[] | null {
  if (/\d{4}-\d\d|\d+ to \d|[<>≤≥≠&^:%,;√Σ²]| of \d| and \d/.test(text)) return null;
  const found = text.match(/[−-]?(?:\d[\d,]*(?:\.\d+)?[⅓⅔½¼¾⅛⅜⅝⅞]?|[⅓⅔½¼¾⅛⅜⅝⅞])(?![\w-])|[×÷+−()]/g) ?? [];
  return found.some((each) => DO[each]) ? found : null;
}

function evaluate(all: string[]): Span | null {
  let at = 0;
  const sum = (): Span | null => chain(['+', '−'], product);
  const product = (): Span | null => chain(['×', '÷'], one);
  function chain(signs: readonly string[], next: () => Span | null): Span | null {
    let left = next();
    while (left && at < all.length && signs.includes(all[at]!)) {
      const sign = all[at++]!;
      const right = next();
      left = right && corners(left, right, DO[sign]!);
    }
    return left;
  }
  function one(): Span | null {
    const token = all[at++];
    if (token === undefined || token === ')') return null;
    if (token === '(') {
      const inner = sum();
      return all[at++] === ')' ? inner : null;
    }
    return DO[token] ? null : spanOf(token);
  }
  const found = sum();
  return found && at === all.length ? found : null;
}

/**
 * What is wrong with the arithmetic of a step, in words; null where it is right, or is no arithmetic. Every
 * number may be off by half of its last digit.
 */
export function wrongIn(step: string): string | null {
  const [left, ...right] = step.split(' = ');
  if (right.length !== 1 || left === undefined) return null;
  const list = tokens(left);
  const answer = NUMBER.exec(right[0]!)?.[0];
  const given = list && evaluate(list);
  if (!given || answer === undefined) return null;
  const told = spanOf(answer);
  return told[1] >= given[0] && told[0] <= given[1] ? null : `${step} (reckoned: ${given.join(' to ')})`;
}
