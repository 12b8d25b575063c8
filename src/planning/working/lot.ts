import { phrase, say } from '../../words/index.js';
import { FIRST_DAY, isDay, monthsBetween } from '../dates.js';
import { cupsIn, holdsOf, measureName } from '../measure.js';
import { measuredIn, pluralOf } from '../measured.js';
import type { LineReckoning, LotReckoning } from '../reckon.js';
import { lotInWords } from '../rows/draw-row.js';
import { servingCups } from '../rows/lot-row.js';
import { weeksOutside } from '../season.js';
import type { DayNumber, LotFigures, PlanValue, Working } from '../types.js';
import { explainWeeks } from './food-stock.js';
import {
  amount,
  asOfInput,
  call,
  cautionsOf,
  type Explained,
  input,
  iso,
  n,
  seasonInputs,
  some,
  working,
} from './parts.js';
import { containerMissing, useInput, useMissing } from './shared.js';

const TITLES: Readonly<Record<keyof LotFigures, string>> = {
  left: phrase('Left'),
  months_kept: phrase('Months kept'),
  best_by: phrase('Best quality by'),
  days_left: phrase('Days left'),
  holds: phrase('Holds'),
  servings: phrase('Servings'),
  eaten_by: phrase('Eaten by'),
  at_risk: phrase('At risk'),
  use_first: phrase('Use first'),
  weeks_of_supply: phrase('Weeks of supply'),
};

const NO_COUNT = phrase('Write how many containers were put up, and in which container.');
const NO_DAY = phrase('Write the day on which it was put up.');

function leftMissing(line: LineReckoning, at: LotReckoning): string {
  if (isDay(at.lot.putUpOn) && at.lot.putUpOn > line.household.asOf) {
    return say`It was put up after the as-of date, so it does not count yet.`;
  }
  return at.countProblem ? `${at.countProblem.message} ${at.countProblem.mend}` : NO_COUNT;
}

function left(line: LineReckoning, at: LotReckoning): Explained {
  const { lot } = at;
  const unit = lot.container === null ? 'containers' : measureName(lot.container);
  const parts: { readonly date: DayNumber | null; readonly part: number }[] = [];
  let sum = 0;
  for (const draw of line.input.draws) {
    const part = line.allotted.taken.get(draw.id)?.allotted[lot.id] ?? 0;
    if (part === 0) continue;
    sum += part;
    parts.push({ date: isDay(draw.date) ? draw.date : null, part });
  }
  parts.sort((a, b) => (a.date ?? FIRST_DAY) - (b.date ?? FIRST_DAY));
  const took = parts.map(
    ({ date, part }) =>
      `${date === null ? say`undated` : iso(date)}: ${part < 0 ? say`gave back` : say`took`} ${amount(Math.abs(part), lot.container)}`,
  );
  // The latest few are what one looks for.
  const shown = took.slice(-12);
  return {
    rule: say`What was put up, less what draws took from this lot. It is never below 0.`,
    inputs: [
      input(phrase('Put up'), at.countProblem ? null : lot.count, unit, 'entered'),
      input(phrase('Taken by draws'), sum, unit, 'computed'),
    ],
    steps: [
      took.length > shown.length ? say`${some(took.length - shown.length, 'earlier draw')}, then` : null,
      ...shown,
      at.left === null
        ? null
        : say`${amount(lot.count ?? 0, lot.container)} − ${amount(sum, lot.container)} taken = ${amount(at.left, lot.container)}`,
    ],
    missing: leftMissing(line, at),
  };
}

function bestBy(line: LineReckoning, at: LotReckoning): Explained {
  const { lot } = at;
  const rule = say`The day it was put up, plus the months of best quality: your own, else those published.`;
  const cautions = cautionsOf(line, true);
  if (isDay(lot.ownBestBy)) {
    return {
      rule: say`Your own best-quality date for this lot.`,
      inputs: [input(phrase('Own best-by'), iso(lot.ownBestBy), phrase('day'), 'own')],
      cautions,
    };
  }
  if (!isDay(lot.putUpOn)) return { rule, missing: say`${NO_DAY} Or write your own best-by date.`, cautions };
  const put = input(phrase('Put up on'), iso(lot.putUpOn), phrase('day'), 'entered');
  if (!line.months.ok) {
    const { message, mend } = line.months.problem;
    return { rule, inputs: [put], missing: `${message} ${mend}`, cautions };
  }
  const { months, origin, figure } = line.months.value;
  const source = figure ? [figure.source, ...(figure.notes ?? [])].join('; ') : undefined;
  const name = figure
    ? say`Months of best quality (${line.household.basis} basis)`
    : say`Own months of best quality`;
  const [whole, part] = [Math.floor(months), months % 1];
  return {
    rule,
    inputs: [put, input(name, months, phrase('months'), origin, source)],
    steps: [
      figure && figure.low !== null && figure.high !== null && figure.low !== figure.high
        ? say`published: ${n(figure.low)} to ${n(figure.high)} months`
        : null,
      `${iso(lot.putUpOn)} + ${some(whole, 'month')}${part > 0 ? say` and ${some(Math.round(part * 30.4375), 'day')}` : ''} = ${iso(at.bestBy)}`,
    ],
    ...(figure ? { formula: call('BEST_BY', iso(lot.putUpOn), line.input.way, line.input.food) } : {}),
    missing: say`The date falls after the year 2200: check the day put up.`,
    cautions,
  };
}

