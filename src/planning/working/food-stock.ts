import { phrase, say } from '../../words/index.js';
import { measureName } from '../measure.js';
import type { LineReckoning } from '../reckon.js';
import type { WorkingInput } from '../types.js';
import { NO_USE, NOT_FROM_SHELF } from '../words.js';
import {
  amount,
  asOfInput,
  call,
  countedUnit,
  type Explained,
  input,
  iso,
  perWeek,
  seasonArguments,
  seasonInputs,
  some,
} from './parts.js';
import { learnedSteps, stockInputs, stockMissing, useInput, useMissing, useOrigin } from './shared.js';

/** On hand: every lot in the counted-in container. */
export function explainOnHand(line: LineReckoning): Explained {
  const byContainer = new Map<string, { left: number; counted: number | null; lots: number }>();
  for (const { lot, left, toCounted } of line.lots.values()) {
    if (left === null || lot.container === null) continue;
    const sum = byContainer.get(lot.container) ?? { left: 0, counted: 0, lots: 0 };
    byContainer.set(lot.container, {
      left: sum.left + left,
      counted: toCounted === null || sum.counted === null ? null : sum.counted + left * toCounted,
      lots: sum.lots + 1,
    });
  }
  const inputs: WorkingInput[] = [];
  const steps: string[] = [];
  for (const [container, sum] of byContainer) {
    inputs.push(input(say`Left in ${some(sum.lots, 'lot')}`, sum.left, measureName(container), 'computed'));
    if (sum.counted === null) {
      steps.push(say`${amount(sum.left, container)} cannot be turned into ${countedUnit(line)}: left out`);
    } else if (container !== line.countedIn) {
      steps.push(`${amount(sum.left, container)} = ${amount(sum.counted, line.countedIn)}`);
    }
  }
  if (line.onHand !== null) steps.push(say`in all ${amount(line.onHand, line.countedIn)}`);
  return {
    rule: say`What is left of every lot of this food kept this way, in ${countedUnit(line)}. Lots past best-by are in it.`,
    inputs,
    steps,
    missing: stockMissing(line),
  };
}

const END = { low: '10 %', high: '90 %' } as const;

/** Use per week at one end of its range, or its usual figure. */
export function explainUse(line: LineReckoning, which: 'low' | 'usual' | 'high'): Explained {
  const { use, observed } = line;
  const origin = useOrigin(line);
  if (which !== 'usual') {
    const ownOnly = use !== null && use.origin !== 'learned';
    const { learned } = observed;
    return {
      rule: say`The ${END[which]} end of what use per week may truly be, judged by the draws seen: the size of a typical draw × the ${END[which]} quantile of a Gamma distribution (Jeffreys posterior of a rate). Few draws give a wide range.`,
      inputs:
        learned && !ownOnly
          ? [
              input(
                phrase('Size of a typical draw (Σa² ÷ Σa)'),
                learned.typical,
                countedUnit(line),
                'learned',
              ),
              input(phrase('Typical draws taken'), learned.times, phrase('draws'), 'learned'),
              input(phrase('Observed weeks'), learned.weeks, phrase('weeks'), 'learned'),
            ]
          : [],
      steps: ownOnly
        ? []
        : [
            ...learnedSteps(line),
            learned && use && !(which === 'low' && learned.draws === 0)
              ? say`${amount(learned.typical, line.countedIn)} × ${END[which]} quantile of Gamma(${some(learned.times, 'draw')} + ½, rate ${some(learned.weeks, 'week')}) = ${amount(use[which] ?? 0, line.countedIn)} a week`
              : null,
          ],
      missing: ownOnly ? say`A figure that is not learned from draws has no range.` : useMissing(line),
    };
  }
  const rule =
    use?.origin === 'own'
      ? say`Your own use per week, from Foods. It goes before what was learned.`
      : use?.origin === 'computed'
        ? say`The average of the week plan, as there is neither an own figure nor enough draws to learn from.`
        : use?.origin === 'published'
          ? say`A published amount for as many people, spread over the year: only a suggestion, until your own figure or your draws say better.`
          : say`What was drawn and used, ÷ the weeks observed. Gifts and spoiled jars are not use; corrections are taken off the draw they correct; days without stock and days of the fresh season are left out.`;
  const learned = observed.learned;
  return {
    rule,
    inputs:
      use?.origin === 'learned' && learned
        ? [
            input(phrase('Drawn and used'), learned.total, countedUnit(line), 'learned'),
            input(phrase('Observed weeks'), learned.weeks, phrase('weeks'), 'learned'),
          ]
        : use
          ? [
              input(
                phrase('Use per week'),
                use.usual,
                perWeek(line),
                origin,
                use.origin === 'published' ? line.input.suggested?.source : undefined,
              ),
            ]
          : [],
    steps:
      use?.origin === 'learned'
        ? learnedSteps(line)
        : use?.origin === 'published'
          ? (line.input.suggested?.steps ?? [])
          : [],
    missing: useMissing(line),
  };
}

