import { phrase, say, spoken } from './said.js';
import type { TabGroup } from './tabs.js';

interface SheetTab {
  readonly id: string;
  readonly kind: string;
  readonly title: string;
}

/** What is shown beside the sheets. */
export const PICTURES = 'pictures';

/** Sheets by what a household does with them; a kind that is not named here stands with the own sheets. */
const GROUPS: readonly (readonly [title: string, kinds: readonly string[]])[] = [
  [phrase('Pantry'), ['shelf', 'draws', 'foods']],
  [phrase('Kitchen'), ['week', 'dishes']],
  [phrase('Garden'), ['beds', 'harvest', 'batches', 'supplies']],
  [phrase('Household'), ['household', 'facts']],
];

/** The tabs of a book: its sheets in groups, then the pictures, then sheets of one's own. */
export function tabGroups(sheets: readonly SheetTab[]): TabGroup[] {
  const grouped = GROUPS.map(([title, kinds]) => ({
    title: spoken(title),
    tabs: kinds.flatMap((kind) => sheets.filter((sheet) => sheet.kind === kind)),
  }));
  const named = new Set(grouped.flatMap(({ tabs }) => tabs.map(({ id }) => id)));
  const all: TabGroup[] = [
    ...grouped,
    { title: say`At a glance`, tabs: [{ id: PICTURES, title: say`Pictures` }] },
    { title: say`Sheets of your own`, tabs: sheets.filter(({ id }) => !named.has(id)) },
  ];
  return all.filter(({ tabs }) => tabs.length > 0);
}
