import { describe, expect, it } from 'vitest';
import { atCaret, closed } from '../../components/grid/handsontable/caret.js';

/** The caret stands at the bar. */
const at = (text: string) => atCaret(text.replace('|', ''), text.indexOf('|'));

describe('what stands at the caret of a formula', () => {
  it('is the word being typed', () => {
    expect(at('=SUM(Le|').word).toEqual({ from: 5, text: 'Le' });
    expect(at('=|').word).toBe(null);
    expect(at('=Le|ft').word).toBe(null);
    expect(at('=$B|').word).toBe(null);
  });

  it('is the function and argument whose brackets are open', () => {
    expect(at('=IF(A1,SUM(1,2|').call).toEqual({ name: 'SUM', argument: 1 });
    expect(at('=IF(A1,SUM(1,2),|').call).toEqual({ name: 'IF', argument: 2 });
    expect(at('=if(a;b;|').call).toEqual({ name: 'IF', argument: 2 });
    expect(at('=(1+|').call).toBe(null);
    expect(at('=SUM({1,2;3,4},|').call).toEqual({ name: 'SUM', argument: 1 });
  });

  it('is text in quotes, in which commas and brackets do not count', () => {
    expect(at('=MEASURE(1,"qu|').literal).toEqual({ from: 12, text: 'qu' });
    expect(at('=X("a,(b""c",|').call).toEqual({ name: 'X', argument: 1 });
    expect(at('=X("a|').word).toBe(null);
  });
});

describe('brackets left open', () => {
  it('are closed at the end, but not inside text in quotes', () => {
    expect(closed('=SUM(1,(2+3')).toBe('=SUM(1,(2+3))');
    expect(closed('=SUM(1)')).toBe('=SUM(1)');
    expect(closed('=X("(')).toBe('=X("(');
    expect(closed('=X("(")')).toBe('=X("(")');
  });
});