/** Weeks of supply at the usual use, or at the end of its range that gives fewer (low) or more (high). */
export function explainWeeks(line: LineReckoning, which: 'low' | 'usual' | 'high'): Explained {
  const { use, countedOn } = line;
  const rate = !use ? null : which === 'usual' ? use.usual : which === 'low' ? use.high : use.low;
  const end = which === 'usual' ? '' : which === 'low' ? say`, higher end` : say`, lower end`;
  const noRange = use !== null && use.origin !== 'learned' && which !== 'usual';
  return {
    rule: say`What is counted on ÷ use per week${end}. Lots past best-by are left out unless you still count on them.`,
    inputs: [
      ...stockInputs(line),
      ...(rate === null || !use
        ? []
        : which === 'usual'
          ? useInput(line)
          : [input(say`Use per week${end}`, rate, perWeek(line), use.origin)]),
    ],
    steps: [
      countedOn === null || rate === null
        ? null
        : rate === 0
          ? say`nothing is used: no number of weeks`
          : say`${amount(countedOn, line.countedIn)} ÷ ${amount(rate, line.countedIn)} a week = ${some(countedOn / rate, 'week')}`,
    ],
    ...(countedOn !== null && rate !== null ? { formula: call('WEEKS_OF_SUPPLY', countedOn, rate) } : {}),
    missing: noRange
      ? say`A figure that is not learned from draws has no range.`
      : countedOn === null
        ? stockMissing(line)
        : useMissing(line),
  };
}

/** The day on which the stock counted on runs out. */
export function explainRunsOut(line: LineReckoning, value: string | number | null): Explained {
  const { use, countedOn, household, season } = line;
  const both = use !== null && countedOn !== null;
  return {
    rule: say`The day by which what is counted on is eaten at the usual use per week. Within the fresh season nothing is taken from the shelf.`,
    inputs: [...stockInputs(line), ...useInput(line), asOfInput(line), ...seasonInputs(line)],
    steps: both
      ? [
          use.usual === 0 ? say`nothing is used` : null,
          use.usual > 0 && value !== NOT_FROM_SHELF
            ? say`${amount(countedOn, line.countedIn)} ÷ ${amount(use.usual, line.countedIn)} a week = ${some(countedOn / use.usual, 'week')} of eating from the shelf`
            : null,
          value !== NO_USE && value !== null && value !== NOT_FROM_SHELF
            ? say`from ${iso(household.asOf)}${season ? say`, without the fresh season` : ''}: ${value}`
            : null,
        ]
      : [],
    ...(both
      ? {
          formula: call('RUNS_OUT_ON', countedOn, use.usual, iso(household.asOf), ...seasonArguments(season)),
        }
      : {}),
    missing: countedOn === null ? stockMissing(line) : useMissing(line),
  };
}
