import { phrase, say } from '../../words/index.js';
import { amountOf, asking, lastStep, partsAllowed } from '../answer-text.js';
import type { BookNumbers, BushelNumbers } from '../book-numbers.js';
import { ends, exact, isWhole, mixed, ratio, written } from '../exact.js';
import type { Random } from '../random.js';
import { form, type Topic } from '../types.js';
import { amount, BASKETS, BUSHELS, cropMany, roughly, unitOf } from '../words.js';

const POUNDS = unitOf('pound');

const weighs = ({ crop, pounds, from }: BushelNumbers): string =>
  from === 'own'
    ? say`A bushel of ${cropMany(crop)}, by our own weighing, weighs ${amount(exact(pounds), POUNDS)}.`
    : say`A bushel of ${cropMany(crop)}, by the published figure, weighs ${amount(exact(pounds), POUNDS)}.`;

/** A crop with a bushel weight, and pounds of it that came in. */
function aHarvest({ bushels, harvests }: BookNumbers, random: Random) {
  const came = random.pick(harvests.filter(({ crop }) => bushels.some((each) => each.crop === crop)));
  const bushel = bushels.find(({ crop }) => crop === came?.crop);
  return came && bushel ? { bushel, pounds: came.pounds } : null;
}

const wholeBushels = form<{ pounds: number; count: number }>({
  id: 'whole-bushels',
  levels: [1],
  make({ bushels }, _level, random) {
    const bushel = random.pick(bushels);
    if (!bushel) return null;
    const count = random.whole(2, 12);
    const answer = amountOf(exact(bushel.pounds).mul(count), POUNDS);
    return {
      text: say`${weighs(bushel)} How many pounds are ${count} bushels?`,
      answer,
      steps: [
        say`Each bushel is ${amount(exact(bushel.pounds), POUNDS)}.`,
        say`There are ${count} of them: multiply.`,
        lastStep(`${count} × ${written(exact(bushel.pounds))}`, answer),
      ],
      given: { pounds: bushel.pounds, count },
    };
  },
  key({ pounds, count }) {
    let all = 0;
    for (let at = 0; at < count; at++) all += pounds;
    return amountOf(exact(all), POUNDS);
  },
});

const PARTS = [
  [1, 2],
  [1, 4],
  [3, 4],
  [1, 3],
  [2, 3],
  [1, 8],
  [3, 8],
  [5, 8],
] as const;

const partOf = form<{ pounds: number; n: number; d: number }>({
  id: 'part-of-a-bushel',
  levels: [1, 2],
  make({ bushels }, level, random) {
    const bushel = random.pick(bushels);
    const part = random.pick(level === 1 ? PARTS.slice(0, 3) : PARTS);
    if (!bushel || !part) return null;
    const [n, d] = part;
    const whole = level === 1 ? 0 : random.whole(0, 4);
    const times = ratio(n, d).add(whole);
    const value = exact(bushel.pounds).mul(times);
    const answer = amountOf(value, POUNDS);
    return {
      text: [
        say`${weighs(bushel)} How many pounds are ${amount(times, BUSHELS)}?`,
        ends(value, 2) ? '' : partsAllowed(),
      ]
        .filter(Boolean)
        .join(' '),
      answer,
      steps: [
        ...(whole > 0 ? [say`${mixed(times)} is ${Number(times.n)}/${Number(times.d)}.`] : []),
        say`1/${d} of a bushel is ${written(exact(bushel.pounds))} ÷ ${d} = ${written(exact(bushel.pounds).div(d))} pounds.`,
        lastStep(`${Number(times.n)} × ${written(exact(bushel.pounds).div(d))}`, answer),
      ],
      given: { pounds: bushel.pounds, n: whole * d + n, d },
    };
  },
  // The whole product first, the division last.
  key: ({ pounds, n, d }) => amountOf(ratio(Math.round(pounds * 100) * n, 100 * d), POUNDS),
});

