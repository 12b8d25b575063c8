import type { Problem } from '../problem.js';
import { type Entry, type Ledger, readLedger } from './ledger.js';
import type { Measures } from './measure.js';
import { Stock, type StockLot } from './stock.js';
import { StockDays, type StockSpan } from './stock-days.js';
import { lotNotThere, type Piece, type Running, storedOf, tooMuchBack } from './stored.js';
import type { Allotment, DayNumber, Draw } from './types.js';

/** What one draw came to. Amounts of `allotted` are in each lot's own containers; negative = given back. */
export interface Taken {
  readonly allotted: Allotment;
  /** Lot ids in the order taken. */
  readonly order: readonly string[];
  /** Not found on the shelf, in the draw's own measure; 0 when all was. */
  readonly notFound: number;
  /** The draw after its corrections, in its own measure; null for a correction. */
  readonly net: number | null;
  readonly problem: Problem | null;
  /** False for a draw that does not count (yet): after the as-of date, without an amount, or refused. */
  readonly counts: boolean;
}

export interface AllotResult {
  /** Containers left of each lot, in its own container. */
  readonly left: ReadonlyMap<string, number>;
  readonly taken: ReadonlyMap<string, Taken>;
  /** Spans of days on which something of the line stood on the shelf. */
  readonly stockDays: readonly StockSpan[];
}

const CRUMB = 1e-9;

/**
 * Allots draws to lots: by date (undated first), then by id; what was stored with a draw first (no other draw
 * takes it), then the lot it names, then oldest first. A correction changes the draw that it corrects, as if that had been written
 * so from the first. Linear in lots and draws but for a logarithm.
 */
export function allot(
  lots: readonly StockLot[],
  draws: readonly Draw[],
  countedIn: string | null,
  asOf: DayNumber,
  measures: Measures,
): AllotResult {
  const ledger = readLedger(draws, countedIn, asOf, measures);
  const run = new Allotting(new Stock(lots), measures);
  run.all(ledger, asOf);
  return run.result(ledger, asOf);
}

class Allotting {
  readonly #running = new Map<string, Running>();
  readonly #piecesOf = new Map<number, Piece[]>();
  readonly #pieces: Piece[] = [];
  readonly #days = new StockDays();
  #here = 0;

  constructor(
    readonly stock: Stock,
    readonly measures: Measures,
  ) {}

  all(ledger: Ledger, asOf: DayNumber): void {
    const { stock } = this;
    this.#reservePosted(ledger);
    for (let rank = 0; rank < stock.lots.length; rank++) stock.arrive(rank);
    for (const entry of ledger.undated) this.#post(entry, ledger);
    stock.clear();
    const arrivals: number[] = [];
    stock.lots.forEach((lot, rank) => {
      if (lot.putUpOn === null) this.#arrive(rank, null);
      else arrivals.push(rank);
    });
    arrivals.sort((a, b) => stock.lots[a]!.putUpOn! - stock.lots[b]!.putUpOn!);
    let next = 0;
    const arriveUntil = (day: DayNumber) => {
      for (; next < arrivals.length && stock.lots[arrivals[next]!]!.putUpOn! <= day; next++) {
        this.#arrive(arrivals[next]!, stock.lots[arrivals[next]!]!.putUpOn);
      }
    };
    for (const entry of ledger.dated) {
      arriveUntil(entry.date!);
      this.#post(entry, ledger);
    }
    arriveUntil(asOf);
  }

