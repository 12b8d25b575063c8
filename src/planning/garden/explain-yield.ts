import { noteInWords } from '../../facts/index.js';
import { phrase, say } from '../../words/index.js';
import { SEASONS_PUBLISHED } from '../learned.js';
import { measureName } from '../measure.js';
import { measured, measuredIn, measuredNumber } from '../measured.js';
import type { Basis, WorkingInput } from '../types.js';
import { amount, input, n, some } from '../working/parts.js';
import type { BedReckoning } from './beds.js';
import type { InUse } from './own-figures.js';
import { weighedNotes } from './plant-yield.js';

/** A figure in use and the published one behind it, as inputs, each with its source. */
export function figureInputs(name: string, figure: InUse, value = figure.usual): readonly WorkingInput[] {
  const { unit, origin, source, published } = figure;
  const used = input(name, value, unit, origin, source);
  if (!published || origin === published.origin) return [used];
  const range =
    published.low === published.high
      ? ''
      : say` (${measuredNumber(published.low, published.unit)} to ${measuredNumber(published.high, published.unit)})`;
  return [
    used,
    input(`Published${range}`, published.usual, published.unit, published.origin, published.source),
  ];
}

/** What a season counts of a figure: pounds (eggs of hens), and the plants or containers that gave them. */
function taughtBy({ name }: InUse): {
  gave: (value: number) => string;
  of: (count: number) => string;
  one: string;
} {
  const gave = (value: number) => measuredIn(value, 'pound');
  switch (name.what) {
    case 'pounds per container': {
      const { container } = name;
      return { gave, of: (count) => amount(count, container), one: measureName(container, 1) };
    }
    case 'eggs a year':
      return { gave: (value) => some(value, 'egg'), of: (count) => some(count, 'hen'), one: phrase('hen') };
    case 'weight of one':
      return { gave, of: (count) => some(count, 'piece'), one: phrase('piece') };
    default:
      return { gave, of: (count) => some(count, 'plant'), one: phrase('plant') };
  }
}

/** How a figure was learned, in steps: the seasons' own mean against the published figure. */
export function learnedSteps(figure: InUse): readonly (string | null)[] {
  const { learned, seasons, published, own, unit } = figure;
  if (own !== null || !learned || seasons.length === 0) return [];
  const years = new Set(seasons.map(({ year }) => year)).size;
  const pounds = seasons.reduce((sum, one) => sum + one.pounds, 0);
  const count = seasons.reduce((sum, one) => sum + one.plants, 0);
  const { gave, of, one } = taughtBy(figure);
  const steps = [
    ...seasons.map(
      ({ year, pounds: lb, plants, spacing }) =>
        say`${year}: ${gave(lb)} from ${of(plants)}${spacing === null ? '' : say`, ${measuredIn(spacing, 'inch')} apart`}`,
    ),
    say`${gave(pounds)} ÷ ${of(count)} = ${gave(pounds / count)} a ${one}`,
  ];
  if (!published) return [...steps, say`nothing is published, so your own mean counts alone`];
  const z = years / (years + SEASONS_PUBLISHED);
  return [
    ...steps,
    say`weight of your own: ${some(years, 'season')} ÷ (${some(years, 'season')} + ${some(SEASONS_PUBLISHED, 'season')}) = ${n(z)}, for ${some(years, 'season')} against ${SEASONS_PUBLISHED} that the published figure counts for`,
    say`learned = ${n(z)} × your own + ${n(1 - z)} × ${measured(published.usual, unit)} published = ${measured(learned.usual, unit)}`,
    say`its ends are the published ones in the same proportion: ${measuredNumber(learned.low, unit)} to ${measured(learned.high, unit)}`,
  ];
}

/** The yield of a planting at a basis, as inputs. */
export function yieldInputs(bed: BedReckoning, basis: Basis): readonly WorkingInput[] {
  if (!bed.yield.ok) return [];
  const found = bed.yield.value;
  const name = say`Yield, ${basis} season`;
  return found.figure
    ? figureInputs(name, found.figure, found[basis])
    : [input(name, found[basis], found.unit, found.origin, found.source)];
}

/** What a yield rests on, in steps. */
export function yieldSteps(bed: BedReckoning): readonly (string | null)[] {
  if (!bed.yield.ok) return [];
  const { figure, lean, usual, good, notes } = bed.yield.value;
  return [
    ...(figure ? learnedSteps(figure) : []),
    lean === good
      ? null
      : say`lean ${measured(lean, 'pounds a plant')}, usual ${measured(usual, 'pounds a plant')}, good ${measured(good, 'pounds a plant')}`,
    ...notes,
    ...weighedNotes(bed.crop)
      .map(noteInWords)
      .filter((note) => !notes.includes(note)),
  ];
}
