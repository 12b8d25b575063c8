import { type BookDoc, KINDS, parseBook, type SheetKind } from '../../src/book/index.js';
import type { CalcEngine, EngineInput } from '../../src/engine/calc-engine.js';
import { HyperFormulaEngine } from '../../src/engine/hyperformula-engine.js';
import { LiveBook } from '../../src/live/live-book.js';
import { parseDay } from '../../src/planning/parse-date.js';
import { AS_OF } from '../support/random-book.js';
import { expectSame, type Flat, flat } from './flat.js';

const day = parseDay(AS_OF);
if (!day.ok) throw new Error(day.problem.message);
export const today = (): number => day.value;
const context = () => ({ asOf: today(), basis: 'usual' as const });

export const newEngine = (): CalcEngine => new HyperFormulaEngine(context());

type Sheets = readonly { readonly id: string; readonly cells: readonly (readonly EngineInput[])[] }[];

/**
 * An engine that is emptied instead of built anew: to build one takes longer than all the rest of a small
 * book. Every `RENEWED` books it is built anew all the same.
 */
class EmptiedEngine {
  static readonly RENEWED = 100;
  #engine: HyperFormulaEngine | undefined;
  #sheets: readonly string[] = [];
  #uses = 0;

  lend(): CalcEngine {
    if (this.#uses++ % EmptiedEngine.RENEWED === 0) {
      this.#engine?.close();
      this.#engine = undefined;
    }
    const fresh = this.#engine === undefined;
    this.#engine ??= new HyperFormulaEngine(context());
    const engine = this.#engine;
    return new Proxy(engine, {
      get: (_, name) => {
        if (name === 'close') return () => {};
        if (name === 'open') return (sheets: Sheets) => this.#open(engine, sheets, fresh);
        const value: unknown = Reflect.get(engine, name, engine);
        return typeof value === 'function' ? value.bind(engine) : value;
      },
    });
  }

  #open(engine: HyperFormulaEngine, sheets: Sheets, fresh: boolean): void {
    if (fresh) engine.open(sheets);
    else {
      for (const id of this.#sheets) engine.removeSheet(id);
      // All of them before any content, so that references between them are found.
      for (const { id } of sheets) engine.addSheet(id, []);
      engine.set(
        sheets.flatMap(({ id, cells }) =>
          cells.flatMap((line, row) =>
            line.flatMap((input, column) => (input === null ? [] : [{ sheet: id, row, column, input }])),
          ),
        ),
      );
    }
    this.#sheets = sheets.map(({ id }) => id);
  }
}

const emptied = new EmptiedEngine();

export function parsed(text: string): BookDoc {
  const read = parseBook(text);
  if (!read.ok) throw new Error(`the saved book cannot be opened: ${JSON.stringify(read.problems)}`);
  return read.book;
}

export const opened = (doc: BookDoc, engine: CalcEngine = newEngine()): LiveBook =>
  new LiveBook(doc, { engine, today });

const same = (a: unknown, b: unknown): boolean => Object.is(a, b) || JSON.stringify(a) === JSON.stringify(b);

function expectSound(value: unknown, where: string): void {
  if (typeof value === 'number' && (!Number.isFinite(value) || Object.is(value, -0)))
    throw new Error(`${where} is ${Object.is(value, -0) ? '-0' : value}`);
}

/** Every planning column of the sheet's kind is there, with what the kind says of it. */
export function expectPlanningColumns(live: LiveBook): void {
  for (const { id, kind } of live.sheets()) {
    const there = new Map(live.columns(id).map((column) => [column.id, column]));
    for (const declared of KINDS[kind as SheetKind].columns) {
      const column = there.get(declared.id);
      if (!column) throw new Error(`${id} has lost its column ${declared.id}`);
      if (column.role !== declared.role || column.type !== declared.type)
        throw new Error(`${id}/${declared.id} is ${column.role} of type ${column.type}`);
    }
  }
}

/** Nobody can have eaten what was never there. */
function expectNoDebt(live: LiveBook): void {
  const shelf = live.sheetOfKind('shelf');
  for (const row of shelf === undefined ? [] : live.rowIds(shelf)) {
    const left = live.value(shelf!, row, 'left');
    if (typeof left === 'number' && left < 0) throw new Error(`${left} is left of lot ${row}`);
  }
}

const IN_COLUMN = /^sheets\/([^/]+)\/rows\/[^/]+\/(?:cells\/|note:|colour:)(.+)$/;

/** Whatever stands in a row stands in a column that is there: nothing is held unseen. */
function expectNothingUnseen(live: LiveBook, book: Flat): void {
  const columns = new Map(
    live.sheets().map(({ id }) => [id, new Set(live.columns(id).map(({ id: column }) => column))]),
  );
  for (const path of book.keys()) {
    const [, sheet, column] = IN_COLUMN.exec(path) ?? [];
    if (sheet !== undefined && !columns.get(sheet)?.has(column!))
      throw new Error(`${path} stands in a column that is not there`);
  }
}

/** How thoroughly a book is compared with one built anew from what it saved. */
export interface Thoroughness {
  /** Problems, units and workings too, not only values. */
  readonly words?: boolean;
}

/**
 * The book is saved, read and built anew: nothing of what was entered may be another, and every cell must
 * show exactly the same. Answers how many cells were compared.
 */
export function expectLikeRebuilt(live: LiveBook, { words = false }: Thoroughness = {}): number {
  const doc = live.toJSON();
  const before = flat(doc);
  for (const [path, value] of before) expectSound(value, path);
  const again = opened(parsed(JSON.stringify(doc)), emptied.lend());
  let compared = 0;
  try {
    expectSame(before, flat(again.toJSON()), 'saved and read again');
    expectPlanningColumns(live);
    expectNoDebt(live);
    expectNothingUnseen(live, before);
    for (const { id: sheet } of live.sheets()) {
      const columns = live.columns(sheet).map(({ id }) => id);
      for (const row of live.rowIds(sheet)) {
        for (const column of columns) {
          const [shown, fresh] = [live.value(sheet, row, column), again.value(sheet, row, column)];
          compared++;
          const where = `${sheet}/${row}/${column}`;
          expectSound(shown, where);
          if (!same(shown, fresh))
            throw new Error(`${where} shows ${JSON.stringify(shown)}, built anew ${JSON.stringify(fresh)}`);
          if (!words) continue;
          for (const ask of ['problem', 'unit', 'working'] as const) {
            const [said, anew] = [live[ask](sheet, row, column), again[ask](sheet, row, column)];
            if (!same(said, anew))
              throw new Error(
                `${where}: ${ask} is ${JSON.stringify(said)}, built anew ${JSON.stringify(anew)}`,
              );
          }
        }
      }
    }
  } finally {
    again.close();
  }
  return compared;
}