  /** What posted draws took is theirs: a draw written in later, with an earlier date, takes from the rest. */
  #reservePosted(ledger: Ledger): void {
    const roots = [...ledger.undated, ...ledger.dated];
    for (const { draw } of [...roots, ...[...ledger.corrections.values()].flat()]) {
      for (const [rank, stored] of storedOf(draw, this.stock)) this.stock.reserve(rank, stored);
    }
  }

  #arrive(rank: number, day: DayNumber | null): void {
    this.stock.arrive(rank);
    if (this.stock.left[rank]! > 0) {
      this.#here += 1;
      this.#days.change(this.#here, day);
    }
  }

  #move(rank: number, amount: number, day: DayNumber | null): void {
    const before = this.stock.left[rank]!;
    this.stock.take(rank, amount);
    const after = this.stock.left[rank]!;
    // Undated draws come before the days are counted, so they move stock without marking a day.
    if (day === null || before > 0 === after > 0) return;
    this.#here += after > 0 ? 1 : -1;
    this.#days.change(this.#here, day);
  }

  #begin(entry: Entry): Running {
    const running: Running = {
      entry,
      pieces: [],
      notFound: 0,
      net: Math.max(0, entry.amount),
      gaveBack: new Map(),
      problem: entry.problem,
    };
    this.#running.set(entry.draw.id, running);
    return running;
  }

  #post(entry: Entry, ledger: Ledger): void {
    const root = this.#begin(entry);
    if (entry.amount > 0) this.#takeAll(root, entry, root, entry.amount);
    else if (entry.amount < 0) this.#giveBackLatest(root, -entry.amount);
    const corrections = ledger.corrections.get(entry.draw.id);
    if (!corrections) return;
    const group = [...root.pieces];
    for (const correction of corrections) {
      const running = this.#begin(correction);
      const inRoot = correction.amount * (this.measures.factorOrNull(correction.measure, entry.measure) ?? 0);
      if (correction.amount > 0) {
        root.net += inRoot;
        this.#takeAll(running, correction, root, correction.amount);
        group.push(...running.pieces);
      } else {
        root.net = Math.max(0, root.net + inRoot);
        this.#giveBackTo(running, root, group, -inRoot);
      }
    }
  }

  /** Takes `amount` (in the entry's measure): as stored, then from the lot named, then oldest first. */
  #takeAll(running: Running, entry: Entry, root: Running, amount: number): void {
    const { stock, measures } = this;
    const day = root.entry.date;
    let need = amount;
    const from = (rank: number, most = Number.POSITIVE_INFINITY) => {
      const factor = measures.factorOrNull(entry.measure, stock.lots[rank]!.container);
      if (factor === null || !stock.isHere(rank)) return false;
      const take = Math.min(need * factor, stock.left[rank]!, most);
      if (!(take > 0)) return false;
      const piece = { entry: root, rank, taken: take, amount: take };
      running.pieces.push(piece);
      this.#pieces.push(piece);
      const ofLot = this.#piecesOf.get(rank);
      if (ofLot) ofLot.push(piece);
      else this.#piecesOf.set(rank, [piece]);
      this.#move(rank, take, day);
      need -= take / factor;
      if (need <= CRUMB * amount) need = 0;
      return true;
    };
    const posted = storedOf(entry.draw, stock);
    for (const [rank, stored] of posted) stock.reserve(rank, -stored);
    for (const [rank, stored] of posted) {
      if (need > 0) from(rank, stored);
    }
    const named = entry.draw.lot ?? root.entry.draw.lot;
    if (named !== null) {
      const rank = stock.rankOf.get(named);
      if (rank === undefined || !stock.isHere(rank)) running.problem ??= lotNotThere();
      else if (need > 0) from(rank, stock.free(rank));
    }
    const meets = (container: string) => measures.factorOrNull(entry.measure, container) !== null;
    while (need > 0) {
      const rank = stock.next(meets);
      // An amount too small to be told from nothing is not found.
      if (rank < 0 || !from(rank, stock.free(rank))) break;
    }
    running.notFound = need;
  }

  /** Undoes `amount` (in the root's measure) of a draw: what was not found first, then from its last piece back. */
  #giveBackTo(running: Running, root: Running, group: readonly Piece[], amount: number): void {
    let rest = amount;
    const missed = Math.min(rest, root.notFound);
    root.notFound -= missed;
    rest -= missed;
    const stored = running.entry.draw.allotted;
    if (stored) {
      for (const piece of group) {
        const most = -(stored[this.stock.lots[piece.rank]!.id] ?? 0);
        if (most > 0) rest -= this.#shorten(running, piece, rest, most);
      }
    }
    for (let i = group.length - 1; i >= 0 && rest > CRUMB * amount; i--) {
      rest -= this.#shorten(running, group[i]!, rest);
    }
    if (rest > CRUMB * amount) running.problem ??= tooMuchBack();
  }

  /** A negative draw that names none to correct (a count that found more): undoes the latest draws, LIFO. */
  #giveBackLatest(running: Running, amount: number): void {
    const { draw } = running.entry;
    const stored = Object.keys(draw.allotted ?? {}).filter((id) => this.stock.rankOf.has(id));
    const named = draw.lot !== null ? [draw.lot] : stored;
    const lists =
      named.length > 0
        ? named.map((id) => this.#piecesOf.get(this.stock.rankOf.get(id) ?? -1) ?? [])
        : [this.#pieces];
    let rest = amount;
    for (const pieces of lists) {
      while (rest > CRUMB * amount) {
        const piece = pieces.at(-1);
        if (!piece) break;
        if (piece.amount > 0) {
          const back = this.#shorten(running, piece, rest);
          if (back === 0) break;
          rest -= back;
          if (!draw.notUse) {
            const inRoot = this.measures.factorOrNull(running.entry.measure, piece.entry.entry.measure) ?? 0;
            piece.entry.net = Math.max(0, piece.entry.net - back * inRoot);
          }
        }
        if (piece.amount <= CRUMB) pieces.pop();
      }
    }
    if (rest > CRUMB * amount) running.problem ??= tooMuchBack();
  }

  /** Shortens a piece by up to `amount`; answers by how much, in the measure that `amount` is in. */
  #shorten(by: Running, piece: Piece, amount: number, most = Number.POSITIVE_INFINITY): number {
    const measure = by.entry.corrected?.measure ?? by.entry.measure;
    const factor = this.measures.factorOrNull(measure, this.stock.lots[piece.rank]!.container);
    if (factor === null) return 0;
    const back = Math.min(amount * factor, piece.amount, most);
    if (!(back > 0)) return 0;
    piece.amount = piece.amount - back <= CRUMB ? 0 : piece.amount - back;
    by.gaveBack.set(piece.rank, (by.gaveBack.get(piece.rank) ?? 0) + back);
    this.#move(piece.rank, -back, (by.entry.corrected ?? by.entry).date);
    return back / factor;
  }

  result(ledger: Ledger, asOf: DayNumber): AllotResult {
    const { stock } = this;
    const taken = new Map<string, Taken>();
    for (const [id, problem] of ledger.refused) {
      taken.set(id, { allotted: {}, order: [], notFound: 0, net: null, problem, counts: false });
    }
    for (const [id, running] of this.#running) taken.set(id, this.#takenBy(running));
    const left = new Map(stock.lots.map((lot, rank) => [lot.id, stock.left[rank]!]));
    return { left, taken, stockDays: this.#days.spans(asOf) };
  }

  #takenBy(running: Running): Taken {
    const allotted: Record<string, number> = {};
    const order: string[] = [];
    const add = (rank: number, amount: number) => {
      const { id } = this.stock.lots[rank]!;
      if (allotted[id] === undefined) order.push(id);
      allotted[id] = (allotted[id] ?? 0) + amount;
    };
    // A draw's own pieces stand as first taken; what corrections gave back stands at the corrections.
    for (const piece of running.pieces) add(piece.rank, piece.taken);
    for (const [rank, amount] of running.gaveBack) add(rank, -amount);
    const isRoot = running.entry.corrected === null;
    return {
      allotted,
      order,
      notFound: running.notFound,
      net: isRoot ? running.net : null,
      problem: running.problem,
      counts: true,
    };
  }
}
