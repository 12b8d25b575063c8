import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import { KINDS } from '../../src/book/index.js';
import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import type { DayNumber } from '../../src/planning/types.js';
import { say, spoken } from '../../src/words/index.js';
import { BookController } from '../book/find-book.js';
import { base } from '../look/base.js';
import { dayName, monthNames } from '../pictures/axis-view.js';
import { dayInWords } from '../pictures/days.js';
import { withoutBook } from '../pictures/no-book.js';
import { pictureStyles } from '../pictures/picture-styles.js';
import { Roving } from '../pictures/roving.js';
import { showCell } from '../pictures/show.js';
import { type TimeAxis, timeAxis } from '../pictures/time-axis.js';
import { numberTold, tickTold } from '../told-as-text.js';
import { patterns, runwayBar } from './runway-bar.js';
import { runwayKey } from './runway-key.js';
import { byName, byUrgency, spanOf, waysOf } from './runway-layout.js';
import { type ApartReason, type ApartRow, type Runway, type RunwayRow, readRunway } from './runway-model.js';
import { runwayStyles } from './runway-styles.js';
import { runwayTable } from './runway-table.js';
import {
  APART,
  alsoInWords,
  apartInWords,
  summary,
  untilInWords,
  verdict,
  weeksInWords,
} from './runway-words.js';

const REASONS: readonly ApartReason[] = ['not known', 'no use', 'not from the shelf'];

/**
 * Picture of how long each food lasts: a bar from the as-of date to the day on which the shelf runs out, with
 * its range, against the next harvest. What runs short before the harvest, and what is over when it comes,
 * is drawn and said. In the fresh season, when nothing is taken from the shelf, the bar is thin.
 *
 * @element croft-runway
 * @attr book - Id of the `<croft-book>`; the one around it unless given.
 * @attr way - A way kept (`canned`, `frozen`…): only foods kept so are shown.
 * @attr sort - `urgency` (usual): what runs short first, the soonest out before the others; or `name`.
 * @attr grouped - Under a heading for each way kept.
 * @attr view - `picture` (usual) or `table`: the same figures as a table.
 * @attr months - Months shown from the as-of date on; as many as it takes to the last harvest unless given.
 * @attr bare - Without the title, the summary and the controls.
 * @attr theme - `light`, `dark` or `auto`; else the page's `color-scheme` counts.
 * @fires croft-show - A person chose a food: `detail` is `{ sheet, row, column }` of its Foods row, for the
 *   page to bring that sheet into view. The cell is selected in the book before.
 * @csspart controls - Choices above the picture.
 * @csspart key - What the marks mean.
 * @csspart chart - The picture.
 * @csspart apart - Foods without a bar.
 * @csspart empty - What stands there while the book has no foods.
 * @cssprop --croft-bar - Colour of the bars.
 * @cssprop --croft-short - Colour of the weeks that a food is short.
 * @cssprop --croft-over - Colour of what is over when the next harvest comes.
 * @cssprop --croft-harvest - Colour of the next harvest or supply.
 * @cssprop --croft-sticky-top - Height of what the page keeps at the top of the window, for the axis.
 */
@customElement('croft-runway')
export class CroftRunway extends LitElement {
  static override styles = [base, pictureStyles, runwayStyles];

  @property({ reflect: true, useDefault: true }) way = '';
  @property({ reflect: true, useDefault: true }) sort: 'urgency' | 'name' = 'urgency';
  @property({ type: Boolean, converter: tickTold, reflect: true, useDefault: true }) grouped = false;
  @property({ reflect: true, useDefault: true }) view: 'picture' | 'table' = 'picture';
  @property({ type: Number })
  get months(): number | null {
    return this.#months;
  }
  set months(told: number | string | null) {
    this.#months = numberTold(told, null);
  }
  @property({ type: Boolean, converter: tickTold }) bare = false;
  @property({ reflect: true }) theme: string | null = null;
  #months: number | null = null;
  readonly #book = new BookController(this, (change) => this.#heed(change));
  readonly #roving = new Roving(this);
  #live: LiveBook | null = null;
  #runway: Runway | null = null;

