import { css, html, LitElement, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { foodKey, lineKey } from '../../src/live/food-key.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { toIsoDay } from '../../src/planning/dates.js';
import type { Problem } from '../../src/problem.js';
import { say, spoken } from '../../src/words/index.js';
import { base } from '../look/base.js';
import { inWords } from '../look/problems.js';
import { listInFoods, type UnlistedLine, unlistedLines } from './list-in-foods.js';
import { readLotLine } from './lot-line.js';
import { MOSTLY_IN } from './mostly-in.js';
import { shownNumber } from './shown.js';

interface Added {
  readonly row: string;
  readonly words: string;
  readonly food: string;
  readonly way: string;
}

/** Inside `<croft-sheet>`: fast entry of many lots. Place, way, container and day once; then a line for each lot. */
@customElement('croft-add-lots')
export class AddLots extends LitElement {
  static override styles = [
    base,
    css`
      section {
        border: 1px solid var(--line);
        border-inline-start: 4px solid var(--accent);
        border-radius: var(--radius);
        background: var(--raised);
        padding: 0.875rem 1rem;
        margin-bottom: 0.75rem;
        display: grid;
        gap: 0.75rem;
      }
      h2 {
        font-size: 1rem;
      }
      .once {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(8rem, 1fr));
        gap: 0.75rem;
      }
      .line {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto auto;
        gap: 0.5rem;
        align-items: end;
      }
      ol {
        display: grid;
        gap: 0.125rem;
        max-height: min(14rem, 34vh);
        overflow-y: auto;
        border-block: 1px solid var(--line);
      }
      ol li {
        display: flex;
        flex-wrap: wrap;
        gap: 0 0.75rem;
        align-items: center;
        padding-block: 0.125rem;
      }
    `,
  ];

  @property({ attribute: false }) live!: LiveBook;
  @property() sheet = '';
  @state() private added: readonly Added[] = [];
  @state() private wrong: Problem | null = null;
  @query('#line') private line!: HTMLInputElement;

  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('#place')?.focus();
  }

  protected override render() {
    const { live, sheet } = this;
    const options = (column: string) =>
      (live.choices(sheet, null, column) ?? []).map(({ value }) => html`<option value=${value}></option>`);
    const last = live.rowIds(sheet).at(-1);
    const before = (column: string) => (last === undefined ? null : live.value(sheet, last, column));
    const chosen = (column: string, usual: string) => {
      const choices = (live.choices(sheet, null, column) ?? []).map(({ value }) => value);
      const first = choices.find((value) => value === before(column)) ?? usual;
      return choices.map(
        (value) => html`<option value=${value} ?selected=${value === first}>${spoken(value)}</option>`,
      );
    };
    return html`<section aria-labelledby="heading">
      <h2 id="heading">${say`Add lots`}</h2>
      <div class="once">
        <div class="field">
          <label for="place">${say`Kept where`}</label>
          <input id="place" list="places" autocomplete="off" placeholder=${say`cellar, top shelf`} />
          <datalist id="places">${options('place')}</datalist>
        </div>
        <div class="field">
          <label for="way">${say`Way kept`}</label>
          <select id="way" @change=${this.#wayChosen}>
            ${chosen('way', 'canned')}
          </select>
        </div>
        <div class="field">
          <label for="container">${say`Container`}</label>
          <select id="container">
            ${chosen('container', 'quart jar')}
          </select>
        </div>
        <div class="field">
          <label for="day">${say`Put up on`}</label>
          <input id="day" type="date" .value=${toIsoDay(live.household.asOf)} />
        </div>
      </div>
      <form class="line" @submit=${this.#add}>
        <div class="field">
          <label for="line">${say`Food and how many`}</label>
          <input
            id="line"
            list="foods"
            autocomplete="off"
            placeholder=${say`tomatoes 24`}
            aria-describedby="wrong how"
            aria-invalid=${this.wrong !== null}
          />
          <datalist id="foods">${options('food')}</datalist>
        </div>
        <button class="button first">${say`Add`}</button>
        <button class="button" type="button" @click=${this.#done}>${say`Done`}</button>
      </form>
      <p id="wrong" class="problem small" role="alert">${this.wrong ? inWords(this.wrong) : ''}</p>
      <p id="how" class="small quiet">${say`Press Enter after each line. Another container goes into the line: pears 8 pints. Change the place, way, container or day as you go along the shelf.`}</p>
      <div role="status" class="unseen">${this.added[0] ? say`Added ${this.added[0].words}` : ''}</div>
      ${
        this.added.length === 0
          ? nothing
          : html`<p class="small">
                ${
                  this.added.length === 1
                    ? say`1 lot added, the latest first:`
                    : say`${this.added.length} lots added, the latest first:`
                }
              </p>
              <ol class="small" aria-label=${say`Added so far`} tabindex="0">
                ${this.#lines()}
              </ol>`
      }
    </section>`;
  }

  #lines() {
    const unlisted = unlistedLines(this.live);
    return this.added.map((each) => {
      const line = unlisted.find(({ key }) => key === lineKey(foodKey(each.food), each.way));
      return html`<li>
        <span>${each.words}</span>
        ${
          line
            ? html`<span class="quiet">${say`Foods does not list ${each.food}, ${each.way} yet.`}</span>
                <button class="link" type="button" @click=${() => this.#list(line)}>${say`Add it to Foods`}</button>`
            : nothing
        }
        <button class="link" type="button" @click=${() => this.#takeBack(each)}>${say`Take back`}</button>
      </li>`;
    });
  }

  #list(line: UnlistedLine): void {
    const done = listInFoods(this.live, [line]);
    this.wrong = done.ok ? null : done.problem;
    this.requestUpdate();
    this.line.focus();
  }

  readonly #wayChosen = (): void => {
    const mostly = MOSTLY_IN[this.#field('way')];
    const field = this.renderRoot.querySelector<HTMLSelectElement>('#container');
    if (mostly && field) field.value = mostly;
  };

  #field(id: string): string {
    return this.renderRoot.querySelector<HTMLInputElement | HTMLSelectElement>(`#${id}`)?.value.trim() ?? '';
  }

  readonly #add = (event: Event): void => {
    event.preventDefault();
    const read = readLotLine(this.line.value, this.#field('way'));
    this.wrong = read.ok ? null : read.problem;
    if (!read.ok) return;
    const { food, count } = read.value;
    const [place, way, chosen, day] = ['place', 'way', 'container', 'day'].map((id) => this.#field(id));
    const container = read.value.container ?? chosen!;
    const outcome = this.live.insertRows(this.sheet, [
      { food, count, place: place!, way: way!, container, put_up_on: day! },
    ]);
    if (!outcome.ok) {
      this.wrong = outcome.problem;
      return;
    }
    const words = [
      food,
      count === null ? say`no count yet` : shownNumber(count),
      spoken(container),
      place,
    ].filter(Boolean);
    this.added = [{ row: outcome.rows[0]!, words: words.join(' · '), food, way: way! }, ...this.added];
    this.line.value = '';
    this.line.focus();
    this.dispatchEvent(new CustomEvent('added', { detail: outcome.rows[0]! }));
  };

  #takeBack(each: Added): void {
    this.live.removeRows(this.sheet, [each.row]);
    this.added = this.added.filter((other) => other !== each);
    this.line.focus();
  }

  readonly #done = (): void => {
    const first = this.added.at(-1)?.row ?? null;
    this.added = [];
    this.wrong = null;
    this.dispatchEvent(new CustomEvent('done', { detail: first }));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-add-lots': AddLots;
  }
}
