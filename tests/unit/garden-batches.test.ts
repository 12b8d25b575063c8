import { describe, expect, it } from 'vitest';
import {
  explainBatch,
  explainSupply,
  headspaceGuidance,
  ownFigures,
  planSupplies,
  postBatch,
  pressureGuidance,
  publishedOnly,
  type SupplyRow,
} from '../../src/planning/garden/index.js';
import { batch, batchesOf, bench, fact } from './garden-make.js';
import { day } from './planning-make.js';

const figures = (rows: Parameters<typeof batchesOf>[0], more: Parameters<typeof batchesOf>[1] = {}) =>
  batchesOf(rows, more).rows.get(rows[0]!.id)!.figures;
const pounds = (crop: string, lb: number | null) => ({ crops: [{ crop, pounds: lb }] });

describe('before putting up', () => {
  it('one canner load, as the USDA guide prints it: 21 lb of tomatoes to 7 quarts', () => {
    const found = figures([batch('b', pounds('tomato', 21))]);
    expect(found).toMatchObject({ jars: 7, canner_loads: 1, lids: 7 });
    expect(found.bushels_wanted).toBeCloseTo(21 / 53, 9);
  });
  it.each([
    ['snap bean', 14],
    ['peach', 17.5],
    ['carrot', 17.5],
    ['sweet corn', 31.5],
    ['sweet potato', 17.5],
  ])('a load of 7 quarts of %s takes %d lb (USDA Complete Guide to Home Canning)', (crop, lb) => {
    const found = figures([batch('b', { food: crop, foodName: crop, ...pounds(crop, lb) })]);
    expect(found).toMatchObject({ jars: 7, canner_loads: 1 });
  });
  it('15 quarts are three loads of 7; a canner of 5 says so itself', () => {
    expect(figures([batch('b', pounds('tomato', 45))])).toMatchObject({ jars: 15, canner_loads: 3 });
    expect(figures([batch('b', { ...pounds('tomato', 45), loadsOf: 5, hoursALoad: 1.5 })])).toMatchObject({
      canner_loads: 3,
      hours: 4.5,
    });
  });
  it('what is still to put up is shared over the batches that wait', () => {
    const lines = [
      {
        food: 'tomato',
        way: 'canned',
        countedIn: 'quart jar',
        toPutUp: 61,
        crops: [{ crop: 'tomato', pounds: null }],
      },
    ] as const;
    const rows = [batch('w', pounds('tomato', 63)), batch('a'), batch('b', { container: 'pint jar' })];
    const plan = batchesOf(rows, { lines });
    // 63 lb make 21 quarts; 40 remain: 20 quarts each, the second batch in pints.
    expect(['w', 'a', 'b'].map((id) => plan.rows.get(id)?.figures.jars)).toEqual([21, 20, 40]);
    // USDA: a bushel of 53 lb, 3 lb a quart.
    expect(plan.rows.get('a')?.figures.bushels_wanted).toBeCloseTo((20 * 3) / 53, 6);
  });
  it('lids are added as they usually fail with this household', () => {
    const past = batch('p', { filled: 50, failed: 2 });
    const plan = batchesOf([batch('b', pounds('tomato', 75)), past]);
    expect(plan.rows.get('b')?.figures).toMatchObject({ jars: 25, lids: 26 });
  });
  it('a lean plan counts on more pounds in a jar, so on fewer jars', () => {
    const lean = figures([batch('b', pounds('tomato', 100))], {
      household: bench('2026-02-01', { basis: 'lean' }),
    });
    expect(lean.jars as number).toBeLessThan(figures([batch('b', pounds('tomato', 100))]).jars as number);
  });
  it('own pounds a jar win', () => {
    const own = ownFigures([fact('f', 'tomato, pounds per quart jar, canned', { ownValue: 2.1 })]);
    expect(figures([batch('b', pounds('tomato', 21))], { figures: own }).jars).toBe(10);
  });
  it('several crops: as many as the one that runs out first allows, by the pounds of Foods', () => {
    const lines = [
      {
        food: 'salsa',
        way: 'canned',
        countedIn: 'pint jar',
        toPutUp: 20,
        crops: [
          { crop: 'tomato', pounds: 1.5 },
          { crop: 'onion', pounds: 0.25 },
        ],
      },
    ] as const;
    const salsa = batch('b', {
      food: 'salsa',
      foodName: 'Salsa',
      container: 'pint jar',
      crops: [
        { crop: 'tomato', pounds: 30 },
        { crop: 'onion', pounds: 4 },
      ],
    });
    expect(figures([salsa], { lines }).jars).toBe(16);
    expect(batchesOf([salsa]).rows.get('b')?.problems?.jars?.code).toBe('pounds-missing');
  });
  it('room is taken up in the order of the dates', () => {
    const household = bench('2026-08-01', { shelfRoom: 100, freezerRoom: 10 });
    const plan = batchesOf(
      [
        batch('late', { ...pounds('tomato', 60), date: day('2026-09-10') }),
        batch('early', { ...pounds('tomato', 60), date: day('2026-08-20') }),
        batch('cold', {
          way: 'frozen',
          container: 'pound',
          crops: [{ crop: 'tomato', pounds: null }],
          filled: 311,
        }),
      ],
      { household, room: { shelf: 65, freezer: 0 } },
    );
    expect(plan.rows.get('early')?.figures.shelf_room_after).toBe(15);
    expect(plan.rows.get('late')?.figures.shelf_room_after).toBe(-5);
    expect(plan.rows.get('late')?.problems?.shelf_room_after?.code).toBe('no-room');
    // Midway between 22.2 and 40 lb to the cubic foot, whose sources disagree: 311 ÷ 31.1 = 10.
    expect(plan.rows.get('cold')?.figures.freezer_room_after).toBeCloseTo(0, 9);
    const told = explainBatch(plan, household, publishedOnly, 'cold', 'freezer_room_after')!;
    expect(told.steps.map(({ text }) => text).join('\n')).toMatch(/35 to 40[\s\S]*22\.2/);
  });
});

