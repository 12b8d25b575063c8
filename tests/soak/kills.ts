import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout as rest } from 'node:timers/promises';
import { build, preview } from 'vite';
import { type Entry, editWithoutPause, read, SAVED } from './kill-edits.js';
import { kill, type Running, startBrowser } from './killable.js';

export interface KillFigures {
  readonly kills: number;
  /** Entries of which the page was told that they are saved. */
  readonly acknowledged: number;
  /** Those among them that were not there afterwards. */
  readonly lost: number;
  /** Times that the book did not open as it was, whole. */
  readonly unreadable: number;
  readonly seconds: number;
}

export interface KillOptions {
  readonly kills: number;
  readonly seed: number;
  readonly said?: (figures: KillFigures) => void;
  /** Told of every opening that lacks something: in words, with what stands there instead. */
  readonly missed?: (what: string) => void;
}

/** A profile is used for so many kills, so that what one spoils shows also later. */
const A_PROFILE = 20;
/** Milliseconds of editing, at most. */
const LONGEST = 900;

const repository = resolve(import.meta.dirname, '../..');
const temporary = (name: string): string => mkdtempSync(join(tmpdir(), `croft-${name}-`));
const remove = (folder: string): void =>
  rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });

/** Serves the demo as it is shipped; answers its address and what ends that. */
async function demo(): Promise<{ address: string; end: () => Promise<void> }> {
  const outDir = temporary('demo');
  const configFile = resolve(repository, 'vite.config.ts');
  await build({ configFile, logLevel: 'error', build: { outDir } });
  const server = await preview({
    configFile,
    logLevel: 'error',
    build: { outDir },
    preview: { port: 0, host: '127.0.0.1' },
  });
  const { port } = server.httpServer.address() as { port: number };
  const end = async () => {
    await server.close();
    remove(outDir);
  };
  return { address: `http://127.0.0.1:${port}/index.html`, end };
}

/** What must be there, by cell: the turn in which it was last said to be saved. */
class Ledger {
  readonly #by = new Map<string, Entry>();
  acknowledged = 0;
  /** Of every turn so far, said to be saved or not. */
  lastTurn = 0;

  note(entries: readonly Entry[]): void {
    for (const entry of entries) {
      this.acknowledged++;
      this.#by.set(`${entry.sheet}/${entry.row}/${entry.column}`, entry);
      this.lastTurn = Math.max(this.lastTurn, entry.turn);
    }
  }

  get entries(): Entry[] {
    return [...this.#by.values()];
  }
}

/** What an opening lacks, the first few by name. */
function missing(lacks: readonly (readonly [Entry, unknown])[], known: number, opening: number): string {
  const turns = lacks.map(([{ turn }]) => turn);
  const shown = lacks
    .slice(0, 5)
    .map(([entry, found]) => `${entry.sheet}/${entry.row}/${entry.column}: ${found}, not ${entry.turn}`);
  return `opening ${opening} of a profile lacks ${lacks.length} of ${known} entries, of turns ${Math.min(...turns)} to ${Math.max(...turns)}: ${shown.join('; ')}`;
}

/** Opens the demo and says whether the book is there, as it was. */
async function open({ page }: Running, address: string): Promise<boolean> {
  await page.goto(address);
  await page.waitForFunction(
    () => {
      const book = document.querySelector('croft-book');
      return book?.live && book.status.state !== 'opening';
    },
    undefined,
    { timeout: 120_000 },
  );
  const { state, problem, problems } = await page.evaluate(() => {
    const book = document.querySelector('croft-book')!;
    return { state: book.status.state, problem: book.status.problem?.code, problems: book.problems.length };
  });
  return (state === 'saved' || state === 'saving') && problem === undefined && problems === 0;
}

/** Kills a browser while it edits, again and again, and counts what was lost. */
export async function soakKills({ kills, seed, said, missed }: KillOptions): Promise<KillFigures> {
  const from = performance.now();
  let state = seed >>> 0;
  const random = (below: number): number => {
    state = (state * 1_664_525 + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
  const { address, end } = await demo();
  let [killed, before, lost, unreadable] = [0, 0, 0, 0];
  let ledger = new Ledger();
  const figures = (): KillFigures => ({
    kills: killed,
    acknowledged: before + ledger.acknowledged,
    lost,
    unreadable,
    seconds: Math.round((performance.now() - from) / 1000),
  });
  try {
    while (killed < kills) {
      const profile = temporary('kill');
      before += ledger.acknowledged;
      ledger = new Ledger();
      const most = Math.min(A_PROFILE, kills - killed);
      try {
        for (let i = 0; i <= most; i++) {
          const running = await startBrowser(profile);
          try {
            if (!(await open(running, address))) unreadable++;
            const entries = ledger.entries;
            const there = await running.page.evaluate(read, entries);
            // A later entry in the same cell may be there although nobody was told.
            const lacks = entries
              .map((entry, n) => [entry, there[n]] as const)
              .filter(([{ turn }, found]) => !(Number(found) >= turn));
            lost += lacks.length;
            if (lacks.length > 0) missed?.(missing(lacks, entries.length, i));
            if (i === most) break;
            await running.page.exposeFunction(SAVED, (saved: Entry[]) => ledger.note(saved));
            const turn = ledger.lastTurn + 10_000;
            const editing = running.page.evaluate(editWithoutPause, { from: turn, seed: random(2 ** 31) });
            editing.catch(() => {});
            await rest(random(LONGEST));
            killed++;
          } finally {
            await kill(running);
          }
          said?.(figures());
        }
      } finally {
        remove(profile);
      }
    }
  } finally {
    await end();
  }
  return figures();
}
