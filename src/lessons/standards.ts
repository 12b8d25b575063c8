import { phrase, say } from '../words/index.js';

/** Where the standards are published; each has a page of its own there. */
const PUBLISHED = 'https://www.thecorestandards.org/Math/Content/';

/** What they are called. */
export const STANDARDS_NAME = 'Common Core State Standards for Mathematics';

/**
 * Standards of the Common Core State Standards for Mathematics that topics exercise, by their published codes.
 * What they ask is said in our own words. `checked`: code and text were compared, in November 2026, with copies of
 * the standards that give the address of each one's published page; `from memory`: they were not, which is said
 * wherever the code shows.
 */
interface Standard {
  readonly asks: string;
  readonly origin: 'checked' | 'from memory';
}

export const STANDARDS = {
  '3.MD.B.3': { asks: phrase('Draw and read bar graphs with a scale.'), origin: 'checked' },
  '3.MD.C.7': { asks: phrase('Relate area to multiplying.'), origin: 'checked' },
  '4.MD.A.1': {
    asks: phrase('Know how big units are, and express a larger one in a smaller.'),
    origin: 'checked',
  },
  '4.MD.A.2': { asks: phrase('Solve word problems on distance, time, volume and mass.'), origin: 'checked' },
  '4.MD.A.3': { asks: phrase('Use the rules for area and perimeter of rectangles.'), origin: 'checked' },
  '4.NF.B.4': { asks: phrase('Multiply a fraction by a whole number.'), origin: 'checked' },
  '4.OA.A.2': { asks: phrase('Compare by how many times as much one is.'), origin: 'checked' },
  '4.OA.A.3': {
    asks: phrase('Solve problems in several steps, and read what is left over.'),
    origin: 'checked',
  },
  '5.MD.A.1': { asks: phrase('Convert among units of one system, in several steps.'), origin: 'checked' },
  '5.NF.B.6': {
    asks: phrase('Solve real problems by multiplying fractions and mixed numbers.'),
    origin: 'checked',
  },
  '6.EE.C.9': { asks: phrase('Write how one quantity depends on another.'), origin: 'checked' },
  '6.NS.A.1': { asks: phrase('Divide fractions by fractions, and read the answer.'), origin: 'checked' },
  '6.RP.A.1': { asks: phrase('Understand a ratio, and say it in words.'), origin: 'checked' },
  '6.RP.A.2': { asks: phrase('Understand a unit rate.'), origin: 'checked' },
  '6.RP.A.3': { asks: phrase('Reason with ratios and rates in real problems.'), origin: 'checked' },
  '6.RP.A.3b': { asks: phrase('Solve problems of unit rates.'), origin: 'checked' },
  '6.RP.A.3c': {
    asks: phrase('Find a percent of a quantity, and the whole from a part.'),
    origin: 'checked',
  },
  '6.RP.A.3d': { asks: phrase('Convert units by ratio.'), origin: 'checked' },
  '6.SP.A.3': {
    asks: phrase('Sum up data with one number for its middle and one for its spread.'),
    origin: 'checked',
  },
  '6.SP.B.5': { asks: phrase('Sum up data in the light of where it comes from.'), origin: 'checked' },
  '7.RP.A.1': { asks: phrase('Work out unit rates from fractions.'), origin: 'checked' },
  '7.RP.A.2': { asks: phrase('Know and use proportional relationships.'), origin: 'checked' },
  '7.RP.A.3': { asks: phrase('Solve ratio and percent problems in several steps.'), origin: 'checked' },
  '7.SP.C.5': { asks: phrase('Understand a chance as a number from 0 to 1.'), origin: 'checked' },
  '7.SP.C.6': {
    asks: phrase('Foretell roughly how often something happens from its chance.'),
    origin: 'checked',
  },
  '7.SP.C.8': { asks: phrase('Find the chance of two things together.'), origin: 'checked' },
  '8.F.B.4': {
    asks: phrase('Model with a straight line: where it begins and how fast it changes.'),
    origin: 'checked',
  },
} as const satisfies Readonly<Record<string, Standard>>;

export type StandardCode = keyof typeof STANDARDS;

/** The published page of a standard: `6.RP.A.3c` is at `6/RP/A/3/c/`. */
export const standardPage = (code: StandardCode): string =>
  `${PUBLISHED}${code.replace(/(\d)([a-d])$/, '$1.$2').replaceAll('.', '/')}/`;

/** The code as it is shown, with what is not sure about it. */
export function standardShown(code: StandardCode): string {
  const { origin } = STANDARDS[code] as Standard;
  return origin === 'from memory' ? say`${code} (from memory)` : code;
}
