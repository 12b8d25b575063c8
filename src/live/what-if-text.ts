import { excerpt, ok, type Problem, type Result, refuse } from '../problem.js';
import { inEnglish, say } from '../words/index.js';
import type { BookReading } from './book-reading.js';
import type { ColumnView } from './columns.js';
import { rowName } from './row-name.js';
import { canVary, cellVaried, settingVaried, type Varied, variedSettings } from './what-if.js';
import { dayOf, type Range, usualRange } from './what-if-range.js';

/** What an author asks to vary, and within what. */
export interface Asked {
  readonly varied: Varied;
  readonly range: Range;
}

type Sheet = ReturnType<BookReading['sheets']>[number];

const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();
const how = () =>
  say`Write a setting (cushion), or a sheet, a row and a column: foods / Tomatoes, canned / own_use. Several are parted by semicolons.`;

/** A sheet by its id, its kind or its title. */
export const sheetNamed = (live: BookReading, name: string): Sheet | undefined => {
  const sheets = live.sheets();
  return (
    sheets.find(({ id }) => id === name) ??
    sheets.find(({ kind }) => kind !== 'own' && same(kind, name)) ??
    sheets.find(({ title }) => same(title, name))
  );
};

/** A column by its id or its title. */
export const columnNamed = (live: BookReading, sheet: string, name: string): ColumnView | undefined => {
  const columns = live.columns(sheet);
  return columns.find(({ id }) => id === name) ?? columns.find(({ title }) => same(title, name));
};

function rowNamed(live: BookReading, { id: sheet, title }: Sheet, name: string): Result<string> {
  const rows = live.rowIds(sheet);
  if (rows.includes(name)) return ok(name);
  // A page says it as the book does, whatever language is spoken.
  const names = inEnglish(() => rows.map((row) => ({ row, name: rowName(live, sheet, row) })));
  const whole = names.filter((each) => same(each.name, name));
  const found = whole.length > 0 ? whole : names.filter((each) => begins(each.name, name));
  if (found.length === 1) return ok(found[0]!.row);
  return found.length === 0
    ? refuse(
        'vary-no-row',
        say`${title} has no row called “${excerpt(name)}”.`,
        say`Write what its row is called, or its id.`,
      )
    : refuse(
        'vary-several-rows',
        say`${title} has ${found.length} rows called “${excerpt(name)}”.`,
        say`Write more of the name, as in “${excerpt(found[0]!.name)}”, or the id of the row.`,
      );
}

const begins = (whole: string, part: string): boolean =>
  part.trim() !== '' && whole.toLowerCase().startsWith(`${part.trim().toLowerCase()},`);

function findVaried(live: BookReading, text: string): Result<Varied> {
  const parts = text.split('/').map((part) => part.trim());
  if (parts.length === 1) {
    const name = parts[0]!.replace(/^setting:\s*/i, '');
    const setting = variedSettings().find(({ id, title }) => same(id, name) || same(title, name));
    return setting
      ? ok(settingVaried(live, setting))
      : refuse('vary-not-found', say`There is no setting “${excerpt(name)}” to vary.`, how());
  }
  const sheet = sheetNamed(live, parts[0]!);
  if (!sheet)
    return refuse('no-such-sheet', say`This book has no sheet called “${excerpt(parts[0]!)}”.`, how());
  const row = rowNamed(live, sheet, parts.slice(1, -1).join('/'));
  if (!row.ok) return row;
  const column = columnNamed(live, sheet.id, parts.at(-1)!);
  if (!column)
    return refuse('vary-no-column', say`${sheet.title} has no column “${excerpt(parts.at(-1)!)}”.`, how());
  if (!canVary(column))
    return refuse(
      'vary-not-this',
      column.role === 'planning'
        ? say`“${column.title}” is worked out, so it follows; it is not varied.`
        : say`“${column.title}” holds words, and only numbers, dates, ticks and choices can be varied.`,
      say`Name a column that a person fills in with numbers, dates or ticks.`,
    );
  return ok(cellVaried(live, sheet.id, row.value, column));
}

/** `0 to 12 by 0.5`; of dates `05-01 to 06-15`. */
function readRange(varied: Varied, text: string, live: BookReading): Result<Range> {
  const usual = usualRange(varied, live.household.asOf);
  const [ends = '', by] = text.split(/\s+by\s+/i);
  const [from = '', to = '', more] = ends.split(/\s+to\s+/i).map((end) => end.trim());
  const read = (end: string): number =>
    varied.type === 'number' ? Number(end || Number.NaN) : (dayOf(end, live.household.asOf) ?? Number.NaN);
  const range = { min: read(from), max: read(to), step: by === undefined ? usual.step : Number(by) };
  const isGood = more === undefined && range.min < range.max && range.step > 0 && Number.isFinite(range.max);
  return isGood
    ? ok(range)
    : refuse(
        'vary-bad-range',
        say`“[${excerpt(text)}]” does not say from where to where.`,
        say`Write it as [0 to 12 by 0.5]; of dates as [05-01 to 06-15].`,
      );
}

/**
 * Reads what an author wants to vary: entries parted by semicolons. An entry is a setting (`cushion`) or a cell
 * (`foods / Tomatoes, canned / own_use`: sheet by id, kind or title; row by id or what it is called; column by id
 * or title), with a range in square brackets where the usual one does not fit (`[0 to 12 by 0.5]`).
 */
export function readVary(
  live: BookReading,
  text: string,
): { readonly asked: readonly Asked[]; readonly problems: readonly Problem[] } {
  const asked: Asked[] = [];
  const problems: Problem[] = [];
  for (const entry of text
    .split(';')
    .map((each) => each.trim())
    .filter(Boolean)) {
    const [, what = entry, between] = /^(.*?)\s*(?:\[([^\]]*)\])?$/.exec(entry) ?? [];
    const varied = findVaried(live, what);
    if (!varied.ok) {
      problems.push(varied.problem);
      continue;
    }
    const { asOf } = live.household;
    const range =
      between === undefined ? ok(usualRange(varied.value, asOf)) : readRange(varied.value, between, live);
    if (!range.ok) problems.push(range.problem);
    else if (!asked.some((each) => each.varied.key === varied.value.key))
      asked.push({ varied: varied.value, range: range.value });
  }
  return { asked, problems };
}
