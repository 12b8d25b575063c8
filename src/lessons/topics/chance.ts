import { phrase, say } from '../../words/index.js';
import { amountOf, lastStep, percentText } from '../answer-text.js';
import type { BookNumbers } from '../book-numbers.js';
import { dayOfYear } from '../day-text.js';
import { type Exact, exact, mixed, ratio } from '../exact.js';
import { form, type Topic } from '../types.js';
import { named, YEARS } from '../words.js';
import { chanceOf } from './chance-answer.js';
import { likelier, withoutLooking } from './chance-drawing.js';

interface Frost {
  readonly date: string;
  /** Percent. */
  readonly chance: number;
  readonly season: 'spring' | 'fall';
}

/** The household's frost dates that say for what chance they stand. */
function frosts({ lastFrost, firstFrost, lastFrostChance, firstFrostChance }: BookNumbers): Frost[] {
  const found: Frost[] = [];
  if (lastFrost && lastFrostChance !== null)
    found.push({
      date: dayOfYear(lastFrost),
      chance: lastFrostChance,
      season: 'spring',
    });
  if (firstFrost && firstFrostChance !== null)
    found.push({
      date: dayOfYear(firstFrost),
      chance: firstFrostChance,
      season: 'fall',
    });
  return found;
}

const says = ({ date, chance, season }: Frost): string =>
  season === 'spring'
    ? say`The frost date of ${date} stands for a chance of ${chance} % that frost comes after it, in spring.`
    : say`The frost date of ${date} stands for a chance of ${chance} % that frost comes before it, in fall.`;

/** Of a hundred years like these, how many are so: each is looked at. */
const ofHundred = (is: (year: number) => boolean): Exact => {
  let years = 0;
  for (let year = 0; year < 100; year++) if (is(year)) years++;
  return ratio(years, 100);
};

const noFrost = form<{ chance: number }>({
  id: 'no-frost',
  levels: [1],
  make(numbers, _level, random) {
    const frost = random.pick(frosts(numbers).filter(({ chance }) => Number.isInteger(chance)));
    if (!frost) return null;
    const answer = chanceOf(ratio(100 - frost.chance, 100));
    return {
      text:
        frost.season === 'spring'
          ? say`${says(frost)} What is the chance that no frost comes after it, in spring?`
          : say`${says(frost)} What is the chance that no frost comes before it, in fall?`,
      answer,
      steps: [
        say`Either frost comes or it does not: the two chances add up to 1 (100 %).`,
        lastStep(say`100 % − ${frost.chance} %, as a part of 1`, answer),
      ],
      given: { chance: frost.chance },
    };
  },
  key: ({ chance }) => chanceOf(ofHundred((year) => year >= chance)),
});

const howManyYears = form<{ chance: number; years: number }>({
  id: 'how-many-years',
  levels: [2],
  make(numbers, _level, random) {
    const frost = random.pick(frosts(numbers));
    const years = random.pick([10, 20, 30, 40, 50, 60, 80, 100])!;
    if (!frost || !Number.isInteger((frost.chance * years) / 100)) return null;
    const answer = amountOf(exact((frost.chance * years) / 100), YEARS);
    return {
      text: say`${says(frost)} In about how many of ${years} years would you look for that?`,
      answer,
      steps: [
        say`${frost.chance} % of the years: ${frost.chance} in every hundred.`,
        lastStep(`${years} × ${frost.chance} ÷ 100`, answer),
        say`So about ${(frost.chance * years) / 100} of the ${years} years: a chance promises nothing for one year.`,
      ],
      given: { chance: frost.chance, years },
    };
  },
  key({ chance, years }) {
    let hundredths = 0;
    for (let year = 0; year < years; year++) hundredths += chance;
    return amountOf(ratio(hundredths, 100), YEARS);
  },
});

const twoYears = form<{ chance: number; both: boolean }>({
  id: 'two-years',
  levels: [3],
  make(numbers, _level, random) {
    const frost = random.pick(frosts(numbers).filter(({ chance }) => Number.isInteger(chance)));
    if (!frost) return null;
    const both = random.whole(0, 1) === 1;
    const part = both ? frost.chance : 100 - frost.chance;
    const answer = chanceOf(ratio(part, 100).mul(ratio(part, 100)));
    return {
      text: both
        ? say`${says(frost)} Let’s say one year tells nothing about the next. What is the chance that it comes two years running?`
        : say`${says(frost)} Let’s say one year tells nothing about the next. What is the chance that it stays away two years running?`,
      answer,
      steps: [
        say`In one year the chance is ${percentText(ratio(part, 100))}.`,
        say`Of those years, the same part again: multiply.`,
        lastStep(`${mixed(ratio(part, 100))} × ${mixed(ratio(part, 100))}`, answer),
      ],
      given: { chance: frost.chance, both },
    };
  },
  // A hundred years beside a hundred years: every pair is looked at.
  key({ chance, both }) {
    let pairs = 0;
    for (let a = 0; a < 100; a++)
      for (let b = 0; b < 100; b++) if (a < chance === both && b < chance === both) pairs++;
    return chanceOf(ratio(pairs, 10_000));
  },
});

