import { say } from '../../words/index.js';
import type { Workbench } from '../bench.js';
import { isObject } from '../plain-json.js';
import type { BookState, SheetState } from '../state.js';
import { titleOfColumn } from '../state-layout.js';
import type { Change, Json } from '../types.js';
import type { Missing } from './missing.js';
import { isFormula, usesOf } from './stored.js';

/**
 * A sheet remembers, in its field `gone`, what was removed though its formulas refer to it: `SHEET` →
 * title of the sheet, `SHEET/COLUMN` → title of the column, `SHEET//ROW` → what the row was called. So a
 * broken formula can say what it misses, also in a book that is opened years later.
 */
type Gone = Readonly<Record<string, string>>;

const MOST_REMEMBERED = 200;
const LONGEST = 80;

const goneOf = (sheet: SheetState | undefined): Gone => {
  const gone = sheet?.rest.gone;
  return isObject(gone) ? (gone as Gone) : {};
};

const keyOf = (sheet: string, part: 'column' | 'row', id: string): string =>
  part === 'column' ? `${sheet}/${id}` : `${sheet}//${id}`;

/** What a row is called: what stands in its first column that holds text, with its number. In English, as it is remembered. */
export function nameOfRow(sheet: SheetState, row: string): string {
  const number = `row ${sheet.rowOrder.indexOf(row) + 1}`;
  const cells = sheet.rows.get(row)?.cells ?? {};
  for (const column of sheet.columnOrder.ids) {
    const raw = Object.hasOwn(cells, column) ? cells[column] : undefined;
    if (typeof raw === 'string' && raw.trim() !== '' && !isFormula(raw)) return `${number} (${raw.trim()})`;
  }
  return number;
}

/** A row as `nameOfRow` called it, in the language spoken. */
export function rowInWords(name: string): string {
  const [, number, called] = /^row (\d+)(?: \((.*)\))?$/s.exec(name) ?? [];
  if (number === undefined) return name;
  return called === undefined ? say`row ${number}` : `${say`row ${number}`} (${called})`;
}

/** What was remembered of something that a formula of the sheet `home` misses; undefined where nothing was. */
export function rememberedName(state: BookState, home: string, missing: Missing): string | undefined {
  if (missing.what !== 'sheet' && !('id' in missing)) return undefined;
  const key = missing.what === 'sheet' ? missing.sheet : keyOf(missing.sheet, missing.what, missing.id);
  for (const sheet of [state.sheets.get(home), ...state.sheets.values()]) {
    const gone = goneOf(sheet);
    const name = Object.hasOwn(gone, key) ? gone[key] : undefined;
    if (typeof name === 'string') return name;
  }
  return undefined;
}

/** What a removal takes away. */
export type Going =
  | { readonly part: 'column' | 'row'; readonly sheet: string; readonly ids: ReadonlySet<string> }
  | { readonly part: 'sheet'; readonly sheet: string };

/** Every formula that stays when that goes, each with the sheet that it stands in. */
export function* formulasLeft(
  state: BookState,
  going: Going,
): Generator<{ home: SheetState; row: string | null; column: string; stored: string }> {
  for (const home of state.sheets.values()) {
    const here = home.id === going.sheet;
    if (here && going.part === 'sheet') continue;
    const goes = (part: 'row' | 'column', id: string): boolean =>
      here && going.part === part && going.ids.has(id);
    for (const [column, { formula }] of home.columns)
      if (formula !== undefined && !goes('column', column))
        yield { home, row: null, column, stored: formula };
    for (const [row, { cells }] of home.rows) {
      if (goes('row', row)) continue;
      for (const column in cells) {
        const stored = cells[column];
        if (isFormula(stored) && !goes('column', column)) yield { home, row, column, stored };
      }
    }
  }
}

function namesOf(stored: string, home: SheetState, going: Going, { state }: Workbench): [string, string][] {
  const target = state.sheets.get(going.sheet)!;
  const found: [string, string][] = [];
  for (const use of usesOf(stored, home.id)) {
    if (use.sheet !== going.sheet) continue;
    if (going.part === 'sheet') found.push([target.id, target.title]);
    for (const { column, row } of [use.from, use.to]) {
      if (
        column !== undefined &&
        (going.part === 'sheet' || (going.part === 'column' && going.ids.has(column)))
      )
        if (target.columnOrder.has(column))
          found.push([keyOf(target.id, 'column', column), titleOfColumn(target, column)]);
      if (row !== undefined && (going.part === 'sheet' || (going.part === 'row' && going.ids.has(row))))
        if (target.rows.has(row)) found.push([keyOf(target.id, 'row', row), nameOfRow(target, row)]);
    }
  }
  return found;
}

/**
 * Changes that keep the names of what goes, in the sheets with formulas that go on referring to it.
 *
 * @param mended what becomes of a stored formula when that goes
 */
export function rememberedNames(
  going: Going,
  bench: Workbench,
  mended: (stored: string, home: string) => string = (stored) => stored,
): Change[] {
  const { state } = bench;
  const remembered = new Map<SheetState, Record<string, string>>();
  for (const { home, stored } of formulasLeft(state, going)) {
    // A cheap look first: most formulas are not concerned.
    if (home.id !== going.sheet && !stored.includes(`${going.sheet}.`)) continue;
    for (const [key, name] of namesOf(mended(stored, home.id), home, going, bench)) {
      const names = remembered.get(home) ?? {};
      names[key] = name.slice(0, LONGEST);
      remembered.set(home, names);
    }
  }
  return [...remembered].map(([home, names]): Change => {
    const was = home.rest.gone as Json | undefined;
    const all = Object.entries({ ...goneOf(home), ...names }).slice(-MOST_REMEMBERED);
    return { path: ['sheets', home.id, 'gone'], to: Object.fromEntries(all), was };
  });
}