const howManyBushels = form<{ pounds: number; bushel: number }>({
  id: 'how-many-bushels',
  levels: [2],
  make(numbers, _level, random) {
    const found = aHarvest(numbers, random);
    if (!found) return null;
    const { bushel, pounds } = found;
    const value = exact(pounds).div(exact(bushel.pounds));
    const answer = amountOf(value, BUSHELS);
    return {
      text: [
        say`${amount(exact(pounds), POUNDS)} of ${cropMany(bushel.crop)} came in. ${weighs(bushel)} How many bushels came in?`,
        isWhole(value) ? '' : partsAllowed(),
      ]
        .filter(Boolean)
        .join(' '),
      answer,
      steps: [
        say`How many times does ${written(exact(bushel.pounds))} go into ${written(exact(pounds))}? Divide.`,
        say`Write it as a fraction, and make it as simple as it can be.`,
        lastStep(`${written(exact(pounds))} ÷ ${written(exact(bushel.pounds))}`, answer),
      ],
      given: { pounds, bushel: bushel.pounds },
    };
  },
  // Whole bushels are taken away first; the rest is a part of one.
  key({ pounds, bushel }) {
    let whole = 0;
    let rest = Math.round(pounds * 100);
    const one = Math.round(bushel * 100);
    for (; rest >= one; rest -= one) whole++;
    return amountOf(exact(whole).add(ratio(rest, one)), BUSHELS);
  },
});

const baskets = form<{ pounds: number; bushel: number; eighths: number }>({
  id: 'baskets',
  levels: [3],
  make(numbers, _level, random) {
    const found = aHarvest(numbers, random);
    const eighths = random.pick([1, 2, 3, 4, 5, 6])!;
    if (!found) return null;
    const { bushel, pounds } = found;
    const part = ratio(eighths, 8);
    const holds = exact(bushel.pounds).mul(part);
    const value = exact(pounds).div(holds);
    if (value.lt(1)) return null;
    const answer = amountOf(value, BASKETS, 'up');
    return {
      text: asking(
        say`${amount(exact(pounds), POUNDS)} of ${cropMany(bushel.crop)} came in. ${weighs(bushel)} Let’s say a basket holds ${mixed(part)} of a bushel. How many baskets are needed to carry them all?`,
        'up',
      ),
      answer,
      steps: [
        say`A basket holds ${mixed(part)} × ${written(exact(bushel.pounds))} = ${written(holds)} pounds.`,
        say`How many baskets? Divide: ${written(exact(pounds))} ÷ ${written(holds)} ${roughly(value)}`,
        lastStep(say`The last basket may not be full, but it is needed: rounded up`, {
          ...answer,
          kind: 'amount',
          value: value.ceil(),
          unit: BASKETS,
          rounding: 'exact',
        }),
      ],
      given: { pounds, bushel: bushel.pounds, eighths },
    };
  },
  // Filled one after another until nothing is left to carry.
  key({ pounds, bushel, eighths }) {
    let count = 0;
    const holds = Math.round(bushel * 100) * eighths;
    for (let left = Math.round(pounds * 100) * 8; left > 0; left -= holds) count++;
    return amountOf(exact(count), BASKETS, 'up');
  },
});

const shareOut = form<{ n: number; d: number; people: number }>({
  id: 'share-out',
  levels: [3],
  make({ bushels }, _level, random) {
    const bushel = random.pick(bushels);
    const [n, d] = random.pick(PARTS.slice(1))!;
    const people = random.whole(2, 6);
    if (!bushel) return null;
    const whole = random.whole(1, 4);
    const all = ratio(n, d).add(whole);
    const value = all.div(people);
    const answer = amountOf(value, BUSHELS);
    return {
      text: say`Let’s say ${people} families share ${amount(all, BUSHELS)} of ${cropMany(bushel.crop)} equally. How much of a bushel does each take home? ${partsAllowed()}`,
      answer,
      steps: [
        say`${mixed(all)} is ${Number(all.n)}/${Number(all.d)}.`,
        say`To divide by ${people} is to multiply by 1/${people}.`,
        lastStep(`${Number(all.n)}/${Number(all.d)} × 1/${people}`, answer),
      ],
      given: { n: whole * d + n, d, people },
    };
  },
  key: ({ n, d, people }) => amountOf(ratio(n, d * people), BUSHELS),
});

export const BUSHEL_TOPIC: Topic = {
  id: 'bushel',
  title: phrase('Fractions of a bushel'),
  goals: [
    phrase('Find a part of a bushel, and how many bushels an amount is.'),
    phrase('Multiply and divide with fractions and mixed numbers.'),
    phrase('Round up where a part of a basket still takes a basket.'),
  ],
  levels: {
    1: phrase('Whole bushels, halves and quarters.'),
    2: phrase('Mixed numbers, thirds and eighths; how many bushels an amount is.'),
    3: phrase('Dividing by a fraction, and sharing out.'),
  },
  standards: ['4.NF.B.4', '5.NF.B.6', '6.NS.A.1'],
  needs: phrase('Write plantings on Beds, and what came in on Harvest, of crops that have a bushel weight.'),
  forms: [wholeBushels, partOf, howManyBushels, baskets, shareOut],
};
