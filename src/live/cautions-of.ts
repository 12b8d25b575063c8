import type { CellValue } from '../book/index.js';
import { allCautions, type Caution, type CautionTopic, cautions, cautionsFor } from '../facts/index.js';
import { WAYS_KEPT, type WayKept } from '../planning/types.js';
import { phrase } from '../words/index.js';
import type { LiveBook } from './live-book.js';

/** What bears on every sheet of a kind, besides what its foods bring. */
const TOPICS: Readonly<Record<string, readonly CautionTopic[]>> = {
  shelf: ['shelf'],
  foods: [],
  draws: [],
  batches: ['canning', 'batch'],
  supplies: ['supplies'],
};

/** Stands under every list of cautions that does not say it already. */
export const AUTHORITY = phrase(
  'For how to put up any food, follow the current tested process of your national or local food-safety authority.',
);

/** What bears on the foods that a sheet shows, most urgent first. */
export function cautionsOf(live: LiveBook, sheet: string, kind: string): readonly Caution[] {
  const topics = TOPICS[kind];
  if (!topics) return [];
  const found = new Map<string, Caution>();
  if (live.rowIds(sheet).length > 0) {
    for (const each of topics.flatMap(cautions)) found.set(each.id, each);
  }
  const seen = new Set<string>();
  for (const row of live.rowIds(sheet)) {
    const food = live.value(sheet, row, 'food');
    const way = wayOf(live.value(sheet, row, 'way'));
    if (typeof food !== 'string' || food === '') continue;
    // Days come with the figures; until then the words for every food stand.
    const left = kind === 'shelf' && live.isPlanned ? live.value(sheet, row, 'days_left') : null;
    const old = typeof left === 'number' && left < 0;
    const key = `${food}/${way}/${old}`;
    if (seen.has(key)) continue;
    seen.add(key);
    for (const each of cautionsFor(food, way, old)) found.set(each.id, each);
  }
  return allCautions().filter(({ id }) => found.has(id));
}

const wayOf = (value: CellValue): WayKept | null => WAYS_KEPT.find((way) => way === value) ?? null;
