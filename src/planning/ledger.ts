import type { Problem } from '../problem.js';
import { phrase, say } from '../words/index.js';
import { isDay } from './dates.js';
import type { Measures } from './measure.js';
import type { DayNumber, Draw } from './types.js';
import { MOST } from './words.js';

/** A draw that counts: its amount can be reckoned with. */
export interface Entry {
  readonly draw: Draw;
  readonly date: DayNumber | null;
  readonly amount: number;
  /** Id of the container or unit that the amount is in. */
  readonly measure: string;
  /** For a correction: the draw at the end of the chain of corrections. */
  readonly corrected: Entry | null;
  readonly problem: Problem | null;
}

export interface Ledger {
  readonly undated: readonly Entry[];
  /** By date, then by id. */
  readonly dated: readonly Entry[];
  /** By the id of the draw that they correct; by date, then by id. */
  readonly corrections: ReadonlyMap<string, readonly Entry[]>;
  /** Draws that do not count, with the problem where there is one. */
  readonly refused: ReadonlyMap<string, Problem | null>;
}

const problem = (code: string, message: string, mend: string): Problem => ({ code, message, mend });

function entryOf(draw: Draw, countedIn: string | null, asOf: DayNumber): Entry | Problem | null {
  const measure = draw.container ?? countedIn;
  const { amount } = draw;
  if (amount === null || measure === null) return null;
  if (!(Math.abs(amount) <= MOST)) {
    const said = Number.isFinite(amount) ? `${amount}` : say`no number`;
    return problem('bad-amount', say`The amount is ${said}.`, say`Write the amount as a number, as in 2.`);
  }
  const date = isDay(draw.date) ? draw.date : null;
  if (date !== null && date > asOf) return null;
  return { draw, date, amount, measure, corrected: null, problem: null };
}

const inOrder = (a: Entry, b: Entry): number => {
  if (a.date !== b.date) return a.date === null ? -1 : b.date === null ? 1 : a.date - b.date;
  return a.draw.id < b.draw.id ? -1 : a.draw.id > b.draw.id ? 1 : 0;
};

/** The draw at the end of a chain of corrections; null where the chain is broken or runs in a ring. */
function rootOf(draw: Draw, byId: ReadonlyMap<string, Draw>): Draw | null {
  let at = draw;
  for (let steps = 0; at.corrects !== null; steps++) {
    const next = byId.get(at.corrects);
    if (!next || steps > 100) return null;
    at = next;
  }
  return at;
}

/** Sorts the draws of one line for allotment, and sets aside what cannot be reckoned with. */
export function readLedger(
  draws: readonly Draw[],
  countedIn: string | null,
  asOf: DayNumber,
  measures: Measures,
): Ledger {
  const byId = new Map(draws.map((draw) => [draw.id, draw]));
  const refused = new Map<string, Problem | null>();
  const roots = new Map<string, Entry>();
  const later: Entry[] = [];
  for (const draw of draws) {
    const entry = entryOf(draw, countedIn, asOf);
    if (entry === null || 'code' in entry) refused.set(draw.id, entry);
    else if (draw.corrects === null) roots.set(draw.id, entry);
    else later.push(entry);
  }
  const corrections = new Map<string, Entry[]>();
  for (const entry of later) {
    const { draw } = entry;
    const rootDraw = rootOf(draw, byId);
    const root = rootDraw ? roots.get(rootDraw.id) : undefined;
    if (!root) {
      // A correction of a draw that does not count yet waits with it.
      refused.set(draw.id, rootDraw ? null : NO_SUCH_DRAW);
      continue;
    }
    const bridge = measures.factor(entry.measure, root.measure);
    if (!bridge.ok) {
      refused.set(draw.id, bridge.problem);
      continue;
    }
    const list = corrections.get(root.draw.id);
    const whole = { ...entry, corrected: root };
    if (list) list.push(whole);
    else corrections.set(root.draw.id, [whole]);
  }
  for (const list of corrections.values()) list.sort(inOrder);
  const all = [...roots.values()].sort(inOrder);
  const firstDated = all.findIndex((entry) => entry.date !== null);
  const cut = firstDated < 0 ? all.length : firstDated;
  return { undated: all.slice(0, cut), dated: all.slice(cut), corrections, refused };
}

const NO_SUCH_DRAW = problem(
  'correction-names-no-draw',
  phrase('The draw that this corrects is not among the draws of this food.'),
  phrase('Choose the draw that it corrects.'),
);
