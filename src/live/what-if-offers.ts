import { toIsoDay } from '../planning/dates.js';
import type { BookReading } from './book-reading.js';
import { canVary, variedSettings } from './what-if.js';

/** Something to vary, as a list offers it. */
export interface Offer {
  readonly key: string;
  readonly label: string;
}

/** Kept columns that are looked at first, by kind of sheet. */
const FIRST_COLUMNS: Readonly<Record<string, readonly string[]>> = {
  foods: [
    'own_use',
    'own_target',
    'carry',
    'next_supply',
    'fresh_use',
    'fresh_from',
    'fresh_to',
    'own_months',
  ],
  beds: ['plants', 'own_yield', 'own_spacing', 'seeds_on_hand', 'sown_on'],
  week: ['shares', 'times', 'skipped'],
  household: ['share'],
  shelf: ['count', 'own_best_by', 'still_counting'],
};

/** What a dialog begins with on a kind of sheet: settings, and columns of the chosen row. */
const BEGINS: Readonly<
  Record<string, { readonly settings: readonly string[]; readonly columns: readonly string[] }>
> = {
  foods: { settings: ['cushion', 'basis'], columns: ['own_use'] },
  beds: { settings: ['basis', 'last_frost'], columns: ['plants'] },
  week: { settings: [], columns: ['shares', 'times'] },
  household: { settings: ['cushion', 'basis'], columns: [] },
};

/** Most people whose shares stand there at first. */
const PEOPLE = 3;

/** Household settings that can be varied. */
export const settingOffers = (): readonly Offer[] =>
  variedSettings().map(({ id, title }) => ({ key: id, label: title }));

/** Columns of a sheet that can be varied, the usual ones first. */
export function columnOffers(live: BookReading, sheet: string): readonly Offer[] {
  const kind = live.sheets().find(({ id }) => id === sheet)?.kind ?? '';
  const first = FIRST_COLUMNS[kind] ?? [];
  const place = (id: string): number => (first.includes(id) ? first.indexOf(id) : first.length);
  return live
    .columns(sheet)
    .filter(canVary)
    .map(({ id, title }) => ({ key: id, label: title }))
    .sort((a, b) => place(a.key) - place(b.key));
}

/** A meal that is still to come: what was eaten is not varied first. */
const isAhead = (live: BookReading, sheet: string, row: string): boolean => {
  const date = live.value(sheet, row, 'date');
  return (
    live.value(sheet, row, 'done') !== true &&
    typeof date === 'string' &&
    date >= toIsoDay(live.household.asOf)
  );
};

/** Keys of what a dialog on this sheet begins with; `row` is the chosen one, the first unless given. */
export function firstVaried(live: BookReading, sheet: string, row: string | null): readonly string[] {
  const kind = live.sheets().find(({ id }) => id === sheet)?.kind ?? '';
  const { settings, columns } = BEGINS[kind] ?? { settings: ['cushion', 'basis'], columns: [] };
  const rows = live.rowIds(sheet);
  const ahead = kind === 'week' ? rows.find((each) => isAhead(live, sheet, each)) : undefined;
  const at = row !== null && rows.includes(row) ? row : (ahead ?? rows[0]);
  const cells = at === undefined ? [] : columns.map((column) => `${sheet} / ${at} / ${column}`);
  const people =
    kind === 'household' ? rows.slice(0, PEOPLE).map((each) => `${sheet} / ${each} / share`) : [];
  return [...cells, ...people, ...settings];
}
