import { say } from '../../words/index.js';
import { SEASONS_PUBLISHED } from '../learned.js';
import { measured, measuredNumber } from '../measured.js';
import type { Basis, WorkingInput } from '../types.js';
import { input, n, some } from '../working/parts.js';
import type { BedReckoning } from './beds.js';
import type { InUse } from './own-figures.js';
import { weighedNotes } from './plant-yield.js';

/** A figure in use and the published one behind it, as inputs, each with its source. */
export function figureInputs(name: string, figure: InUse, value = figure.usual): readonly WorkingInput[] {
  const { unit, origin, source, published } = figure;
  const used = input(name, value, unit, origin, source);
  if (!published || origin === published.origin) return [used];
  const range = published.low === published.high ? '' : say` (${n(published.low)} to ${n(published.high)})`;
  return [
    used,
    input(`Published${range}`, published.usual, published.unit, published.origin, published.source),
  ];
}

/** How a figure was learned, in steps: the seasons' own mean against the published figure. */
export function learnedSteps(figure: InUse): readonly (string | null)[] {
  const { learned, seasons, published, own } = figure;
  if (own !== null || !learned || seasons.length === 0) return [];
  const years = new Set(seasons.map(({ year }) => year)).size;
  const pounds = seasons.reduce((sum, one) => sum + one.pounds, 0);
  const count = seasons.reduce((sum, one) => sum + one.plants, 0);
  const steps = [
    ...seasons.map(
      ({ year, pounds: lb, plants, spacing }) =>
        say`${year}: ${measured(lb, 'lb')} from ${n(plants)}${spacing === null ? '' : say`, ${measured(spacing, 'inches')} apart`}`,
    ),
    say`${measured(pounds, 'lb')} ÷ ${n(count)} = ${measuredNumber(pounds / count, 'lb')} each`,
  ];
  if (!published) return [...steps, say`nothing is published, so your own mean counts alone`];
  const z = years / (years + SEASONS_PUBLISHED);
  return [
    ...steps,
    say`weight of your own: ${years} ÷ (${years} + ${SEASONS_PUBLISHED}) = ${n(z)}, for ${some(years, 'season')} against ${SEASONS_PUBLISHED} that the published figure counts for`,
    say`learned = ${n(z)} × your own + ${n(1 - z)} × ${n(published.usual)} published = ${n(learned.usual)}`,
    say`its ends are the published ones in the same proportion: ${n(learned.low)} to ${n(learned.high)}`,
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
      : say`lean ${measuredNumber(lean, 'lb')}, usual ${measuredNumber(usual, 'lb')}, good ${measured(good, 'pounds a plant')}`,
    ...notes,
    ...weighedNotes(bed.crop).filter((note) => !notes.includes(note)),
  ];
}
