import { rowFeetFor } from '../../planning/growing.js';
import { phrase, say } from '../../words/index.js';
import { amountOf, asking, lastStep, partsAllowed } from '../answer-text.js';
import type { BedNumbers, BookNumbers } from '../book-numbers.js';
import { ends, exact, ratio, written } from '../exact.js';
import type { Random } from '../random.js';
import { form, type Topic } from '../types.js';
import { amount, named, PLANTS, ROWS, roughly, unitOf } from '../words.js';

const FEET = unitOf('foot');
const SQUARE_FEET = unitOf('square foot');

const aCrop = ({ beds }: BookNumbers, random: Random): string | undefined => random.pick(beds)?.crop;

const bedArea = form<{ w: number; l: number }>({
  id: 'bed-area',
  levels: [1],
  make(numbers, _level, random) {
    const crop = aCrop(numbers, random);
    if (crop === undefined) return null;
    const [w, l] = [random.whole(2, 5), random.whole(6, 20)];
    const answer = amountOf(exact(w * l), SQUARE_FEET);
    return {
      text: say`Let’s say the ${named(crop)} bed is ${w} feet wide and ${l} feet long. What is its area?`,
      answer,
      steps: [
        say`${l} squares of a foot lie along it, in ${w} rows.`,
        say`Area is width times length.`,
        lastStep(`${w} × ${l}`, answer),
      ],
      given: { w, l },
    };
  },
  // Squares counted one by one.
  key({ w, l }) {
    let squares = 0;
    for (let row = 0; row < w; row++) for (let at = 0; at < l; at++) squares++;
    return amountOf(exact(squares), SQUARE_FEET);
  },
});

const aroundBed = form<{ w: number; l: number }>({
  id: 'around-a-bed',
  levels: [1, 2],
  make(numbers, level, random) {
    const crop = aCrop(numbers, random);
    if (crop === undefined) return null;
    const half = level === 2 ? random.whole(0, 1) : 0;
    const [w, l] = [random.whole(2, 5) * 2 + half, random.whole(6, 20) * 2];
    const value = ratio(w + l, 1);
    const answer = amountOf(value, FEET);
    return {
      text: say`Let’s say a board goes all around a ${named(crop)} bed, ${amount(ratio(w, 2), FEET)} wide and ${amount(ratio(l, 2), FEET)} long. How long is the board in all?`,
      answer,
      steps: [
        say`A rectangle has two long sides and two short ones.`,
        `2 × ${written(ratio(w, 2))} + 2 × ${written(ratio(l, 2))}`,
        lastStep(`${w} + ${l}`, answer),
      ],
      given: { w, l },
    };
  },
  // Side after side, in half feet.
  key({ w, l }) {
    let halves = 0;
    for (const side of [w, l, w, l]) halves += side;
    return amountOf(ratio(halves, 2), FEET);
  },
});

const missingSide = form<{ area: number; w: number }>({
  id: 'missing-side',
  levels: [2],
  make(numbers, _level, random) {
    const crop = aCrop(numbers, random);
    if (crop === undefined) return null;
    // Built from the answer.
    const [w, l] = [random.whole(3, 5), random.whole(6, 24)];
    const answer = amountOf(exact(l), FEET);
    return {
      text: say`Let’s say the ${named(crop)} plants need ${w * l} square feet, in a bed ${w} feet wide. How long must the bed be?`,
      answer,
      steps: [
        say`Area is width times length.`,
        say`So the length is the area divided by the width.`,
        lastStep(`${w * l} ÷ ${w}`, answer),
      ],
      given: { area: w * l, w },
    };
  },
  key({ area, w }) {
    let l = 0;
    while (l * w < area) l++;
    return amountOf(exact(l), FEET);
  },
});

interface Row {
  readonly crop: string;
  readonly plants: number;
  readonly inches: number;
}

/** Whole or half inches: finer ones nobody measures in a bed. */
const isHalves = (inches: number): boolean => inches > 0 && Number.isInteger(inches * 2);

const aRow = ({ beds }: BookNumbers, random: Random, most: number) => {
  const bed = random.pick(
    beds.filter(({ spacing, plants }) => spacing !== null && isHalves(spacing) && plants <= most),
  );
  return bed ? { bed, inches: bed.spacing! } : null;
};

const says = ({ plants, crop, spacingFrom }: BedNumbers, inches: number): string =>
  spacingFrom === 'own'
    ? say`The plan has ${plants} ${named(crop)} plants. Each takes ${amount(exact(inches), unitOf('inch'))} of row (our own figure).`
    : say`The plan has ${plants} ${named(crop)} plants. Each takes ${amount(exact(inches), unitOf('inch'))} of row (published).`;

const rowInches = form<Row>({
  id: 'row-inches',
  levels: [1],
  make(numbers, _level, random) {
    const found = aRow(numbers, random, 120);
    if (!found) return null;
    const { bed, inches } = found;
    const answer = amountOf(exact(inches).mul(bed.plants), unitOf('inch'));
    return {
      text: say`${says(bed, inches)} How many inches of row is that?`,
      answer,
      steps: [
        say`Each plant takes ${amount(exact(inches), unitOf('inch'))}.`,
        say`There are ${bed.plants} plants: multiply.`,
        lastStep(`${bed.plants} × ${written(exact(inches))}`, answer),
      ],
      given: { crop: bed.crop, plants: bed.plants, inches },
    };
  },
  // As the planner of beds reckons, in feet; a crop that it does not know, plant by plant.
  key: (given) => amountOf(rowFeet(given).mul(12), unitOf('inch')),
});