  /** Puts the keyboard on the picture. */
  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('[data-mark][tabindex="0"]')?.focus();
  }

  protected override willUpdate(): void {
    const { live } = this.#book;
    if (live === this.#live && this.#runway) return;
    this.#live = live;
    this.#runway = live && readRunway(live);
  }

  protected override render() {
    if (!this.#live) return withoutBook(this.#book.book);
    const runway = this.#runway;
    if (!runway || (runway.rows.length === 0 && runway.apart.length === 0)) return this.#empty(runway);
    const shown = this.#shown(runway);
    return html`
      ${this.bare ? nothing : this.#head(runway, shown.rows)}
      ${this.view === 'table' ? this.#table(runway, shown) : this.#picture(runway, shown)}
    `;
  }

  #empty(runway: Runway | null): TemplateResult {
    return html`<div class="empty" part="empty">
      <h2>${say`How long it lasts`}</h2>
      <p>${runway ? spoken(KINDS.foods.empty) : say`This book has no Foods sheet, from which this picture is drawn.`}</p>
    </div>`;
  }

  #shown(runway: Runway): { rows: RunwayRow[]; apart: ApartRow[] } {
    const here = ({ way }: { readonly way: string }) => this.way === '' || way === this.way.toLowerCase();
    const rows = runway.rows.filter(here).sort(this.sort === 'name' ? byName : byUrgency);
    return { rows, apart: runway.apart.filter(here).sort(byName) };
  }

  #head(runway: Runway, rows: readonly RunwayRow[]): TemplateResult {
    const ways = waysOf(runway).filter(Boolean);
    return html`<div class="head">
        <h2>${say`How long it lasts`}</h2>
        <p role="status">${summary({ rows })}</p>
      </div>
      <div class="controls" part="controls">
        <div class="field">
          <label for="way">${say`Way kept`}</label>
          <select id="way" @change=${(event: Event) => (this.way = chosen(event))}>
            <option value="" .selected=${this.way === ''}>${say`All`}</option>
            ${ways.map((way) => html`<option value=${way} .selected=${way === this.way.toLowerCase()}>${spoken(way)}</option>`)}
          </select>
        </div>
        <div class="field">
          <label for="sort">${say`Order`}</label>
          <select id="sort" @change=${(event: Event) => (this.sort = chosen(event) === 'name' ? 'name' : 'urgency')}>
            <option value="urgency" .selected=${this.sort !== 'name'}>${say`Short first, then soonest out`}</option>
            <option value="name" .selected=${this.sort === 'name'}>${say`By name`}</option>
          </select>
        </div>
        <label class="check">
          <input
            type="checkbox"
            .checked=${this.grouped}
            @change=${(event: Event) => (this.grouped = (event.target as HTMLInputElement).checked)}
          />
          ${say`Grouped by way kept`}
        </label>
        <button class="button" type="button" @click=${() => (this.view = this.view === 'table' ? 'picture' : 'table')}>
          ${this.view === 'table' ? say`Show as a picture` : say`Show as a table`}
        </button>
      </div>`;
  }

  #table(runway: Runway, { rows, apart }: { rows: RunwayRow[]; apart: ApartRow[] }): TemplateResult {
    const bars = this.grouped ? groupsOf(rows).flatMap(([, of]) => of) : rows;
    return runwayTable(
      [...bars, ...apart],
      say`How long each food lasts, as of ${dayInWords(runway.asOf)}`,
      (row) => this.#show(row),
    );
  }

  #picture(runway: Runway, { rows, apart }: { rows: RunwayRow[]; apart: ApartRow[] }): TemplateResult {
    const { from, to } = spanOf(runway, this.months);
    const axis = timeAxis(from, to);
    const groups = this.grouped ? groupsOf(rows) : ([['', rows]] as const);
    const order = [
      ...groups.flatMap(([, of]) => of),
      ...REASONS.flatMap((reason) => apart.filter((row) => row.reason === reason)),
    ];
    const tab = this.#roving.among(order.map(({ id }) => id));
    return html`${patterns}${runwayKey()}
      <p class="unseen" id="keys">${say`Arrow keys move from one to the next; Enter goes to its row of the Foods sheet.`}</p>
      <div
        role="group"
        aria-label=${say`Foods by how long they last`}
        aria-describedby="keys"
        @keydown=${this.#roving.pressed}
        @focusin=${this.#roving.focused}
      >
        <div class="chart" part="chart">
          ${this.#axis(axis, runway.asOf)}
          ${groups.map(
            ([way, of]) => html`${way ? html`<h3 class="group">${spoken(way)}</h3>` : nothing}
              <ul class="rows" aria-label=${way ? spoken(way) : nothing}>
                ${repeat(
                  of,
                  ({ id }) => id,
                  (row) => this.#row(row, axis, runway.asOf, tab),
                )}
              </ul>`,
          )}
        </div>
        ${REASONS.map((reason) =>
          this.#apart(
            reason,
            apart.filter((row) => row.reason === reason),
            tab,
          ),
        )}
      </div>`;
  }

  #axis(axis: TimeAxis, asOf: DayNumber): TemplateResult {
    return html`<div class="axis" aria-hidden="true">
      <div class="line">
        <div class="plot">${dayName(axis.at(asOf), dayInWords(asOf))}${monthNames(axis)}</div>
      </div>
    </div>`;
  }

  #row(row: RunwayRow, axis: TimeAxis, asOf: DayNumber, tab: string | undefined): TemplateResult {
    const { standing } = row;
    return html`<li>
      <button
        class="mark"
        type="button"
        data-mark=${row.id}
        tabindex=${row.id === tab ? 0 : -1}
        @click=${() => this.#show(row)}
      >
        <span class="name"
          >${row.food} ${this.grouped ? nothing : html`<span class="way small">${spoken(row.way)}</span>`}</span
        ><span class="unseen">: </span>
        ${runwayBar(row, axis, asOf)}
        <span class="verdict small figures ${standing === 'short' || standing === 'over' ? standing : 'quiet'}"
          >${verdict(row)}</span
        ><span class="unseen">. </span>
        <span class="lasts small figures"
          >${weeksInWords(row)}${row.weeks === null ? '' : ', '}${untilInWords(row, asOf)}</span
        ><span class="unseen">. ${alsoInWords(row)}.</span>
      </button>
    </li>`;
  }

  #apart(reason: ApartReason, rows: readonly ApartRow[], tab: string | undefined) {
    if (rows.length === 0) return nothing;
    const { title, help } = APART[reason];
    return html`<section part="apart">
      <h3>${spoken(title)}</h3>
      <p class="quiet small">${spoken(help)}</p>
      <ul class="apart">
        ${rows.map(
          (row) => html`<li>
            <button
              class="mark"
              type="button"
              data-mark=${row.id}
              tabindex=${row.id === tab ? 0 : -1}
              @click=${() => this.#show(row)}
            >
              <span class="name">${row.food} <span class="way small">${spoken(row.way)}</span></span>
              <span class="quiet small">${apartInWords(row)}</span>
              ${row.mend ? html`<span class="why quiet small">${spoken(row.mend)}</span>` : nothing}
            </button>
          </li>`,
        )}
      </ul>
    </section>`;
  }

  #show(row: RunwayRow | ApartRow): void {
    if (!this.#runway) return;
    showCell(this, this.#book.book, { sheet: this.#runway.sheet, row: row.id, column: 'weeks_of_supply' });
  }

  /** What the picture shows is read again only when something of the foods, or the day, changed. */
  #heed({ cells, sheets, settings, origin }: BookChange): void {
    const sheet = this.#runway?.sheet;
    if (
      sheet === undefined ||
      settings ||
      origin === 'engine' ||
      sheets.size > 0 ||
      cells.some((cell) => cell.sheet === sheet)
    )
      this.#runway = null;
  }
}

const chosen = (event: Event): string => (event.target as HTMLSelectElement).value;

function groupsOf(rows: readonly RunwayRow[]): [way: string, rows: RunwayRow[]][] {
  const groups = new Map<string, RunwayRow[]>();
  for (const row of rows) groups.set(row.way, [...(groups.get(row.way) ?? []), row]);
  return waysOf({ rows, apart: [] }).map((way) => [way, groups.get(way) ?? []]);
}

export type { CroftEvents } from '../events.js';

declare global {
  interface HTMLElementTagNameMap {
    'croft-runway': CroftRunway;
  }
}
