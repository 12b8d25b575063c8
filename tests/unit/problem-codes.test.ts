import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { PROBLEM_CODES } from '../../src/problem-codes.js';

const src = resolve(import.meta.dirname, '../../src');

const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts') && name !== 'problem-codes.ts')
  .map((name) => readFileSync(join(src, name), 'utf8'));

const CODE = "'([a-z][a-z0-9]*(?:-[a-z0-9]+)*)'";
/** `code: '…'`, also one of two. */
const AS_FIELD = new RegExp(`\\bcode: (?:\\w+ \\? )?${CODE}(?: : ${CODE})?`, 'g');
/** As the first text handed to what makes a problem: `refuse('…', 'Words.', …)`. */
const HANDED =
  /(?:\b(?:refuse|problem|one|none|rowProblem|at)|#problem)\(\s*(?:[\w.'$]+,\s*){0,3}?'([a-z][a-z0-9]*(?:-[a-z0-9]+)+|gone|missing|unforeseen)',/g;
/** Put together: what stands before the part that varies. */
const BUILT = /\b(?:code: |refuse\(\s*)`([a-z][a-z -]*)\$\{/g;

function codesUsed(): string[] {
  const found = new Set<string>();
  for (const text of files) {
    for (const pattern of [AS_FIELD, HANDED])
      for (const [, ...codes] of text.matchAll(pattern)) for (const code of codes) if (code) found.add(code);
    for (const [, start] of text.matchAll(BUILT)) found.add(`${start}…`);
  }
  return [...found].sort();
}

describe('the list of problem codes', () => {
  it('has a line for every code in the source: add yours to src/problem-codes.ts', () => {
    expect(codesUsed().filter((code) => !Object.hasOwn(PROBLEM_CODES, code))).toEqual([]);
  });

  it('has no line for a code that is nowhere', () => {
    const all = files.join('\n');
    const unused = Object.keys(PROBLEM_CODES).filter((code) =>
      code.endsWith('…') ? !all.includes(`\`${code.slice(0, -1)}\${`) : !all.includes(`'${code}'`),
    );
    expect(unused).toEqual([]);
  });

  it('says in one plain sentence what each means', () => {
    for (const [code, line] of Object.entries(PROBLEM_CODES))
      expect([code, line]).toEqual([code, expect.stringMatching(/^[A-Z][^\n]{9,120}\.$/)]);
  });
});