function holds(line: LineReckoning, at: LotReckoning): Explained {
  const { container } = at.lot;
  const rule = say`What is left × what one container holds: quarts, or pounds where it is reckoned by weight.`;
  if (at.left === null || container === null) return { rule, missing: leftMissing(line, at) };
  const one = holdsOf(container, 1, line.bridges);
  if (!one.ok) return { rule, missing: `${one.problem.message} ${one.problem.mend}` };
  const { amount: each, unit } = one.value;
  return {
    rule,
    inputs: [
      input(phrase('Left'), at.left, measureName(container), 'computed'),
      input(phrase('One holds'), each, pluralOf(unit), 'computed'),
    ],
    steps: [
      say`${amount(at.left, at.lot.container)} × ${measuredIn(each, unit)} in each = ${measuredIn(at.left * each, unit)}`,
    ],
    formula: `=${String(at.left)}*CONTAINER_HOLDS("${container}", "${unit}")`,
  };
}

function servings(line: LineReckoning, at: LotReckoning): Explained {
  const { container } = at.lot;
  const cups = servingCups(line);
  const own = (line.input.row?.servingCups ?? null) === cups;
  const rule = say`What is left, in cups, ÷ the size of a serving.`;
  if (at.left === null || container === null) return { rule, missing: leftMissing(line, at) };
  const each = cupsIn(container, line.bridges);
  if (!each.ok) return { rule, missing: `${each.problem.message} ${each.problem.mend}` };
  return {
    rule,
    inputs: [
      input(phrase('Left'), at.left, measureName(container), 'computed'),
      input(phrase('Cups in one'), each.value, phrase('cups'), 'computed'),
      input(phrase('A serving'), cups, phrase('cups'), own ? 'own' : phrase('common practice, no source')),
    ],
    steps: [
      say`${amount(at.left, at.lot.container)} × ${measuredIn(each.value, 'cup')} in each ÷ ${measuredIn(cups, 'cup')} a serving = ${some((at.left * each.value) / cups, 'serving')}`,
    ],
    formula: call('SERVINGS_IN', container, at.left, cups),
  };
}

/** The lots of the queue that are eaten before this one, and this one. */
function queueSteps(line: LineReckoning, at: LotReckoning): string[] {
  const steps: string[] = [];
  const place = line.order.findIndex(({ id }) => id === at.lot.id);
  for (const [i, lot] of line.order.slice(0, place + 1).entries()) {
    // The last few before it tell the story.
    if (i < place - 5) continue;
    const eaten = line.eaten.get(lot.id);
    if (!eaten || lot.toCounted === null) continue;
    const inCounted = `${amount(lot.left * lot.toCounted, line.countedIn)}`;
    const good =
      lot.bestBy === null || lot.stillCounting
        ? say`no best-by date to meet`
        : say`best by ${iso(lot.bestBy)}, ${some(weeksOutside(line.household.asOf, lot.bestBy, line.season), 'week')} of eating from now`;
    const done =
      eaten.weeks === null
        ? say`${amount(eaten.atRisk * lot.toCounted, line.countedIn)} not eaten in time`
        : say`eaten ${some(eaten.weeks, 'week')} of eating from now`;
    steps.push(`${i + 1}. ${inCounted}, ${good}: ${done}`);
  }
  return steps;
}

function queue(line: LineReckoning, at: LotReckoning, column: 'eaten_by' | 'at_risk'): Explained {
  const rule =
    column === 'at_risk'
      ? say`Lots are eaten one after another, opened jars first, then oldest first, at the usual use per week outside the fresh season. What of this lot is not eaten by its best-by date is at risk of going past its best. Nothing is at risk without such a date or where you still count on it.`
      : say`Lots are eaten one after another, opened jars first, then oldest first, at the usual use per week outside the fresh season. This is the day on which the last of this lot is eaten.`;
  const cautions = cautionsOf(line, true);
  if (at.past) {
    return {
      rule: say`It is past its best-quality date, so it has left the queue. Check it, eat it or clear it out; tick “still counting on it” to keep it in the plan.`,
      inputs: [input(phrase('Best quality by'), iso(at.bestBy), phrase('day'), 'computed'), asOfInput(line)],
      missing: say`A lot past its best-quality date is not planned on.`,
      cautions,
    };
  }
  const missing =
    at.left === null
      ? leftMissing(line, at)
      : at.left === 0
        ? say`None is left.`
        : at.toCounted === null
          ? at.bridgeProblem
            ? `${at.bridgeProblem.message} ${at.bridgeProblem.mend}`
            : containerMissing
          : useMissing(line);
  return {
    rule,
    inputs: [
      ...useInput(line),
      ...(at.left === null || at.lot.container === null
        ? []
        : [input(phrase('Left'), at.left, measureName(at.lot.container), 'computed')]),
      ...(at.bestBy === null
        ? []
        : [input(phrase('Best quality by'), iso(at.bestBy), phrase('day'), 'computed')]),
      asOfInput(line),
      ...seasonInputs(line),
    ],
    steps: queueSteps(line, at),
    missing,
    cautions,
  };
}

