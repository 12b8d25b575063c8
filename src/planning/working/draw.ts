import { phrase, say } from '../../words/index.js';
import { isDay } from '../dates.js';
import { measureName } from '../measure.js';
import type { LineReckoning } from '../reckon.js';
import { lotInWords } from '../rows/draw-row.js';
import type { Draw, DrawFigures, PlanValue, Working } from '../types.js';
import { amount, call, countedUnit, type Explained, input, iso, working } from './parts.js';
import { containerMissing } from './shared.js';

const TITLES: Readonly<Record<keyof DrawFigures, string>> = {
  in_counted: phrase('In the counted-in container'),
  took_from: phrase('Took from'),
  not_found: phrase('Not found on the shelf'),
};

const isCorrection = (draw: Draw): boolean => draw.corrects !== null || (draw.amount ?? 0) < 0;

const drawnName = (draw: Draw): string => (isCorrection(draw) ? 'Correction' : 'Drawn');

/** Why a draw counts for nothing (yet). */
function idle(line: LineReckoning, draw: Draw): string {
  const taken = line.allotted.taken.get(draw.id);
  if (taken?.problem) return `${taken.problem.message} ${taken.problem.mend}`;
  if (draw.amount === null) return say`Write how much was taken.`;
  if ((draw.container ?? line.countedIn) === null) return containerMissing;
  if (isDay(draw.date) && draw.date > line.household.asOf) {
    return say`It is dated after the as-of date, so it does not count yet.`;
  }
  const measure = draw.container ?? line.countedIn;
  const bridge = measure && line.countedIn ? line.measures.factor(measure, line.countedIn) : null;
  if (bridge && !bridge.ok) return `${bridge.problem.message} ${bridge.problem.mend}`;
  return say`Nothing of this food stood on the shelf then.`;
}

function inCounted(line: LineReckoning, draw: Draw): Explained {
  const measure = draw.container ?? line.countedIn;
  const rule = say`The amount drawn, turned into the container that this food is counted in.`;
  if (draw.amount === null || measure === null || line.countedIn === null) {
    return { rule, missing: idle(line, draw) };
  }
  const factor = line.measures.factor(measure, line.countedIn);
  return {
    rule,
    inputs: [input(drawnName(draw), draw.amount, measureName(measure), 'entered')],
    steps: factor.ok
      ? [`${amount(draw.amount, measure)} = ${amount(draw.amount * factor.value, line.countedIn)}`]
      : [],
    formula: call('MEASURE', draw.amount, measure, line.countedIn, line.input.food),
    missing: factor.ok ? idle(line, draw) : `${factor.problem.message} ${factor.problem.mend}`,
  };
}

function tookFrom(line: LineReckoning, draw: Draw): Explained {
  const taken = line.allotted.taken.get(draw.id);
  const rule = isCorrection(draw)
    ? say`A correction changes the draw that it corrects: what was not found is taken back first, then what was taken last goes back to its lot.`
    : say`A draw takes what was written down when it was posted, then the lot it names, then oldest first: opened jars, then by best-by date, then by the day put up. It cannot take from a lot that was put up later.`;
  const measure = draw.container ?? line.countedIn;
  return {
    rule,
    inputs: [
      ...(draw.amount === null || measure === null
        ? []
        : [input(drawnName(draw), draw.amount, measureName(measure), 'entered')]),
      ...(draw.date === null ? [] : [input(phrase('Date'), iso(draw.date), phrase('day'), 'entered')]),
    ],
    steps: (taken?.order ?? []).map((id) => {
      const lot = line.lots.get(id)?.lot;
      const part = taken?.allotted[id] ?? 0;
      const words = lot ? lotInWords(lot) : id;
      return `${part < 0 ? say`gave back ` : ''}${amount(Math.abs(part), lot?.container ?? null)}: ${words}`;
    }),
    missing: idle(line, draw),
  };
}

function notFound(line: LineReckoning, draw: Draw): Explained {
  const taken = line.allotted.taken.get(draw.id);
  const measure = draw.container ?? line.countedIn;
  return {
    rule: say`The part of the draw that no lot on the shelf could give on that day. The draw is kept as written; count the shelf, or put in the lot that is missing.`,
    inputs:
      draw.amount === null || measure === null
        ? []
        : [input(drawnName(draw), draw.amount, measureName(measure), 'entered')],
    steps:
      taken && taken.notFound > 0 && draw.amount !== null
        ? [say`${amount(draw.amount, measure)} drawn, ${amount(taken.notFound, measure)} of it not found`]
        : [],
    missing: isCorrection(draw)
      ? say`It lowers what was not found at the draw that it corrects.`
      : taken?.counts
        ? say`All of it was found on the shelf.`
        : idle(line, draw),
  };
}

/** Explains one planning figure of a draw. */
export function drawWorking(
  line: LineReckoning,
  draw: Draw,
  column: keyof DrawFigures,
  value: PlanValue,
): Working {
  const measure = draw.container ?? line.countedIn;
  switch (column) {
    case 'in_counted':
      return working(TITLES[column], value, countedUnit(line), inCounted(line, draw));
    case 'took_from':
      return working(TITLES[column], value, '', tookFrom(line, draw));
    default:
      return working(
        TITLES.not_found,
        value,
        measure === null ? '' : measureName(measure),
        notFound(line, draw),
      );
  }
}