describe('guidance beside canning', () => {
  it('pressure by the USDA tables at 2,300 ft, never a time', () => {
    const { text } = pressureGuidance('green bean', 2300);
    expect(text).toBe('dial gauge 12 psi, weighted gauge 15 psi at 2300 ft; see the tested process');
    // A house at 1,500 ft: dial 11, weighted 15.
    expect(pressureGuidance('green bean', 1500).text).toMatch(/dial gauge 11 psi, weighted gauge 15 psi/);
    expect(pressureGuidance('green bean', 9000).problem?.code).toBe('altitude-not-in-tables');
    expect(pressureGuidance('green bean', null).problem?.code).toBe('altitude-missing');
  });
  it('tomatoes and anything else not in the tables see their tested process', () => {
    for (const food of ['tomato', 'dilly bean', 'grandmother’s relish']) {
      expect(pressureGuidance(food, 2300).text).toBe('see the tested process');
    }
    expect(headspaceGuidance('snap bean').text).toMatch(/1 inch.*low-acid/);
    expect(headspaceGuidance('grandmother’s relish').text).toBe('see the tested process');
  });
  it('cautions stand beside the figures', () => {
    const plan = batchesOf([
      batch('b', { food: 'snap bean', foodName: 'Green beans', ...pounds('snap bean', 14) }),
    ]);
    const told = explainBatch(plan, bench(), publishedOnly, 'b', 'jars')!;
    expect(told.cautions?.join(' ')).toMatch(/tested process/);
    expect(told.cautions?.join(' ')).toMatch(/pressure canner/);
    const all = JSON.stringify(
      (['jars', 'lids', 'canner_loads', 'hours', 'headspace', 'pressure'] as const).map((column) =>
        explainBatch(plan, bench(), publishedOnly, 'b', column),
      ),
    );
    expect(all).not.toMatch(/\d+ ?(minutes|min\b)/);
  });
});

describe('afterwards', () => {
  const done = batch('b', { ...pounds('tomato', 42), filled: 15, failed: 1, date: day('2026-09-01') });
  it('pounds a container reached, against published', () => {
    const found = figures([done]);
    expect(found.pounds_per_container).toBeCloseTo(2.8, 9);
    expect(found.against_published).toBeCloseTo((2.8 / 3) * 100, 6);
  });
  it('is posted as a lot of filled less failed, once', () => {
    expect(postBatch(done)).toEqual({
      ok: true,
      value: { food: 'Tomatoes', way: 'canned', container: 'quart jar', count: 14, put_up_on: '2026-09-01' },
    });
    const codes = [
      { ...done, lot: 'l1' },
      { ...done, filled: null },
      { ...done, failed: 16 },
      { ...done, container: null },
    ].map((row) => {
      const found = postBatch(row);
      return found.ok ? 'ok' : found.problem.code;
    });
    expect(codes).toEqual(['already-posted', 'nothing-filled', 'more-failed-than-filled', 'missing']);
  });
});

describe('supplies', () => {
  const supply = (id: string, item: string, more: Partial<SupplyRow> = {}): SupplyRow => ({
    id,
    item,
    onHand: null,
    usedFor: null,
    perContainer: null,
    ...more,
  });
  const batches = batchesOf([
    batch('q', { ...pounds('tomato', 63), mouth: 'wide' }),
    batch('p', {
      food: 'snap bean',
      foodName: 'Beans',
      container: 'pint jar',
      crops: [{ crop: 'snap bean', pounds: 10 }],
    }),
    batch('f', { food: 'pea', way: 'frozen', container: 'pint freezer bag', filled: 9 }),
    batch('done', { filled: 20 }),
  ]);
  const rows = [
    supply('lids', 'Lids', { onHand: 12 }),
    supply('wide', 'wide-mouth lids'),
    supply('quart', 'quart jars', { onHand: 30 }),
    supply('salt', 'Salt', { perContainer: 0.25, usedFor: 'tomato', onHand: 1 }),
    supply('acid', 'citric acid'),
  ];
  const plan = planSupplies(rows, batches);
  const of = (id: string) => plan.rows.get(id)!;
  it('wanted for the batches still to be put up, less what is on hand', () => {
    const beans = batches.rows.get('p')!.figures.jars as number;
    expect(of('lids').figures).toEqual({ wanted: 21 + beans, short: 21 + beans - 12 });
    expect(of('quart').figures).toEqual({ wanted: 21, short: 0 });
    expect(of('salt').figures).toEqual({ wanted: 5.25, short: 4.25 });
  });
  it('a batch that does not say its mouth is named; a recipe that is not known stays blank', () => {
    expect(of('wide').figures.wanted).toBe(21);
    expect(of('wide').problems?.wanted?.code).toBe('mouth-not-said');
    expect(of('acid').figures.wanted).toBeNull();
    expect(explainSupply(plan, 'acid', 'wanted')?.missing).toMatch(/tested recipe/);
  });
});
