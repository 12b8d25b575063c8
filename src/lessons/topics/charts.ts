import { phrase, quoted, say } from '../../words/index.js';
import { amountOf, asking, lastStep } from '../answer-text.js';
import type { BookNumbers } from '../book-numbers.js';
import { exact, ratio, sum, written } from '../exact.js';
import type { Random } from '../random.js';
import { type AnswerUnit, type Chart, form, type Level, type Topic } from '../types.js';
import { manyOf, roughly, SQUARES, TIMES } from '../words.js';
import { chartSets } from './chart-sets.js';

/** A chart with the unit of its numbers, in words and as what an answer is in. */
interface Found {
  readonly chart: Chart;
  readonly unit: AnswerUnit;
}

/** More bars than these do not fit with their names. */
const MOST_BARS = 7;

const STEPS = [1, 2, 5, 10, 20, 25, 50, 100, 200, 500, 1000];

/** The coarsest lines by which every bar can be read, on a line or halfway between two; null where there are none. */
const readableStep = (values: readonly number[], most: number): number | null =>
  STEPS.findLast(
    (step) => most / step >= 3 && most / step <= 12 && values.every((n) => Number.isInteger((n * 2) / step)),
  ) ?? null;

/** Lines at a step that gives four to eight of them. */
const stepFor = (most: number): number => STEPS.find((step) => most / step <= 8) ?? 2000;

/** Charts of the book that can be read. */
function charts(numbers: BookNumbers): Found[] {
  return chartSets(numbers).flatMap(({ title, unit, bars }): Found[] => {
    const all = bars.slice(0, MOST_BARS);
    const values = all.map(({ value }) => value);
    if (all.length < 2 || new Set(values).size < 2) return [];
    const most = Math.max(...values);
    // A bar lower than a hair could not be read, and children count in quarters at the finest.
    if (values.some((value) => value < most / 60 || !Number.isInteger(value * 4))) return [];
    const step = readableStep(values, most);
    return [
      {
        chart: { title, unit: manyOf(unit), step: step ?? stepFor(most), numbered: step === null, bars: all },
        unit,
      },
    ];
  });
}

/** A chart whose bars children of the level can read: at the first, only whole steps and halves of them. */
function aChart(numbers: BookNumbers, level: Level, random: Random): Found | null {
  const fit = charts(numbers).filter(
    ({ chart }) => level > 1 || (!chart.numbered && chart.bars.every(({ value }) => Number.isInteger(value))),
  );
  return random.pick(fit) ?? null;
}

const readBar = form<{ bars: Chart['bars']; label: string; unit: AnswerUnit }>({
  id: 'read-a-bar',
  levels: [1],
  make(numbers, level, random) {
    const found = aChart(numbers, level, random);
    const bar = random.pick(found?.chart.bars ?? []);
    if (!found || !bar || found.chart.numbered) return null;
    const answer = amountOf(exact(bar.value), found.unit);
    return {
      text: say`Read the chart. How many ${manyOf(found.unit)} does it show for “${bar.label}”?`,
      answer,
      chart: found.chart,
      steps: [
        say`The lines stand for ${found.chart.step} each.`,
        say`Go from the top of the bar “${bar.label}” to the side, and read the number.`,
        lastStep(quoted(bar.label), answer),
      ],
      given: { bars: found.chart.bars, label: bar.label, unit: found.unit },
    };
  },
  key: ({ bars, label, unit }) => amountOf(exact(bars.find((bar) => bar.label === label)?.value ?? 0), unit),
});

interface Two {
  readonly high: number;
  readonly low: number;
  readonly unit: AnswerUnit;
}

const howManyMore = form<Two>({
  id: 'how-many-more',
  levels: [1, 2],
  make(numbers, level, random) {
    const found = aChart(numbers, level, random);
    const [a, b] = random.shuffled(found?.chart.bars ?? []);
    if (!found || !a || !b || a.value === b.value) return null;
    const [high, low] = a.value > b.value ? [a, b] : [b, a];
    const answer = amountOf(exact(high.value).sub(exact(low.value)), found.unit);
    return {
      text: say`Read the chart. How many more ${manyOf(found.unit)} does “${high.label}” show than “${low.label}”?`,
      answer,
      chart: found.chart,
      steps: [
        say`“${high.label}” shows ${written(exact(high.value))}.`,
        say`“${low.label}” shows ${written(exact(low.value))}.`,
        lastStep(`${written(exact(high.value))} − ${written(exact(low.value))}`, answer),
      ],
      given: { high: high.value, low: low.value, unit: found.unit },
    };
  },
  // Counted up from the lower bar, in quarters.
  key({ high, low, unit }) {
    let quarters = 0;
    for (let at = Math.round(low * 4); at < Math.round(high * 4); at++) quarters++;
    return amountOf(ratio(quarters, 4), unit);
  },
});

const inAll = form<{ values: readonly number[]; unit: AnswerUnit }>({
  id: 'in-all',
  levels: [2],
  make(numbers, level, random) {
    const found = aChart(numbers, level, random);
    if (!found) return null;
    const some = random.shuffled(found.chart.bars).slice(0, random.whole(2, 4));
    const total = sum(some.map(({ value }) => exact(value)));
    const answer = amountOf(total, found.unit);
    return {
      text: say`Read the chart. How many ${manyOf(found.unit)} do these bars show in all: ${some.map(({ label }) => label).join(', ')}?`,
      answer,
      chart: found.chart,
      steps: [
        ...some.map(({ label, value }) => say`“${label}” shows ${written(exact(value))}.`),
        lastStep(some.map(({ value }) => written(exact(value))).join(' + '), answer),
      ],
      given: { values: some.map(({ value }) => value), unit: found.unit },
    };
  },
  key: ({ values, unit }) => amountOf(ratio(Math.round(values.reduce((a, b) => a + b * 4, 0)), 4), unit),
});

