import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { takenByEach } from '../../components/sheet/looks/rule-count.js';
import { draftOfRule, ruleOf, valuesOf } from '../../components/sheet/looks/rule-draft.js';
import { blankBook, COLOURS, CONDITIONS, type Marking } from '../../src/book/index.js';
import { openBook } from '../../src/live/live-book.js';
import { speak } from '../../src/words/index.js';

const open = (values: readonly (string | number)[], type: 'any' | 'number' | 'date' | 'text') => {
  const live = openBook(blankBook());
  live.apply({
    do: 'add sheet',
    sheet: 's',
    title: 'Own',
    columns: [{ id: 'c', title: 'C', as: { type } }],
    rows: values.map((value, i) => ({ id: `r${i}`, cells: { c: value } })),
  });
  return live;
};

const values = fc.array(
  fc.constantFrom<string | number>(1, 2, 3.5, 12, 'ham', 'Ham', '2026-05-04', '2027-01-01', ''),
  {
    maxLength: 12,
  },
);
const someRules = fc.shuffledSubarray([...COLOURS], { minLength: 1 }).chain((colours) =>
  fc.tuple(
    ...colours.map((colour) =>
      fc.record({
        colour: fc.constant(colour),
        when: fc.constantFrom(...CONDITIONS),
        value: fc.constantFrom('2', '3', 'ham', '2026-06-01', '400', 'today'),
        to: fc.constantFrom('4', '2026-12-31', 'today'),
      }),
    ),
  ),
);

describe('the number of cells that a rule takes', () => {
  it('is told before the rules are kept just as they come out afterwards', () => {
    fc.assert(
      fc.property(values, someRules, (cells, drafts) => {
        const live = open(cells, 'any');
        const rules = drafts.map((draft) => ruleOf(draft, 'any')!);
        const told = takenByEach(live, 's', live.column('s', 'c')!, rules);
        const done = live.apply({ do: 'describe column', sheet: 's', column: 'c', as: { marks: rules } });
        const dayless = drafts.map(
          ({ when, value }) => (when === 'before' || when === 'after') && !/^(2026-|today)/.test(value),
        );
        expect(told.map((each) => each === null)).toEqual(dayless);
        expect(done.ok).toBe(!dayless.includes(true));
        if (!done.ok) return;
        const found = rules.map(
          ({ colour }) => live.rowIds('s').filter((row) => live.colourOf('s', row, 'c') === colour).length,
        );
        expect(told).toEqual(found);
      }),
    );
  });

  it('follows the day that it is where the rule says today', () => {
    const live = open(['2026-02-14', '2026-02-15', '2026-02-16', ''], 'date');
    live.apply({ do: 'set setting', setting: 'as_of', typed: '2026-02-15' });
    const rule = ruleOf({ when: 'before', colour: 'rose', value: 'Today', to: '' }, 'date')!;
    expect(takenByEach(live, 's', live.column('s', 'c')!, [rule])).toEqual([1]);
    live.apply({ do: 'describe column', sheet: 's', column: 'c', as: { marks: [rule] } });
    const rose = () => live.rowIds('s').filter((row) => live.colourOf('s', row, 'c') === 'rose');
    expect(rose()).toEqual(['r0']);
    const repainted: string[] = [];
    live.on('change', ({ cells }) => repainted.push(...cells.map(({ row }) => row)));
    live.apply({ do: 'set setting', setting: 'as_of', typed: '2026-02-16' });
    expect(rose()).toEqual(['r0', 'r1']);
    expect(repainted).toContain('r1');
  });

  it('is not told of a rule that lacks its value', () => {
    const live = open([1, 2], 'number');
    const half = ruleOf({ when: 'between', colour: 'rose', value: '1', to: '' }, 'number');
    expect(takenByEach(live, 's', live.column('s', 'c')!, [half, { when: 'filled', colour: 'sky' }])).toEqual(
      [null, 2],
    );
  });
});

describe('a rule in its fields', () => {
  it('comes back as it was kept', () => {
    const rules: Marking[] = [
      { when: 'between', colour: 'rose', value: 3, to: 4.5 },
      { when: 'is', colour: 'leaf', value: 'neighbour' },
      { when: 'before', colour: 'sky', value: '2026-05-04' },
      { when: 'double', colour: 'stone' },
    ];
    for (const rule of rules) expect(ruleOf(draftOfRule(rule), 'any')).toEqual(rule);
    expect(ruleOf(draftOfRule({ when: 'is', colour: 'plum', value: true }), 'tick')).toEqual({
      when: 'is',
      colour: 'plum',
      value: true,
    });
  });

  it('asks for as many values as its condition compares with', () => {
    const asked = Object.fromEntries(CONDITIONS.map((when) => [when, valuesOf(when)]));
    expect(asked).toMatchObject({ between: 2, above: 1, 'within days': 1, blank: 0, filled: 0, double: 0 });
  });
});

describe('a rule that is written in German', () => {
  beforeAll(() => speak('de'));
  afterAll(() => speak('en'));

  it('is kept as in English, and comes back as it was written', () => {
    const ways = { choices: 'ways' } as never;
    const kept = (value: string, type: 'text' | 'number' | 'tick') =>
      ruleOf({ when: 'is', colour: 'plum', value, to: '' }, type, type === 'text' ? ways : undefined)!;
    expect(kept('Eingekocht', 'text').value).toBe('canned');
    expect(kept('Omas Regal', 'text').value).toBe('Omas Regal');
    expect(kept('1,5', 'number').value).toBe(1.5);
    expect(kept('ja', 'tick').value).toBe(true);
    expect(draftOfRule(kept('eingekocht', 'text'), ways).value).toBe('eingekocht');
    expect(draftOfRule(kept('1,5', 'number')).value).toBe('1,5');
    expect(draftOfRule(kept('Ja', 'tick')).value).toBe('ja');
  });

  it('looks for what the cells show, whole words and parts of them', () => {
    const live = openBook(blankBook());
    const rows = live.insertRows('shelf', [{ way: 'canned' }, { way: 'dried' }, { way: 'frozen' }]).rows;
    const column = live.column('shelf', 'way')!;
    const taken = (when: 'contains' | 'is not', value: string): readonly string[] => {
      const rule = ruleOf({ when, colour: 'plum', value, to: '' }, column.type, column.declaration)!;
      const marked = live.apply({
        do: 'describe column',
        sheet: 'shelf',
        column: 'way',
        as: { marks: [rule] },
      });
      expect(marked.ok).toBe(true);
      const found = rows.filter((row) => live.colourOf('shelf', row, 'way') === 'plum');
      expect(takenByEach(live, 'shelf', column, [rule])).toEqual([found.length]);
      return found.map((row) => String(live.value('shelf', row, 'way')));
    };
    expect(taken('contains', 'EIN')).toEqual(['canned', 'frozen']);
    expect(taken('contains', 'ann')).toEqual([]);
    expect(taken('is not', 'Eingekocht')).toEqual(['dried', 'frozen']);
    expect(taken('contains', 'Eingekocht')).toEqual(['canned']);
    // A whole word is kept as the cells keep it, so it holds in every language.
    expect(live.column('shelf', 'way')!.markings[0]!.value).toBe('canned');
    live.close();
  });
});
