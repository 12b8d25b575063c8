/** What stands at the caret of a formula being typed. */
export interface AtCaret {
  /** The name being typed and where it begins; null inside text in quotes or after a sign. */
  readonly word: { readonly from: number; readonly text: string } | null;
  /** Text in quotes being typed, from behind its quote. */
  readonly literal: { readonly from: number; readonly text: string } | null;
  /** The innermost function whose brackets are open, and which of its arguments, from 0. */
  readonly call: { readonly name: string; readonly argument: number } | null;
  /** Brackets still open. */
  readonly open: number;
}

const WORD_AT_END = /[\p{L}_][\p{L}\p{N}_.]*$/u;
const WORD_CHARACTER = /[\p{L}\p{N}_.]/u;

/** Reads a formula up to the caret. */
export function atCaret(formula: string, caret: number): AtCaret {
  const stack: { name: string; argument: number }[] = [];
  let quote = -1;
  let array = 0;
  for (let i = 0; i < caret; i++) {
    const char = formula[i]!;
    if (quote >= 0) {
      if (char !== '"') continue;
      if (formula[i + 1] === '"' && i + 1 < caret) i++;
      else quote = -1;
    } else if (char === '"') quote = i;
    else if (char === '{') array++;
    else if (char === '}') array--;
    else if (char === '(') {
      const name = WORD_AT_END.exec(formula.slice(0, i))?.[0] ?? '';
      stack.push({ name: name.toUpperCase(), argument: 0 });
    } else if (char === ')') stack.pop();
    else if ((char === ',' || char === ';') && array <= 0 && stack.length > 0) stack.at(-1)!.argument++;
  }
  const call = stack.findLast(({ name }) => name !== '') ?? null;
  const open = stack.length;
  if (quote >= 0)
    return { word: null, literal: { from: quote + 1, text: formula.slice(quote + 1, caret) }, call, open };
  const before = formula.slice(0, caret);
  const text = WORD_AT_END.exec(before)?.[0] ?? '';
  const from = caret - text.length;
  // Letters of a cell's address or the middle of a word are no name to complete.
  const inWord = WORD_CHARACTER.test(formula[caret] ?? '') || WORD_CHARACTER.test(formula[from - 1] ?? '');
  const word = text === '' || inWord || formula[from - 1] === '$' ? null : { from, text };
  return { word, literal: null, call, open };
}

/** The formula with the brackets closed that were left open at its end. */
export function closed(formula: string): string {
  const { literal, open } = atCaret(formula, formula.length);
  return literal ? formula : formula + ')'.repeat(open);
}
