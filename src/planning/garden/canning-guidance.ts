import {
  altitudePressure,
  canning,
  cautionsFor,
  findCrop,
  type Gauge,
  headspaceOf,
  pressureGroup,
  sourceText,
} from '../../facts/index.js';
import type { Problem } from '../../problem.js';
import { asFraction, measureSystem } from '../../units/index.js';
import { phrase, say } from '../../words/index.js';
import { measuredWhole } from '../measured.js';

/** Said wherever canning shows: never a time. */
export const SEE_TESTED = phrase('see the tested process');

/** A guidance text, where it comes from, and what stands in its way. */
export interface Guidance {
  readonly text: string | null;
  readonly source: string | null;
  readonly problem: Problem | null;
}

/** Rounded to whole millimetres where measures are metric; the tested process says the exact one. */
const inches = (n: number): string =>
  measureSystem() === 'metric' ? say`${Math.round(n * 25.4) / 10} cm` : say`${asFraction(n)} inch`;

/** Rounded up where measures are metric: a gauge that shows less than the table asks for would be too little. */
const pressure = (psi: number): string =>
  measureSystem() === 'metric' ? say`${Math.ceil(psi * 6.894757)} kPa` : say`${psi} psi`;

/** Class and inches of headspace for a food, by its plainest pack, or by `pack`. */
export function headspaceGuidance(food: string, pack?: string): Guidance {
  const of = canning(food, pack);
  if (!of.ok) return { text: SEE_TESTED, source: null, problem: null };
  const figure = headspaceOf(of.value);
  return figure === null || of.value.headspace === null
    ? { text: SEE_TESTED, source: null, problem: null }
    : {
        text: say`${inches(figure.usual)} (${of.value.headspace} class); ${SEE_TESTED}`,
        source: sourceText(figure.source),
        problem: null,
      };
}

const GAUGES: readonly Gauge[] = ['dial', 'weighted'];

/**
 * Canner pressures at the household's altitude, for foods that the published tables cover; any other food sees its
 * tested process. Never a time.
 */
export function pressureGuidance(food: string, altitudeFt: number | null): Guidance {
  const group = pressureGroup(food);
  if (!group.ok) {
    const forbidden = group.problem.code === 'no-tested-process';
    return {
      text: forbidden ? say`no tested process` : SEE_TESTED,
      source: null,
      problem: forbidden ? group.problem : null,
    };
  }
  if (altitudeFt === null) {
    return {
      text: say`by your altitude; ${SEE_TESTED}`,
      source: null,
      problem: {
        code: 'altitude-missing',
        message: say`The household gives no altitude, and the pressure depends on it.`,
        mend: say`Write the altitude in feet among the household’s settings.`,
      },
    };
  }
  const parts: string[] = [];
  let source: string | null = null;
  for (const gauge of GAUGES) {
    // The tables begin at sea level; lower places are not above it.
    const found = altitudePressure(group.value, Math.max(0, altitudeFt), gauge);
    if (!found.ok) return { text: SEE_TESTED, source: null, problem: found.problem };
    parts.push(say`${gauge} gauge ${pressure(found.value.psi)}`);
    source = sourceText(found.value.source);
  }
  const fruit = group.value === 'fruit' ? say`, where its process is by pressure` : '';
  return {
    text: say`${parts.join(', ')} at ${measuredWhole(altitudeFt, 'ft')}${fruit}; ${SEE_TESTED}`,
    source,
    problem: null,
  };
}

/** Food-safety words for putting a food up. */
export const batchCautions = (food: string, way: Parameters<typeof cautionsFor>[1]): readonly string[] => {
  const crop = findCrop(food);
  return cautionsFor(crop.ok ? crop.value.name : food, way).map(({ text }) => text);
};
