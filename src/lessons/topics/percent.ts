import { seedsAt } from '../../planning/growing.js';
import { phrase, say } from '../../words/index.js';
import { amountOf, asking, lastStep, percentText } from '../answer-text.js';
import { exact, isWhole, type Rounding, ratio, written } from '../exact.js';
import { type Answer, type AnswerUnit, form, type Topic } from '../types.js';
import {
  amount,
  amountOfFood,
  cropMany,
  named,
  SEEDS,
  sentence,
  unitForFood,
  unitOf,
  unitOfFood,
} from '../words.js';

const percentOf = (value: ReturnType<typeof exact>, rounding: Rounding): Answer => ({
  kind: 'percent',
  value,
  rounding,
});

/** So many in each hundred, counted out in ten-thousandths by long division. */
const longDivision = ({
  part,
  whole,
  rounding,
}: {
  part: number;
  whole: number;
  rounding: Rounding;
}): Answer => percentOf(ratio(Math.round(part * 100), Math.round(whole * 100)), rounding);

const percentRounding = (value: ReturnType<typeof exact>): Rounding =>
  isWhole(value.mul(100)) ? 'exact' : 'whole';

const cameUp = form<{ part: number; whole: number; rounding: Rounding }>({
  id: 'came-up',
  levels: [1, 2],
  make({ beds }, level, random) {
    const bed = random.pick(beds.filter(({ isSown }) => isSown));
    if (!bed) return null;
    const whole = level === 1 ? random.pick([10, 20, 25, 50])! : random.pick([12, 15, 16, 30, 35, 40, 60])!;
    const part = random.whole(Math.ceil(whole / 2), whole - 1);
    const value = ratio(part, whole);
    const rounding = percentRounding(value);
    const answer = percentOf(value, rounding);
    return {
      text: asking(
        say`Let’s say ${whole} ${named(bed.crop)} seeds are laid on damp paper, and ${part} of them sprout. What percent sprouted?`,
        rounding,
      ),
      answer,
      steps: [
        say`The part is ${part}, the whole is ${whole}.`,
        say`A percent is so many in a hundred: divide, then multiply by 100.`,
        lastStep(`${part} ÷ ${whole} × 100`, answer),
      ],
      given: { part, whole, rounding },
    };
  },
  key: longDivision,
});

const seedsToSow = form<{ plants: number; percent: number }>({
  id: 'seeds-to-sow',
  levels: [2],
  make({ beds }, _level, random) {
    const bed = random.pick(beds.filter(({ isSown, plants }) => isSown && plants <= 2000));
    if (!bed) return null;
    const percent = random.pick([50, 60, 70, 75, 80, 85, 90])!;
    const answer = amountOf(exact(bed.plants).mul(ratio(100, percent)), SEEDS, 'up');
    return {
      text: asking(
        say`The plan has ${bed.plants} ${named(bed.crop)} plants. Let’s say ${percent} % of the seeds come up. How many seeds must be sown to get them all?`,
        'up',
      ),
      answer,
      steps: [
        say`${percent} % of the seeds are to be ${bed.plants} plants.`,
        say`1 % is ${bed.plants} ÷ ${percent}; all of them are 100 times that.`,
        lastStep(`${bed.plants} ÷ ${percent} × 100`, answer),
      ],
      given: { plants: bed.plants, percent },
    };
  },
  // As the planner of seeds reckons.
  key: ({ plants, percent }) => amountOf(exact(seedsAt(plants, percent) ?? 0), SEEDS, 'up'),
});

