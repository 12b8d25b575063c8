import { type CellValue, isCellError } from '../book/index.js';
import { fromIsoDay } from '../planning/dates.js';
import { ok, type Problem, type Result, refuse } from '../problem.js';
import { counted, say, spoken } from '../words/index.js';
import type { BookReading } from './book-reading.js';
import type { ColumnView } from './columns.js';
import { sameValue } from './doings/difference-size.js';
import { rowName } from './row-name.js';
import { shownDay, shownNumber, unitWord } from './shown.js';
import { columnNamed, sheetNamed } from './what-if-text.js';

/** Planning columns of one sheet that are looked at. */
export interface Watched {
  readonly sheet: string;
  readonly title: string;
  readonly columns: readonly ColumnView[];
}

/** A planning figure that would be another, in words with units. */
export interface FigureChange {
  readonly row: string;
  readonly rowName: string;
  readonly column: string;
  readonly columnTitle: string;
  readonly was: string;
  readonly wouldBe: string;
  /** `+12 quart jars`, `8 days later`; '' of words. */
  readonly difference: string;
  readonly isMore: boolean | null;
}

/** The sum of a column over all rows, where they are in one unit. */
export interface TotalChange {
  readonly columnTitle: string;
  readonly was: string;
  readonly wouldBe: string;
  readonly difference: string;
}

export interface SheetChanges {
  readonly sheet: string;
  readonly title: string;
  readonly figures: readonly FigureChange[];
  readonly totals: readonly TotalChange[];
}

/** Units of columns whose figures make a sum over the rows. */
const SUMMED: ReadonlySet<string> = new Set(['lb', 'ft', 'sq ft', 'h']);

const planned = ({ role, hidden, taken }: ColumnView): boolean =>
  role === 'planning' && !hidden && taken === undefined;

/** Planning columns of a sheet, or of all where none is named. */
export function watchedOf(live: BookReading, sheet = ''): Result<readonly Watched[]> {
  const named = sheet.trim() === '' ? null : sheetNamed(live, sheet.trim());
  if (named === undefined)
    return refuse(
      'no-such-sheet',
      say`This book has no sheet called “${sheet}”.`,
      say`Name one of its sheets.`,
    );
  const sheets = named === null ? live.sheets() : [named];
  return ok(
    sheets
      .map(({ id, title }) => ({ sheet: id, title, columns: live.columns(id).filter(planned) }))
      .filter(({ columns }) => columns.length > 0),
  );
}

/** Reads `foods / to_put_up, weeks_of_supply; beds / plants_wanted`: columns by id or title. */
export function readWatched(
  live: BookReading,
  text: string,
): { readonly watched: readonly Watched[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const watched = text
    .split(';')
    .map((entry) => entry.trim())
    .filter(Boolean)
    .flatMap((entry): Watched[] => {
      const [name = '', ...rest] = entry.split('/');
      const all = watchedOf(live, name);
      if (!all.ok) {
        problems.push(all.problem);
        return [];
      }
      const wanted = rest
        .join('/')
        .split(',')
        .map((each) => each.trim())
        .filter(Boolean);
      if (wanted.length === 0 || !all.value[0]) return [...all.value];
      const { sheet, title } = all.value[0];
      const columns = wanted.flatMap((each) => {
        const column = columnNamed(live, sheet, each);
        if (column?.role === 'planning') return [column];
        problems.push({
          code: 'vary-no-column',
          message: say`${title} has no planning column “${each}”.`,
          mend: say`Write its title, or its id.`,
        });
        return [];
      });
      return [{ sheet, title, columns }];
    });
  return { watched, problems };
}

/** A figure in words, with its unit. */
function inWords(
  live: BookReading,
  sheet: string,
  row: string,
  column: ColumnView,
  value: CellValue,
): string {
  if (value === null || value === '') return say`blank`;
  if (isCellError(value)) return value.error;
  if (typeof value === 'number') return withUnit(value, column.decimals, live.unit(sheet, row, column.id));
  if (typeof value === 'boolean') return value ? say`yes` : say`no`;
  return isDate(value) ? shownDay(value) : spoken(value);
}

const isDate = (value: CellValue): value is string => typeof value === 'string' && fromIsoDay(value).ok;

function withUnit(value: number, decimals: number | undefined, unit: string | undefined): string {
  const number = shownNumber(value, decimals);
  const word = unitWord(unit, value);
  return word ? `${number} ${word}` : number;
}

function differenceOf(was: CellValue, is: CellValue, column: ColumnView, unit: string | undefined) {
  if (typeof was === 'number' && typeof is === 'number') {
    const by = is - was;
    const size = withUnit(Math.abs(by), column.decimals, unit);
    return { difference: `${by < 0 ? '−' : '+'}${size}`, isMore: by > 0 };
  }
  if (isDate(was) && isDate(is)) {
    const [from, to] = [fromIsoDay(was), fromIsoDay(is)];
    const days = from.ok && to.ok ? to.value - from.value : 0;
    const size = counted(Math.abs(days), shownNumber(Math.abs(days), 0), 'day');
    return { difference: days < 0 ? say`${size} earlier` : say`${size} later`, isMore: days > 0 };
  }
  return { difference: '', isMore: null };
}

/** Figures that read otherwise on the copy: what rounds to the same is the same. */
export function whatIfFigures(
  before: BookReading,
  after: BookReading,
  watched: readonly Watched[],
): readonly SheetChanges[] {
  return watched.flatMap(({ sheet, title, columns }): SheetChanges[] => {
    const figures: FigureChange[] = [];
    const sums = new Map<ColumnView, [was: number, is: number]>();
    for (const row of before.rowIds(sheet)) {
      for (const column of columns) {
        const [was, is] = [before.value(sheet, row, column.id), after.value(sheet, row, column.id)];
        if (column.unit !== undefined && SUMMED.has(column.unit)) {
          const [a, b] = sums.get(column) ?? [0, 0];
          sums.set(column, [a + numberOf(was), b + numberOf(is)]);
        }
        if (sameValue(was, is)) continue;
        const words = inWords(before, sheet, row, column, was);
        const now = inWords(after, sheet, row, column, is);
        if (words === now) continue;
        figures.push({
          row,
          rowName: rowName(before, sheet, row),
          column: column.id,
          columnTitle: column.title,
          was: words,
          wouldBe: now,
          ...differenceOf(was, is, column, after.unit(sheet, row, column.id)),
        });
      }
    }
    if (figures.length === 0) return [];
    const totals = [...sums].flatMap(([column, [was, is]]): TotalChange[] => {
      const [a, b] = [
        withUnit(was, column.decimals, column.unit),
        withUnit(is, column.decimals, column.unit),
      ];
      return a === b
        ? []
        : [
            {
              columnTitle: column.title,
              was: a,
              wouldBe: b,
              difference: differenceOf(was, is, column, column.unit).difference,
            },
          ];
    });
    return [{ sheet, title, figures, totals }];
  });
}

const numberOf = (value: CellValue): number => (typeof value === 'number' ? value : 0);
