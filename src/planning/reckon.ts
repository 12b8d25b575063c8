import type { Problem, Result } from '../problem.js';
import type { Bridge } from '../units/index.js';
import { phrase } from '../words/index.js';
import { type AllotResult, allot } from './allot.js';
import { bestByOf, ownMonthsOf, type QualityMonths, qualityMonths } from './best-by.js';
import { isDay } from './dates.js';
import { atBasis, type Guide } from './guide.js';
import { comingHarvest, type Harvest, seasonOfRow } from './harvest.js';
import { type Measures, measuresOf } from './measure.js';
import { type Eaten, eatInOrder, eatingOrder, isPast, type QueueLot } from './queue.js';
import { type Season, weeksOutside } from './season.js';
import type { StockLot } from './stock.js';
import type { DayNumber, Household, LineInput, Lot } from './types.js';
import { chooseUse, learnUse, type Observed, type Use, type UseOnDay } from './use.js';
import { isAmount, tidy } from './words.js';

/** A lot with what was found out about it. */
export interface LotReckoning {
  readonly lot: Lot;
  readonly bestBy: DayNumber | null;
  /** Own containers left; null when the lot does not count (yet). */
  readonly left: number | null;
  readonly toCounted: number | null;
  readonly past: boolean;
  /** Why the count or the container cannot be reckoned with. */
  readonly countProblem: Problem | null;
  readonly bridgeProblem: Problem | null;
}

/** All that was worked out for a line before it is laid out in columns. Amounts in counted-in containers. */
export interface LineReckoning {
  readonly input: LineInput;
  readonly household: Household;
  readonly guide: Guide;
  readonly bridges: readonly Bridge[];
  readonly measures: Measures;
  readonly countedIn: string | null;
  readonly months: Result<QualityMonths>;
  readonly lots: ReadonlyMap<string, LotReckoning>;
  readonly allotted: AllotResult;
  readonly season: Season | null;
  readonly seasonProblem: Problem | null;
  readonly harvest: Harvest | null;
  readonly observed: Observed;
  readonly use: Use | null;
  /** Use per week that the harvest is planned on: the range's higher end on a lean basis. */
  readonly planned: number | null;
  /** Null where nothing could be turned into the counted-in container. */
  readonly onHand: number | null;
  /** On hand, less what is past best-by and not still counted on. */
  readonly countedOn: number | null;
  readonly order: readonly QueueLot[];
  readonly eaten: ReadonlyMap<string, Eaten>;
}

const BAD_COUNT: Problem = {
  code: 'bad-amount',
  message: phrase('The count put up is not a number from 0 up.'),
  mend: phrase('Write how many containers were put up, as in 12.'),
};

/** The counted-in container of a line: that of its Foods row, else that of its first lot. */
export function countedInOf(input: LineInput): string | null {
  return input.row?.countedIn ?? input.lots.find((lot) => lot.container !== null)?.container ?? null;
}

/** Works out a food line. Pure; n log n in lots and draws. `household.asOf` must be a day. */
export function reckonLine(
  input: LineInput,
  household: Household,
  guide: Guide,
  weekPlan: number | null,
): LineReckoning {
  const { asOf } = household;
  const bridges = guide.bridges(input.food);
  const measures = measuresOf(bridges);
  const countedIn = countedInOf(input);
  const months = qualityMonths(input.way, input.food, ownMonthsOf(input.row), household.basis, guide);
  const known = months.ok ? months.value : null;

  const stock: StockLot[] = [];
  for (const lot of input.lots) {
    const putUpOn = isDay(lot.putUpOn) ? lot.putUpOn : null;
    if (lot.container === null || !isAmount(lot.count) || (putUpOn !== null && putUpOn > asOf)) continue;
    stock.push({
      id: lot.id,
      container: lot.container,
      count: lot.count,
      putUpOn,
      bestBy: bestByOf(lot, known),
    });
  }
  const allotted = allot(stock, input.draws, countedIn, asOf, measures);

  const lots = new Map<string, LotReckoning>();
  for (const lot of input.lots) {
    const bestBy = bestByOf(lot, known);
    const bridge =
      lot.container !== null && countedIn !== null ? measures.factor(lot.container, countedIn) : null;
    lots.set(lot.id, {
      lot,
      bestBy,
      left: allotted.left.get(lot.id) ?? null,
      toCounted: bridge?.ok ? bridge.value : null,
      past: isPast({ bestBy, stillCounting: lot.stillCounting }, asOf),
      countProblem: lot.count !== null && !isAmount(lot.count) ? BAD_COUNT : null,
      bridgeProblem: bridge && !bridge.ok ? bridge.problem : null,
    });
  }

  const { season, problem: seasonProblem } = seasonOfRow(input.row);
  const uses = usesOf(input, allotted, countedIn, measures);
  const observed = learnUse(uses, allotted.stockDays, season, household.ledgerFrom, asOf);
  const use = chooseUse(input.row?.ownUse ?? null, observed.learned, weekPlan, input.suggested);
  const order = eatingOrder(queueOf(lots), asOf);
  return {
    input,
    household,
    guide,
    bridges,
    measures,
    countedIn,
    months,
    lots,
    allotted,
    season,
    seasonProblem,
    harvest: comingHarvest(season, input.row?.nextSupply ?? null, asOf),
    observed,
    use,
    planned: use ? atBasis(use, household.basis, 'high') : null,
    ...sums(lots, countedIn),
    order,
    eaten: use ? eatInOrder(order, use.usual, (day) => weeksOutside(asOf, day, season)) : new Map(),
  };
}

/** Net draws that are use, each on its day. */
function usesOf(
  input: LineInput,
  allotted: AllotResult,
  countedIn: string | null,
  measures: Measures,
): UseOnDay[] {
  const uses: UseOnDay[] = [];
  if (countedIn === null) return uses;
  for (const draw of input.draws) {
    if (draw.purpose === 'gift' || draw.purpose === 'spoiled') continue;
    if (draw.purpose === 'count' && draw.notUse) continue;
    const net = allotted.taken.get(draw.id)?.net ?? null;
    if (net === null || !isDay(draw.date)) continue;
    const factor = measures.factorOrNull(draw.container ?? countedIn, countedIn);
    if (factor !== null) uses.push({ day: draw.date, amount: net * factor });
  }
  return uses;
}

function queueOf(lots: ReadonlyMap<string, LotReckoning>): QueueLot[] {
  const queue: QueueLot[] = [];
  for (const { lot, left, bestBy, toCounted } of lots.values()) {
    if (left === null || left <= 0) continue;
    const putUpOn = isDay(lot.putUpOn) ? lot.putUpOn : null;
    queue.push({ id: lot.id, left, bestBy, putUpOn, stillCounting: lot.stillCounting, toCounted });
  }
  return queue;
}

function sums(
  lots: ReadonlyMap<string, LotReckoning>,
  countedIn: string | null,
): Pick<LineReckoning, 'onHand' | 'countedOn'> {
  if (countedIn === null) return { onHand: null, countedOn: null };
  let onHand = 0;
  let countedOn = 0;
  let met = 0;
  let unmet = 0;
  for (const { left, toCounted, past } of lots.values()) {
    if (left === null) continue;
    if (toCounted === null) {
      unmet += 1;
      continue;
    }
    met += 1;
    onHand += left * toCounted;
    if (!past) countedOn += left * toCounted;
  }
  // Zero would be a false answer where everything that stands there is in some other measure.
  if (met === 0 && unmet > 0) return { onHand: null, countedOn: null };
  return { onHand: tidy(onHand), countedOn: tidy(countedOn) };
}