const withCushion = form<{ count: number; cushion: number; unit: AnswerUnit }>({
  id: 'with-a-cushion',
  levels: [1, 2],
  make({ stock, cushion }, level, random) {
    const line = random.pick(stock.filter(({ putUp }) => Number.isInteger(putUp) && putUp >= 4));
    if (!line) return null;
    const count = line.putUp;
    const isOwn = level === 2 || [5, 10, 20, 25, 50].includes(cushion);
    const percent = isOwn && cushion > 0 && Number.isInteger(cushion) ? cushion : 10;
    const there = sentence(amountOfFood(exact(count), line.unit, line.food));
    const of = unitOfFood(line.unit, line.food);
    const unit = unitForFood(line.unit, line.food);
    const more = ratio(count * percent, 100);
    if (level === 1 && !isWhole(more)) return null;
    const answer = amountOf(more.add(count), unit, isWhole(more) ? 'exact' : 'up');
    return {
      text: asking(
        percent === cushion
          ? say`${there} were put up. Next time it is to be ${percent} % more (the cushion of this book). How many ${of} is that?`
          : say`${there} were put up. Next time it is to be ${percent} % more (let’s say). How many ${of} is that?`,
        answer.kind === 'amount' ? answer.rounding : 'exact',
      ),
      answer,
      steps: [
        say`${percent} % of ${count} is ${count} × ${percent} ÷ 100 = ${written(more)}.`,
        say`Add that to what there was.`,
        lastStep(`${count} + ${written(more)}`, answer),
      ],
      given: { count, cushion: percent, unit },
    };
  },
  // In one step, by a factor in hundredths.
  key({ count, cushion, unit }) {
    const hundredths = count * (100 + cushion);
    return amountOf(ratio(hundredths, 100), unit, hundredths % 100 === 0 ? 'exact' : 'up');
  },
});

const eaten = form<{ part: number; whole: number; rounding: Rounding }>({
  id: 'eaten',
  levels: [2],
  make({ stock }, _level, random) {
    const line = random.pick(stock.filter(({ putUp, left }) => left > 0 && left < putUp && putUp >= 4));
    if (!line) return null;
    const part = exact(line.putUp).sub(exact(line.left));
    const value = part.div(exact(line.putUp));
    const rounding = percentRounding(value);
    const answer = percentOf(value, rounding);
    return {
      text: asking(
        say`${sentence(amountOfFood(exact(line.putUp), line.unit, line.food))} were put up, and ${written(exact(line.left))} of them are left. What percent has been taken?`,
        rounding,
      ),
      answer,
      steps: [
        say`Taken: ${written(exact(line.putUp))} − ${written(exact(line.left))} = ${written(part)}.`,
        say`Divide the part by the whole, then multiply by 100.`,
        lastStep(`${written(part)} ÷ ${written(exact(line.putUp))} × 100`, answer),
      ],
      given: { part: line.putUp - line.left, whole: line.putUp, rounding },
    };
  },
  key: longDivision,
});

const failedSeals = form<{ part: number; whole: number; rounding: Rounding }>({
  id: 'failed-seals',
  levels: [2],
  make({ batches }, _level, random) {
    const batch = random.pick(
      batches.filter(({ canned, failed, filled }) => canned && failed > 0 && filled > 1),
    );
    if (!batch) return null;
    const value = ratio(batch.failed, batch.filled);
    const rounding = isWhole(value.mul(100)) ? 'exact' : 'tenth';
    const answer = percentOf(value, rounding);
    return {
      text: asking(
        say`A batch filled ${amountOfFood(exact(batch.filled), batch.unit, batch.food)}, and ${batch.failed} did not seal. What percent did not seal?`,
        rounding,
      ),
      answer,
      steps: [
        say`The part is ${batch.failed}, the whole is ${batch.filled}.`,
        say`Divide, then multiply by 100.`,
        lastStep(`${batch.failed} ÷ ${batch.filled} × 100`, answer),
      ],
      given: { part: batch.failed, whole: batch.filled, rounding },
      canning: true,
    };
  },
  key: longDivision,
});

