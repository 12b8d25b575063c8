import { html, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { caution } from '../../src/facts/index.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { icons } from '../look/icons.js';
import type { ListedDay, ListGroup, ListLine, OpenLine, ShownLists } from './list-lines.js';
import type { TickState } from './ticks.js';

/** What the lists ask of the element around them. */
export interface ListsHost {
  stateOf(line: ListLine): TickState;
  tick(line: ListLine, ticked: boolean): void;
}

const EMPTY = {
  bringUp: phrase('Nothing to fetch: these meals take nothing from the shelf.'),
  shopping: phrase('Nothing to buy: the shelf has all that these meals need.'),
  prep: phrase(
    'Nothing to do ahead. Steps written under “To do ahead” on the Dishes sheet, such as “soak overnight”, come here on their day.',
  ),
} as const;

const care = (words: readonly string[]): TemplateResult | typeof nothing =>
  words.length === 0
    ? nothing
    : html`<span class="care small">${icons.care}<span>${words.join(' ')}</span></span>`;

const notes = (words: readonly string[]): TemplateResult | typeof nothing =>
  words.length === 0 ? nothing : html`<span class="notes small quiet">${words.join(' · ')}</span>`;

const line = (each: ListLine, host: ListsHost): TemplateResult => {
  const state = host.stateOf(each);
  return html`<li class="line ${state}">
    <label>
      <input
        type="checkbox"
        .checked=${state === 'ticked'}
        @change=${(event: Event) => host.tick(each, (event.target as HTMLInputElement).checked)}
      />
      <span class="words">
        <span class="text">${each.text}</span>
        ${state === 'more' ? html`<strong class="small again">${say`More than was ticked before.`}</strong>` : nothing}
        ${notes(each.notes)} ${care(each.care)}
      </span>
    </label>
  </li>`;
};

const group = ({ title, lines }: ListGroup, host: ListsHost, named: boolean): TemplateResult => html`
  ${named ? html`<h4>${title}</h4>` : nothing}
  <ul aria-label=${named ? title : nothing}>
    ${repeat(
      lines,
      ({ key }) => key,
      (each) => line(each, host),
    )}
  </ul>
`;

/** 'all 7 done', '3 of 7 left'. */
function leftWords(groups: readonly ListGroup[], host: ListsHost): string {
  const all = groups.flatMap(({ lines }) => lines);
  if (all.length === 0) return '';
  const left = all.filter((each) => host.stateOf(each) !== 'ticked').length;
  return left === 0 ? say`all ${all.length} done` : say`${left} of ${all.length} left`;
}

const section = (
  id: keyof typeof EMPTY,
  title: string,
  groups: readonly ListGroup[],
  host: ListsHost,
  { first = nothing, named = true }: { first?: TemplateResult | typeof nothing; named?: boolean } = {},
): TemplateResult => html`<section class="list ${id}" part=${id} aria-labelledby=${id}>
  <h3 id=${id}>${title}<span class="left small quiet">${leftWords(groups, host)}</span></h3>
  ${first} ${groups.map((each) => group(each, host, named))}
  ${groups.length === 0 && first === nothing ? html`<p class="none quiet">${spoken(EMPTY[id])}</p>` : nothing}
</section>`;

const alreadyOpen = (open: readonly OpenLine[]): TemplateResult | typeof nothing =>
  open.length === 0
    ? nothing
    : html`<h4>${say`Open already: use first`}</h4>
        <ul class="open">
          ${open.map(
            (each) => html`<li>
              <span class="words"><span class="text">${each.text}</span>${notes(each.notes)} ${care(each.care)}</span>
            </li>`,
          )}
        </ul>`;

const meals = (
  days: readonly ListedDay[],
): TemplateResult => html`<section class="meals" part="meals" aria-labelledby="meals">
  <h3 id="meals">${say`Meals`}</h3>
  <ol>
    ${days.map(
      (day) => html`<li>
        <h4>${day.words}</h4>
        <ul>
          ${day.meals.map(
            ({ meal, dish, short, care: words }) => html`<li>
              ${dish} <span class="small quiet">${meal}</span>
              ${short ? html`<span class="small short">${short}</span>` : nothing} ${care(words)}
            </li>`,
          )}
        </ul>
      </li>`,
    )}
  </ol>
</section>`;

const safety = ({ lists }: ShownLists): TemplateResult | typeof nothing =>
  lists.cautions.length === 0
    ? nothing
    : html`<aside class="safety small" part="cautions" aria-label=${say`Food safety`}>
        ${icons.care}
        <ul>
          ${lists.cautions.map(({ text }) => html`<li>${spoken(text)}</li>`)}
          <li>${spoken(caution('tested-process').text)}</li>
        </ul>
      </aside>`;

/** The three lists, the meals they are for, and what bears on safety. */
export const listsView = (shown: ShownLists, host: ListsHost): TemplateResult => html`
  <div class="lists">
    ${section('bringUp', say`Bring up`, shown.bringUp, host, { first: alreadyOpen(shown.open) })}
    ${section('shopping', say`Shopping`, shown.shopping, host, { named: shown.shopping.some(({ title }) => title !== say`To buy`) })}
    ${section('prep', say`To do ahead`, shown.prep, host)} ${meals(shown.days)}
  </div>
  ${safety(shown)}
`;