function rowFeet({ crop, plants, inches }: Row) {
  const planned = rowFeetFor(crop, plants, inches);
  if (planned.ok) return exact(Math.round(planned.value.usual * 24)).div(24);
  let halves = 0;
  for (let plant = 0; plant < plants; plant++) halves += Math.round(inches * 2);
  return ratio(halves, 24);
}

const rowLength = form<Row>({
  id: 'row-feet',
  levels: [2],
  make(numbers, _level, random) {
    const found = aRow(numbers, random, 1000);
    if (!found) return null;
    const { bed, inches } = found;
    const value = exact(inches).mul(bed.plants).div(12);
    const answer = amountOf(value, FEET);
    return {
      text: [say`${says(bed, inches)} How many feet of row is that?`, ends(value, 2) ? '' : partsAllowed()]
        .filter(Boolean)
        .join(' '),
      answer,
      steps: [
        say`${bed.plants} × ${written(exact(inches))} = ${written(exact(inches).mul(bed.plants))} inches.`,
        say`A foot is 12 inches: divide.`,
        lastStep(`${written(exact(inches).mul(bed.plants))} ÷ 12`, answer),
      ],
      given: { crop: bed.crop, plants: bed.plants, inches },
    };
  },
  key: (given) => amountOf(rowFeet(given), FEET),
});

const plantsInBed = form<{ w: number; l: number; inches: number }>({
  id: 'plants-in-a-bed',
  levels: [3],
  make(numbers, _level, random) {
    const found = aRow(numbers, random, 100_000);
    if (!found || !Number.isInteger(found.inches) || found.inches < 3 || found.inches > 36) return null;
    const { inches, bed } = found;
    const [w, l] = [random.whole(3, 5), random.whole(6, 16)];
    const [across, along] = [Math.floor((w * 12) / inches), Math.floor((l * 12) / inches)];
    const answer = amountOf(exact(across * along), PLANTS);
    return {
      text: say`Let’s say each ${named(bed.crop)} plant gets a square as wide as its spacing, ${inches} inches, and the bed is ${w} feet by ${l} feet. The squares stand in straight rows. How many plants fit?`,
      answer,
      steps: [
        say`Across: ${w} feet are ${w * 12} inches; ${w * 12} ÷ ${inches}, rounded down: ${across}.`,
        say`Along: ${l} feet are ${l * 12} inches; ${l * 12} ÷ ${inches}, rounded down: ${along}.`,
        lastStep(`${across} × ${along}`, answer),
      ],
      given: { w, l, inches },
    };
  },
  // Set one by one, as long as the next square still lies inside.
  key({ w, l, inches }) {
    let plants = 0;
    for (let x = inches; x <= w * 12; x += inches) for (let y = inches; y <= l * 12; y += inches) plants++;
    return amountOf(exact(plants), PLANTS);
  },
});

const rowsNeeded = form<Row & { row: number }>({
  id: 'rows-needed',
  levels: [3],
  make(numbers, _level, random) {
    const found = aRow(numbers, random, 2000);
    if (!found) return null;
    const { bed, inches } = found;
    const row = random.pick([8, 10, 12, 15, 20])!;
    const feet = exact(inches).mul(bed.plants).div(12);
    if (feet.lt(row)) return null;
    const answer = amountOf(feet.div(row), ROWS, 'up');
    return {
      text: asking(
        say`${says(bed, inches)} Let’s say each row is ${row} feet long. How many rows are needed for all of them?`,
        'up',
      ),
      answer,
      steps: [
        say`${bed.plants} × ${written(exact(inches))} ÷ 12 ${roughly(feet)} feet of row.`,
        say`Divide by ${row} feet: ${written(feet.round(2))} ÷ ${row} ${roughly(feet.div(row))}`,
        lastStep(say`A begun row is a row: rounded up`, amountOf(feet.div(row).ceil(), ROWS)),
      ],
      given: { crop: bed.crop, plants: bed.plants, inches, row },
    };
  },
  // Laid out in half inches, row after row.
  key({ plants, inches, row }) {
    let rows = 0;
    for (let left = plants * Math.round(inches * 2); left > 0; left -= row * 24) rows++;
    return amountOf(exact(rows), ROWS, 'up');
  },
});

export const AREA_TOPIC: Topic = {
  id: 'area',
  title: phrase('Area and spacing'),
  goals: [
    phrase('Find the area of a bed and the way around it.'),
    phrase('Work out how much row so many plants take.'),
    phrase('Find how many plants fit, and which numbers are rounded up or down.'),
  ],
  levels: {
    1: phrase('Whole feet and inches.'),
    2: phrase('A missing side; inches to feet.'),
    3: phrase('Plants on a grid; whole rows.'),
  },
  standards: ['3.MD.C.7', '4.MD.A.3', '5.MD.A.1'],
  needs: phrase('Write crops with their plants on Beds.'),
  forms: [bedArea, aroundBed, missingSide, rowInches, rowLength, plantsInBed, rowsNeeded],
};