const change = form<{ before: number; after: number }>({
  id: 'more-than-before',
  levels: [3],
  make({ seasons }, _level, random) {
    const season = random.pick(seasons.filter(({ before, after }) => before.pounds !== after.pounds));
    if (!season) return null;
    const { before, after, crop } = season;
    const more = after.pounds > before.pounds;
    const apart = exact(after.pounds).sub(exact(before.pounds)).abs();
    const value = apart.div(exact(before.pounds));
    const answer = percentOf(value, percentRounding(value));
    const pounds = (n: number) => amount(exact(n), unitOf('pound'));
    return {
      text: asking(
        more
          ? say`${before.year} gave ${pounds(before.pounds)} of ${cropMany(crop)}, ${after.year} gave ${pounds(after.pounds)}. By what percent was ${after.year} more than ${before.year}?`
          : say`${before.year} gave ${pounds(before.pounds)} of ${cropMany(crop)}, ${after.year} gave ${pounds(after.pounds)}. By what percent was ${after.year} less than ${before.year}?`,
        answer.kind === 'percent' ? answer.rounding : 'exact',
      ),
      answer,
      steps: [
        say`The difference is ${written(apart)} pounds.`,
        say`It is compared with ${before.year}: divide by ${written(exact(before.pounds))}.`,
        lastStep(`${written(apart)} ÷ ${written(exact(before.pounds))} × 100`, answer),
      ],
      given: { before: before.pounds, after: after.pounds },
    };
  },
  // The later season as a percent of the earlier one, less a hundred.
  key({ before, after }) {
    const [b, a] = [Math.round(before * 100), Math.round(after * 100)];
    const value = ratio(a, b).sub(1).abs();
    return percentOf(value, percentRounding(value));
  },
});

const wholeFromPart = form<{ part: number; percent: number }>({
  id: 'the-whole',
  levels: [3],
  make({ beds }, _level, random) {
    const bed = random.pick(beds.filter(({ isSown }) => isSown));
    if (!bed) return null;
    // Built from the answer, so that it comes out even.
    const percent = random.pick([20, 25, 40, 50, 60, 75, 80, 90])!;
    const seeds = random.whole(2, 12) * 20;
    const part = (seeds * percent) / 100;
    const answer = amountOf(exact(seeds), SEEDS);
    return {
      text: say`Let’s say ${part} ${named(bed.crop)} plants came up, and that was ${percent} % of the seeds. How many seeds had been sown?`,
      answer,
      steps: [
        say`${percent} % is ${part}.`,
        say`1 % is ${part} ÷ ${percent}; the whole is 100 %.`,
        lastStep(`${part} ÷ ${percent} × 100`, answer),
      ],
      given: { part, percent },
    };
  },
  // The first number of seeds of which that percent is that many.
  key({ part, percent }) {
    let seeds = part;
    while (seeds * percent < part * 100) seeds++;
    return amountOf(exact(seeds), SEEDS);
  },
});

const percentLeft = form<{ percent: number }>({
  id: 'the-rest',
  levels: [1],
  make({ beds }, _level, random) {
    const bed = random.pick(beds.filter(({ isSown }) => isSown));
    if (!bed) return null;
    const percent = random.whole(11, 19) * 5;
    if (percent === 100) return null;
    const value = ratio(100 - percent, 100);
    const answer = percentOf(value, 'exact');
    return {
      text: say`Let’s say a packet of ${named(bed.crop)} promises that ${percentText(ratio(percent, 100))} of the seeds come up. What percent does not?`,
      answer,
      steps: [
        say`All of the seeds are 100 %.`,
        say`Take away those that come up.`,
        lastStep(`100 − ${percent}`, answer),
      ],
      given: { percent },
    };
  },
  key({ percent }) {
    let rest = 0;
    for (let at = percent; at < 100; at++) rest++;
    return percentOf(ratio(rest, 100), 'exact');
  },
});

export const PERCENT_TOPIC: Topic = {
  id: 'percent',
  title: phrase('Percent'),
  goals: [
    phrase('Say a part of a whole as a percent.'),
    phrase('Find a percent of a number, and the whole from a part.'),
    phrase('Compare this year with last year.'),
  ],
  levels: {
    1: phrase('Wholes of 10, 20, 25, 50; percents that come out even.'),
    2: phrase('Any whole; rounding; how many seeds to sow.'),
    3: phrase('The whole from a part; more or less than the year before.'),
  },
  standards: ['6.RP.A.3c', '7.RP.A.3'],
  needs: phrase('Write sown crops on Beds, lots on Shelf, and two seasons of a crop on Facts or Harvest.'),
  forms: [cameUp, percentLeft, seedsToSow, withCushion, eaten, failedSeals, change, wholeFromPart],
};
