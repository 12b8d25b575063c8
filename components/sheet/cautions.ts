import { html, nothing, type TemplateResult } from 'lit';
import type { CellValue } from '../../src/book/index.js';
import {
  allCautions,
  type Caution,
  type CautionTopic,
  cautions,
  cautionsFor,
} from '../../src/facts/index.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { WAYS_KEPT, type WayKept } from '../../src/planning/types.js';
import { icons } from '../look/icons.js';

const MOST_SHOWN = 3;

/** What bears on every sheet of a kind, besides what its foods bring. */
const TOPICS: Readonly<Record<string, readonly CautionTopic[]>> = {
  shelf: ['shelf'],
  foods: [],
  draws: [],
  batches: ['canning', 'batch'],
  supplies: ['supplies'],
};

const AUTHORITY =
  'For how to put up any food, follow the current tested process of your national or local food-safety authority.';

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
    const left = kind === 'shelf' ? live.value(sheet, row, 'days_left') : null;
    const old = typeof left === 'number' && left < 0;
    const key = `${food}/${way}/${old}`;
    if (seen.has(key)) continue;
    seen.add(key);
    for (const each of cautionsFor(food, way, old)) found.set(each.id, each);
  }
  return allCautions().filter(({ id }) => found.has(id));
}

const wayOf = (value: CellValue): WayKept | null => WAYS_KEPT.find((way) => way === value) ?? null;

/** The cautions under a sheet: a few in sight, the others one step away. */
export function cautionsView(all: readonly Caution[]): TemplateResult | typeof nothing {
  if (all.length === 0) return nothing;
  const items = (some: readonly Caution[]) => some.map(({ text }) => html`<li>${text}</li>`);
  return html`<aside class="cautions small" part="cautions" aria-label="Food safety">
    ${icons.care}
    <div>
      <ul>
        ${items(all.slice(0, MOST_SHOWN))}
        ${all.some(({ id }) => id === 'tested-process') ? nothing : html`<li>${AUTHORITY}</li>`}
      </ul>
      ${
        all.length > MOST_SHOWN
          ? html`<details>
              <summary>More on food safety</summary>
              <ul>
                ${items(all.slice(MOST_SHOWN))}
              </ul>
            </details>`
          : nothing
      }
    </div>
  </aside>`;
}
