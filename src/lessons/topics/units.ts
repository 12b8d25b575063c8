import { inMeasure } from '../../units/index.js';
import { localNumber, phrase, say, spoken } from '../../words/index.js';
import { amountOf, asking, lastStep, partsAllowed } from '../answer-text.js';
import type { BookNumbers, StockNumbers } from '../book-numbers.js';
import { ends, exact, isWhole, ROUNDING_WORDS, type Rounding, ratio, rounded, written } from '../exact.js';
import type { Random } from '../random.js';
import { form, type Topic } from '../types.js';
import { amount, amountOfFood, numberIn, SHARES, sentence, unitOf } from '../words.js';

/** How many of the smaller make one of the larger: what a child is to know. */
const LADDERS: readonly { readonly large: string; readonly small: string; readonly count: number }[] = [
  { large: 'gallon', small: 'quart', count: 4 },
  { large: 'quart', small: 'pint', count: 2 },
  { large: 'pint', small: 'cup', count: 2 },
  { large: 'quart', small: 'cup', count: 4 },
  { large: 'gallon', small: 'pint', count: 8 },
  { large: 'gallon', small: 'cup', count: 16 },
  { large: 'pound', small: 'ounce', count: 16 },
  { large: 'cup', small: 'fluid ounce', count: 8 },
];

interface Conversion {
  readonly n: number;
  readonly from: string;
  readonly to: string;
  readonly rounding: Rounding;
}

/** The conversion as `src/units` makes it. */
const converted = ({ n, from, to, rounding }: Conversion) => {
  const done = inMeasure(n, from, to);
  // Quarters of a cup in gallons end after seven digits.
  return amountOf(ratio(Math.round((done.ok ? done.value : 0) * 1e7), 1e7), unitOf(to), rounding, true);
};

/** The unit that a container or measure of the book is one of: a quart bag counts as one quart. */
const unitIn = (measure: string): string | null =>
  ['gallon', 'quart', 'pint', 'cup', 'pound'].find((unit) => {
    const one = inMeasure(1, measure, unit);
    return one.ok && one.value === 1;
  }) ?? null;

interface Found {
  readonly words: string;
  readonly n: number;
  readonly unit: string;
  /** 'A quart freezer bag counts as 1 quart.' where the container is not the unit itself. */
  readonly note: string;
}

/** An amount of the book in a unit of volume or weight: of a lot, of what is left, or of a dish. */
function anAmount(numbers: BookNumbers, random: Random): Found | null {
  const ofStock = (line: StockNumbers, n: number, said: (food: string) => string): Found[] => {
    const unit = unitIn(line.measure);
    if (unit === null || n < 2) return [];
    const note = line.measure === unit ? '' : say`Count each ${line.unit.one} as 1 ${unit}.`;
    return [{ words: said(amountOfFood(exact(n), line.unit, line.food)), n, unit, note }];
  };
  const all = [
    ...numbers.stock.flatMap((line) => [
      ...ofStock(line, line.left, (of) => say`${sentence(of)} are left on the shelf.`),
      ...ofStock(line, line.putUp, (of) => say`${sentence(of)} were put up.`),
      ...line.lots.flatMap(({ count }) => ofStock(line, count, (of) => say`One lot is ${of}.`)),
    ]),
    ...numbers.dishes.flatMap(({ dish, lines }) =>
      lines.flatMap((line) => {
        const unit = unitIn(line.measure);
        if (unit === null) return [];
        const note = line.measure === unit ? '' : say`Count each ${line.unit.one} as 1 ${unit}.`;
        const of = amountOfFood(exact(line.amount), line.unit, line.food);
        return [{ words: say`${dish} takes ${of}.`, n: line.amount, unit, note }];
      }),
    ),
  ];
  return random.pick(all.filter(({ n }) => n <= 200)) ?? null;
}

const toSmaller = form<Conversion>({
  id: 'to-smaller',
  levels: [1],
  make(numbers, _level, random) {
    const found = anAmount(numbers, random);
    const ladder = random.pick(LADDERS.filter(({ large }) => large === found?.unit));
    if (!found || !ladder || !Number.isInteger(found.n)) return null;
    const { large, small, count } = ladder;
    const answer = amountOf(exact(found.n * count), unitOf(small), 'exact', true);
    return {
      text: [found.words, found.note, say`How many ${unitOf(small).many} is that?`].filter(Boolean).join(' '),
      answer,
      steps: [
        say`1 ${large} is ${count} ${unitOf(small).many}.`,
        say`The new unit is smaller, so there are more of them: multiply.`,
        lastStep(`${found.n} × ${count}`, answer),
      ],
      given: { n: found.n, from: large, to: small, rounding: 'exact' },
    };
  },
  key: converted,
});

const toLarger = form<Conversion>({
  id: 'to-larger',
  levels: [2],
  make(numbers, _level, random) {
    const found = anAmount(numbers, random);
    const ladder = random.pick(LADDERS.filter(({ small }) => small === found?.unit));
    if (!found || !ladder) return null;
    const { large, small, count } = ladder;
    const value = exact(found.n, count);
    if (value.lt(ratio(1, 8)) || value.d > 16n) return null;
    const answer = amountOf(value, unitOf(large), 'exact', true);
    const question = say`How many ${unitOf(large).many} is that?`;
    return {
      text: [found.words, found.note, question, isWhole(value) ? '' : partsAllowed()]
        .filter(Boolean)
        .join(' '),
      answer,
      steps: [
        say`${count} ${unitOf(small).many} make 1 ${large}.`,
        say`The new unit is larger, so there are fewer of them: divide.`,
        lastStep(`${written(exact(found.n))} ÷ ${count}`, answer),
      ],
      given: { n: found.n, from: small, to: large, rounding: 'exact' },
    };
  },
  key: converted,
});

