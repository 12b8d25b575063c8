/** A line as far as its tick goes: `amount` of `measure`; a line that says more than was ticked asks again. */
export interface Tickable {
  /** Stays the same for as long as the line stands for the same thing. */
  readonly key: string;
  readonly amount: number;
  readonly measure: string;
}

/** `more`: it was ticked, and more of it is needed since. */
export type TickState = 'open' | 'ticked' | 'more';

type Mark = readonly [amount: number, measure: string];
type Marks = Readonly<Record<string, Mark>>;

/** Weeks of one book whose ticks are kept; older ones are let go. */
const WEEKS_KEPT = 26;

const storageKey = (book: string): string => `croft-ticks ${book}`;

const isMark = (value: unknown): value is Mark =>
  Array.isArray(value) && typeof value[0] === 'number' && typeof value[1] === 'string';

/** What was kept, as far as it can be read: others may have written there. */
function readMarks(text: string | null): Map<string, Marks> {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text ?? '{}');
  } catch {
    parsed = {};
  }
  const weeks = new Map<string, Marks>();
  if (typeof parsed !== 'object' || parsed === null) return weeks;
  for (const [week, marks] of Object.entries(parsed)) {
    if (typeof marks !== 'object' || marks === null) continue;
    weeks.set(week, Object.fromEntries(Object.entries(marks).filter(([, mark]) => isMark(mark))) as Marks);
  }
  return weeks;
}

/**
 * The ticks of the lists, kept in this browser by book and week; in memory alone where the browser keeps nothing.
 * They are of the person with the list in hand, so they are no part of the book and no step of its undo.
 */
export class Ticks {
  readonly #storage: Storage | null;
  readonly #memory = new Map<string, string>();
  #read: { readonly text: string | null; readonly weeks: ReadonlyMap<string, Marks> } | null = null;

  constructor(storage: () => Storage = () => localStorage) {
    this.#storage = usable(storage);
  }

  /** False where ticks are gone with the page. */
  get stay(): boolean {
    return this.#storage !== null;
  }

  /** Whether storage said that another tab ticked something of this book. */
  concerns(event: StorageEvent, book: string): boolean {
    return event.key === null || event.key === storageKey(book);
  }

  stateOf(book: string, week: string, { key, amount, measure }: Tickable): TickState {
    const marks = this.#weeks(book).get(week) ?? {};
    const mark = Object.hasOwn(marks, key) ? marks[key] : undefined;
    if (!mark) return 'open';
    return mark[1] === measure && amount <= mark[0] * (1 + 1e-9) ? 'ticked' : 'more';
  }

  set(book: string, week: string, { key, amount, measure }: Tickable, ticked: boolean): void {
    const weeks = new Map(this.#weeks(book));
    const { [key]: _, ...others } = weeks.get(week) ?? {};
    weeks.set(week, ticked ? { ...others, [key]: [amount, measure] } : others);
    const kept = [...weeks]
      .filter(([, marks]) => Object.keys(marks).length > 0)
      .sort(([a], [b]) => (a < b ? 1 : -1))
      .slice(0, WEEKS_KEPT);
    this.#write(storageKey(book), JSON.stringify(Object.fromEntries(kept)));
  }

  #weeks(book: string): ReadonlyMap<string, Marks> {
    const key = storageKey(book);
    const text = this.#memory.get(key) ?? this.#storage?.getItem(key) ?? null;
    if (this.#read?.text !== text || text === null) this.#read = { text, weeks: readMarks(text) };
    return this.#read!.weeks;
  }

  #write(key: string, text: string): void {
    try {
      if (!this.#storage) throw new Error('nothing is kept');
      this.#storage.setItem(key, text);
      this.#memory.delete(key);
    } catch {
      this.#memory.set(key, text);
    }
  }
}

/** The storage if the browser lets us write to it: some private windows, and strict settings, do not. */
function usable(storage: () => Storage): Storage | null {
  try {
    const found = storage();
    found.setItem('croft-ticks try', '1');
    found.removeItem('croft-ticks try');
    return found;
  } catch {
    return null;
  }
}