function daysLeft(line: LineReckoning, at: LotReckoning): Explained {
  return {
    rule: say`Days from the as-of date to the best-quality date; below 0 when it is past. It says nothing of safety.`,
    inputs: [input(phrase('Best quality by'), iso(at.bestBy), phrase('day'), 'computed'), asOfInput(line)],
    steps: [
      at.bestBy === null
        ? null
        : `${iso(at.bestBy)} − ${iso(line.household.asOf)} = ${some(at.bestBy - line.household.asOf, 'day')}`,
    ],
    missing: bestBy(line, at).missing ?? NO_DAY,
    cautions: cautionsOf(line, true),
  };
}

function monthsKept(line: LineReckoning, at: LotReckoning): Explained {
  const { putUpOn } = at.lot;
  const months = isDay(putUpOn) ? monthsBetween(putUpOn, line.household.asOf) : null;
  return {
    rule: say`Whole months from the day it was put up to the as-of date.`,
    inputs: [
      input(phrase('Put up on'), isDay(putUpOn) ? iso(putUpOn) : null, phrase('day'), 'entered'),
      asOfInput(line),
    ],
    steps: [
      months === null ? null : say`${iso(putUpOn)} to ${iso(line.household.asOf)}: ${some(months, 'month')}`,
    ],
    formula: call('MONTHS_KEPT', iso(putUpOn), iso(line.household.asOf)),
    missing: isDay(putUpOn) ? leftMissing(line, at) : NO_DAY,
  };
}

/** The lots that are eaten before this one, in their order, and this one. */
function orderSteps(line: LineReckoning, at: LotReckoning): string[] {
  const place = line.order.findIndex(({ id }) => id === at.lot.id);
  return line.order.slice(0, place + 1).flatMap((lot, i) => {
    // The first of them and those next to it tell the story.
    if (i > 1 && i < place - 3) return [];
    const known = line.lots.get(lot.id)?.lot;
    const best = lot.bestBy === null ? say`no best-by date` : say`best by ${iso(lot.bestBy)}`;
    return [`${i + 1}. ${known ? `${lotInWords(known)}, ` : ''}${best}`];
  });
}

function useFirst(line: LineReckoning, at: LotReckoning): Explained {
  return {
    rule: say`The place of this lot in the order of eating: opened jars first, then by best-by date, then by the day put up; those without a best-by date come last. 1 is the next to open.`,
    inputs: [input(phrase('Lots of this food still to eat'), line.order.length, phrase('lots'), 'computed')],
    steps: orderSteps(line, at),
    missing: at.past
      ? say`It is past its best-quality date: check, eat or clear out.`
      : at.left === 0
        ? say`None is left.`
        : leftMissing(line, at),
    ...(at.past ? { cautions: cautionsOf(line, true) } : {}),
  };
}

/** Explains one planning figure of a lot. */
export function lotWorking(
  line: LineReckoning,
  at: LotReckoning,
  column: keyof LotFigures,
  value: PlanValue,
): Working {
  const own = at.lot.container === null ? 'containers' : measureName(at.lot.container);
  const title = TITLES[column];
  switch (column) {
    case 'left':
      return working(title, value, own, left(line, at));
    case 'months_kept':
      return working(title, value, phrase('months'), monthsKept(line, at));
    case 'best_by':
      return working(title, value, phrase('day'), bestBy(line, at));
    case 'days_left':
      return working(title, value, phrase('days'), daysLeft(line, at));
    case 'holds': {
      const one = at.lot.container === null ? null : holdsOf(at.lot.container, 1, line.bridges);
      return working(title, value, one?.ok ? pluralOf(one.value.unit) : 'quarts', holds(line, at));
    }
    case 'servings':
      return working(title, value, phrase('servings'), servings(line, at));
    case 'eaten_by':
      return working(title, value, phrase('day'), queue(line, at, 'eaten_by'));
    case 'at_risk':
      return working(title, value, own, queue(line, at, 'at_risk'));
    case 'use_first':
      return working(title, value, phrase('place in the queue'), useFirst(line, at));
    default:
      return working(title, value, phrase('weeks'), explainWeeks(line, 'usual'));
  }
}