const springAndFall = form<{ spring: number; fall: number }>({
  id: 'spring-and-fall',
  levels: [3],
  make(numbers, _level, _random) {
    const [spring, fall] = frosts(numbers);
    if (!spring || !fall || !Number.isInteger(spring.chance) || !Number.isInteger(fall.chance)) return null;
    const [a, b] = [ratio(100 - spring.chance, 100), ratio(100 - fall.chance, 100)];
    const answer = chanceOf(a.mul(b));
    return {
      text: say`The chance of frost after the spring date (${spring.date}) is ${spring.chance} %, that of frost before the fall date (${fall.date}) is ${fall.chance} %. Let’s say the one tells nothing about the other. What is the chance that the time between is free of frost?`,
      answer,
      steps: [
        say`No frost after the spring date: ${percentText(a)}. No frost before the fall date: ${percentText(b)}.`,
        say`Both are to happen: multiply.`,
        lastStep(`${mixed(a)} × ${mixed(b)}`, answer),
      ],
      given: { spring: spring.chance, fall: fall.chance },
    };
  },
  key({ spring, fall }) {
    let free = 0;
    for (let a = 0; a < 100; a++) for (let b = 0; b < 100; b++) if (a >= spring && b >= fall) free++;
    return chanceOf(ratio(free, 10_000));
  },
});

const oneOfTwoSeeds = form<{ percent: number; seeds: number }>({
  id: 'one-of-the-seeds',
  levels: [3],
  make({ beds }, _level, random) {
    const bed = random.pick(beds.filter(({ isSown }) => isSown));
    if (!bed) return null;
    const percent = random.pick([50, 60, 70, 75, 80, 90])!;
    const seeds = random.whole(2, 3);
    const none = ratio(100 - percent, 100).pow(seeds)!;
    const product = Array(seeds)
      .fill(mixed(ratio(100 - percent, 100)))
      .join(' × ');
    const answer = chanceOf(exact(1).sub(none));
    return {
      text: say`Let’s say each ${named(bed.crop)} seed comes up with a chance of ${percent} %, and ${seeds} are laid in each hole. What is the chance that at least one of them comes up?`,
      answer,
      steps: [
        say`A seed stays away with a chance of ${percentText(ratio(100 - percent, 100))}.`,
        seeds === 2
          ? say`Both stay away: ${product} = ${mixed(none)}.`
          : say`All three stay away: ${product} = ${mixed(none)}.`,
        lastStep(`1 − ${mixed(none)}`, answer),
      ],
      given: { percent, seeds },
    };
  },
  // Twentieths: every way in which the seeds can fall out is counted.
  key({ percent, seeds }) {
    const up = percent / 5;
    let ways = 0;
    let all = 0;
    for (let a = 0; a < 20; a++)
      for (let b = 0; b < 20; b++)
        for (let c = 0; c < (seeds === 3 ? 20 : 1); c++) {
          all++;
          if (a < up || b < up || (seeds === 3 && c < up)) ways++;
        }
    return chanceOf(ratio(ways, all));
  },
});

const seedStaysAway = form<{ percent: number }>({
  id: 'seed-stays-away',
  levels: [1],
  make({ beds }, _level, random) {
    const bed = random.pick(beds.filter(({ isSown }) => isSown));
    if (!bed) return null;
    const percent = random.pick([50, 60, 70, 75, 80, 90])!;
    const answer = chanceOf(ratio(100 - percent, 100));
    return {
      text: say`Let’s say each ${named(bed.crop)} seed comes up with a chance of ${percent} %. What is the chance that a seed does not come up?`,
      answer,
      steps: [
        say`A seed comes up or it does not: the two chances add up to 1 (100 %).`,
        lastStep(say`100 % − ${percent} %, as a part of 1`, answer),
      ],
      given: { percent },
    };
  },
  key: ({ percent }) => chanceOf(ofHundred((seed) => seed >= percent)),
});

export const CHANCE_TOPIC: Topic = {
  id: 'chance',
  title: phrase('Chance'),
  goals: [
    phrase('Say a chance as a fraction or a percent.'),
    phrase('Say what a frost date promises and what it does not.'),
    phrase('Find the chance of two things together.'),
  ],
  levels: {
    1: phrase('One thing happens or it does not.'),
    2: phrase('One of three; how often in many years.'),
    3: phrase('Two or three things together.'),
  },
  standards: ['7.SP.C.5', '7.SP.C.6', '7.SP.C.8'],
  needs: phrase(
    'Write the frost dates with their chances (Household), two foods in bags or jars on Shelf, and sown crops on Beds.',
  ),
  forms: [
    noFrost,
    seedStaysAway,
    withoutLooking,
    likelier,
    howManyYears,
    twoYears,
    springAndFall,
    oneOfTwoSeeds,
  ],
};