const twoRungs = form<Conversion>({
  id: 'two-rungs',
  levels: [2, 3],
  make(numbers, _level, random) {
    const found = anAmount(numbers, random);
    const first = random.pick(LADDERS.filter(({ large }) => large === found?.unit));
    const second = random.pick(LADDERS.filter(({ large }) => large === first?.small));
    if (!found || !first || !second) return null;
    const between = exact(found.n).mul(first.count);
    const answer = amountOf(between.mul(second.count), unitOf(second.small), 'exact', true);
    return {
      text: [
        found.words,
        found.note,
        say`How many ${unitOf(second.small).many} is that? Go by way of ${unitOf(first.small).many}.`,
      ]
        .filter(Boolean)
        .join(' '),
      answer,
      steps: [
        say`1 ${first.large} is ${first.count} ${unitOf(first.small).many}: ${written(exact(found.n))} × ${first.count} = ${amount(between, unitOf(first.small))}.`,
        say`1 ${second.large} is ${second.count} ${unitOf(second.small).many}.`,
        lastStep(`${written(between)} × ${second.count}`, answer),
      ],
      given: { n: found.n, from: first.large, to: second.small, rounding: 'exact' },
    };
  },
  key: converted,
});

const toMetric = form<Conversion>({
  id: 'to-metric',
  levels: [3],
  make(numbers, _level, random) {
    const found = anAmount(numbers, random);
    if (!found || (found.unit !== 'pound' && found.unit !== 'quart')) return null;
    const [to, per] = found.unit === 'pound' ? (['kilogram', 4536] as const) : (['litre', 9464] as const);
    const factor = ratio(per, 10_000);
    const said = localNumber(factor.toString());
    const value = exact(found.n).mul(factor);
    const answer = amountOf(value, unitOf(to), 'tenth', true);
    const given = { n: found.n, from: found.unit, to, rounding: 'tenth' } as const;
    // The factor is rounded: where that would show in the answer, the question is not asked.
    const key = converted(given);
    if (key.kind !== 'amount' || !rounded(key.value, 'tenth').equals(rounded(value, 'tenth'))) return null;
    const question = say`How many ${unitOf(to).many} is that?`;
    return {
      text: asking(
        [found.words, found.note, say`One ${found.unit} is about ${said} ${unitOf(to).many}.`, question]
          .filter(Boolean)
          .join(' '),
        'tenth',
      ),
      answer,
      steps: [
        say`Each ${found.unit} is about ${said} ${unitOf(to).many}: multiply.`,
        lastStep(`${written(exact(found.n))} × ${said}`, answer),
      ],
      given,
    };
  },
  key: converted,
});

const shares = form<{ n: number; unit: string; cup: number }>({
  id: 'shares',
  levels: [3],
  make(numbers, _level, random) {
    const found = anAmount(numbers, random);
    const ladder = LADDERS.find(({ large, small }) => large === found?.unit && small === 'cup');
    if (!found || !ladder) return null;
    const quarters = random.pick([1, 2, 3])!;
    const share = ratio(quarters, 4);
    const cups = exact(found.n).mul(ladder.count);
    const value = cups.div(share);
    if (!ends(value, 3) && value.lt(1)) return null;
    const answer = amountOf(value, SHARES, 'down');
    return {
      text: [
        found.words,
        found.note,
        say`Let’s say a share is ${amount(share, unitOf('cup'))}. How many whole shares is that?`,
        spoken(ROUNDING_WORDS.down),
      ]
        .filter(Boolean)
        .join(' '),
      answer,
      steps: [
        say`1 ${ladder.large} is ${ladder.count} cups: ${written(exact(found.n))} × ${ladder.count} = ${amount(cups, unitOf('cup'))}.`,
        say`How many shares fit into the cups? Divide by the size of a share.`,
        lastStep(`${written(cups)} ÷ ${numberIn(share, unitOf('cup'))}`, answer),
      ],
      given: { n: found.n, unit: ladder.large, cup: quarters },
    };
  },
  // Tablespoons are whole numbers: 16 in a cup. Shares are filled one by one.
  key({ n, unit, cup }) {
    const spoons = inMeasure(n, unit, 'tablespoon');
    let left = spoons.ok ? Math.round(spoons.value) : 0;
    let filled = 0;
    while (left >= cup * 4) {
      left -= cup * 4;
      filled++;
    }
    return amountOf(exact(filled), SHARES, 'down');
  },
});

export const UNITS_TOPIC: Topic = {
  id: 'units',
  title: phrase('Changing units'),
  goals: [
    phrase('Say an amount of food in another unit.'),
    phrase('Know when to multiply and when to divide.'),
    phrase('Say in words why there are more of a smaller unit.'),
  ],
  levels: {
    1: phrase('From a larger unit to a smaller one, whole numbers.'),
    2: phrase('From a smaller unit to a larger one, with fractions; two steps.'),
    3: phrase('Two steps, shares of part of a cup, and metric units.'),
  },
  standards: ['4.MD.A.1', '5.MD.A.1', '6.RP.A.3d'],
  needs: phrase(
    'Write lots on Shelf in quarts, pints, gallons or pounds (jars and freezer bags count as such).',
  ),
  forms: [toSmaller, toLarger, twoRungs, toMetric, shares],
};
