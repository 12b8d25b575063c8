import type { LiveBook } from '../live/live-book.js';
import type { DateOrder } from '../planning/parse-date.js';
import { cut } from '../problem.js';
import { dayComesFirst, say } from '../words/index.js';
import type { MetadataColumn } from './csvw-read.js';
import { guessReading, headingsOf } from './guess.js';
import { matchColumns, targetsOf } from './match.js';
import type { Reading, SourceTable } from './types.js';

/** Where one column of a file goes. */
export type Target =
  | { readonly to: 'column'; readonly column: string }
  | { readonly to: 'new'; readonly title: string }
  | { readonly to: 'leave out' };

export interface ColumnPlan {
  /** Place in the file, from 0. */
  readonly index: number;
  readonly heading: string;
  readonly target: Target;
  readonly reading: Reading;
}

/** All that is decided about a table before it is brought in. */
export interface ImportPlan {
  /** The first row gives titles and is not brought in. */
  readonly header: boolean;
  readonly place: { readonly sheet: string } | { readonly newSheet: string };
  readonly columns: readonly ColumnPlan[];
}

export interface PlanHints {
  readonly semicolons?: boolean;
  readonly metadata?: readonly MetadataColumn[] | undefined;
  /** What the columns were found to hold, by `guessReadings`; else it is found out here. */
  readonly guesses?: readonly Reading[] | undefined;
}

/** How dates with the year last are meant where a file does not tell, as when one types them. */
export const dateOrderOf = (live: LiveBook): DateOrder =>
  live.setting('measures') === 'metric' || dayComesFirst() ? 'day first' : 'month first';

/** How a column of the book wants its cells read, with what the file's own column tells about numbers and dates. */
export function readingFor(live: LiveBook, sheet: string, column: string, guessed: Reading): Reading {
  const view = live.column(sheet, column);
  if (!view) return guessed;
  const closed = view.declaration && !view.declaration.open && view.declaration.choices;
  const listed =
    closed && CLOSED.has(closed) ? (live.choices(sheet, null, column) ?? []).map(({ value }) => value) : [];
  return { ...guessed, type: view.type, choices: view.role === 'own' ? view.listed : listed };
}

/** Choices that are words of a short list; names of containers and the like have other ways of writing. */
const CLOSED: ReadonlySet<string> = new Set([
  'ways',
  'purposes',
  'sources',
  'meals',
  'line sources',
  'starts',
]);

/** A first plan for a table: everything guessed, nothing lost. `keep` holds what the person has said already. */
export function planFor(
  live: LiveBook,
  table: SourceTable,
  header: boolean,
  place: ImportPlan['place'],
  { semicolons = false, metadata, guesses }: PlanHints = {},
): ImportPlan {
  const body = header ? table.rows.slice(1) : table.rows;
  const headings = headingsOf(table.rows, header).map((heading, i) => metadata?.[i]?.title ?? heading);
  const hints = { dateOrder: dateOrderOf(live), semicolons };
  const readings = headings.map((_, i) => {
    const guessed = guesses?.[i] ?? guessReading(body, i, hints);
    return { ...guessed, ...metadata?.[i]?.reading };
  });
  const matched = 'sheet' in place ? matchColumns(headings, live.columns(place.sheet)) : [];
  const columns = headings.map((heading, index): ColumnPlan => {
    const column = matched[index] ?? null;
    if (!('sheet' in place))
      return { index, heading, target: { to: 'new', title: heading }, reading: readings[index]! };
    return column === null
      ? { index, heading, target: { to: 'leave out' }, reading: readings[index]! }
      : {
          index,
          heading,
          target: { to: 'column', column },
          reading: readingFor(live, place.sheet, column, readings[index]!),
        };
  });
  return { header, place, columns };
}

/** The plan with one column of the file going somewhere else. What went there before is left out. */
export function withTarget(
  live: LiveBook,
  plan: ImportPlan,
  index: number,
  target: Target,
  guessed: Reading,
): ImportPlan {
  return {
    ...plan,
    columns: plan.columns.map((each) => {
      if (each.index !== index) {
        const collides =
          target.to === 'column' && each.target.to === 'column' && each.target.column === target.column;
        return collides ? { ...each, target: { to: 'leave out' } as const } : each;
      }
      const reading =
        target.to === 'column' && 'sheet' in plan.place
          ? readingFor(live, plan.place.sheet, target.column, guessed)
          : guessed;
      return { ...each, target, reading };
    }),
  };
}

/** Columns of a sheet that something can go to, with those that are worked out and so cannot. */
export function columnsToFill(live: LiveBook, sheet: string) {
  const columns = live.columns(sheet);
  const targets = targetsOf(columns);
  return { targets, planning: columns.filter((each) => !targets.includes(each)) };
}

/** A title for a new sheet, from a file's name: one that the book takes and does not have yet. */
export function freeTitle(live: LiveBook, name: string): string {
  const plain =
    cut(
      name
        .replace(/[[\]*?:/\\]/g, ' ')
        .replace(/\s+/g, ' ')
        .trim(),
      50,
    ) || say`Table`;
  const taken = new Set(live.sheets().map(({ title }) => title.toLowerCase()));
  for (let n = 1; ; n++) {
    const title = n === 1 ? plain : `${plain} (${n})`;
    if (!taken.has(title.toLowerCase())) return title;
  }
}