const timesAsMany = form<{ high: number; low: number }>({
  id: 'times-as-many',
  levels: [3],
  make(numbers, level, random) {
    const found = aChart(numbers, level, random);
    const [a, b] = random.shuffled(found?.chart.bars ?? []);
    if (!found || !a || !b || a.value === b.value) return null;
    const [high, low] = a.value > b.value ? [a, b] : [b, a];
    const answer = amountOf(exact(high.value).div(exact(low.value)), TIMES, 'tenth');
    return {
      text: asking(
        say`Read the chart. How many times as high as the bar “${low.label}” is the bar “${high.label}”?`,
        'tenth',
      ),
      answer,
      chart: found.chart,
      steps: [
        say`“${high.label}” shows ${written(exact(high.value))}, “${low.label}” ${written(exact(low.value))}.`,
        say`How many times does the lower one go into the higher one? Divide.`,
        lastStep(`${written(exact(high.value))} ÷ ${written(exact(low.value))}`, answer),
      ],
      given: { high: high.value, low: low.value },
    };
  },
  // Laid end to end; what is left over is a part of the lower bar.
  key({ high, low }) {
    const [h, l] = [Math.round(high * 4), Math.round(low * 4)];
    let whole = 0;
    let rest = h;
    for (; rest >= l; rest -= l) whole++;
    return amountOf(exact(whole).add(ratio(rest, l)), TIMES, 'tenth');
  },
});

const chooseScale = form<{ most: number; squares: number; unit: string }>({
  id: 'choose-a-scale',
  levels: [2, 3],
  make(numbers, level, random) {
    const found = aChart(numbers, level, random);
    if (!found) return null;
    const squares = random.pick([8, 10, 12, 15, 20])!;
    const most = Math.max(...found.chart.bars.map(({ value }) => value));
    const step = STEPS.find((each) => most <= each * squares);
    if (step === undefined || step === 1 || step > 100) return null;
    const unit = { one: found.unit.one, many: found.unit.many, per: SQUARES.one };
    const answer = amountOf(exact(step), unit);
    return {
      text: say`This chart is to be drawn on squared paper, ${squares} squares high. A square may stand for 1, 2, 5, 10, 20, 25, 50 or 100. Which is the smallest of these that leaves room for every bar?`,
      answer,
      chart: found.chart,
      steps: [
        say`The highest bar shows ${written(exact(most))}.`,
        say`Shared over ${squares} squares: ${written(exact(most))} ÷ ${squares} ${roughly(exact(most).div(squares))}`,
        lastStep(say`The next of the numbers that is not smaller`, answer),
      ],
      given: { most, squares, unit: found.unit.many },
    };
  },
  // Tried from the largest down, as long as the bar still fits.
  key({ most, squares, unit }) {
    let best = 100;
    for (const step of [100, 50, 25, 20, 10, 5, 2, 1]) if (step * squares >= most) best = step;
    return amountOf(exact(best), { one: unit, many: unit, per: SQUARES.one });
  },
});

const barHeight = form<{ value: number; step: number }>({
  id: 'height-of-a-bar',
  levels: [3],
  make(numbers, level, random) {
    const found = aChart(numbers, level, random);
    const bar = random.pick(found?.chart.bars ?? []);
    if (!found || !bar) return null;
    const step = random.pick(
      [2, 4, 5, 8, 10, 20].filter((each) => bar.value / each <= 25 && bar.value >= each),
    );
    if (step === undefined) return null;
    const answer = amountOf(exact(bar.value).div(step), SQUARES, 'tenth');
    return {
      text: asking(
        say`This chart is to be drawn on squared paper. Let’s say a square stands for ${step} ${manyOf(found.unit)}. How many squares high is the bar “${bar.label}”?`,
        'tenth',
      ),
      answer,
      chart: found.chart,
      steps: [
        say`The bar shows ${written(exact(bar.value))}.`,
        say`Each square is ${step} of them: divide.`,
        lastStep(`${written(exact(bar.value))} ÷ ${step}`, answer),
      ],
      given: { value: bar.value, step },
    };
  },
  key({ value, step }) {
    const tenths = Math.floor((Math.round(value * 4) * 10 * 2 + step * 4) / (step * 4 * 2));
    return amountOf(ratio(tenths, 10), SQUARES, 'tenth');
  },
});

export const CHARTS_TOPIC: Topic = {
  id: 'charts',
  title: phrase('Reading and making charts'),
  goals: [
    phrase('Read the height of a bar against its scale.'),
    phrase('Compare and add what bars show.'),
    phrase('Choose a scale for a chart of one’s own.'),
  ],
  levels: {
    1: phrase('Reading one bar, and how many more.'),
    2: phrase('Adding bars up; choosing a scale.'),
    3: phrase('How many times as high; parts of a square.'),
  },
  standards: ['3.MD.B.3', '4.OA.A.2'],
  needs: phrase(
    'Write what came in of two crops on Harvest, or plants of two crops on Beds, or draws in two months.',
  ),
  forms: [readBar, howManyMore, inAll, timesAsMany, chooseScale, barHeight],
};
