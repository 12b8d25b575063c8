import { html, LitElement, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import { settingOf } from '../../src/book/settings.js';
import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import { formatMonthDay } from '../../src/planning/parse-date.js';
import type { DayNumber } from '../../src/planning/types.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { BookController } from '../book/find-book.js';
import { base } from '../look/base.js';
import { type DayLine, dayName, monthNames } from '../pictures/axis-view.js';
import { withoutBook } from '../pictures/no-book.js';
import { pictureStyles } from '../pictures/picture-styles.js';
import { Roving } from '../pictures/roving.js';
import { showCell } from '../pictures/show.js';
import { type TimeAxis, timeAxis } from '../pictures/time-axis.js';
import { shownMonthDay } from '../sheet/shown.js';
import { tickTold } from '../told-as-text.js';
import { seasonKey } from './season-key.js';
import { patterns, seasonMarks } from './season-marks.js';
import {
  type FrostDay,
  frostDays,
  frostFree,
  inOrder,
  type Planting,
  type SeasonOrder,
  type SeasonRow,
  type Span,
  seasonRows,
  seasonSpan,
  seasonWeeks,
} from './season-model.js';
import { readPlantings } from './season-read.js';
import { seasonStyles } from './season-styles.js';
import { cropsTable, weeksTable } from './season-table.js';
import {
  asOfInWords,
  daysInWords,
  frostInWords,
  isLate,
  nextInWords,
  seasonSentence,
} from './season-words.js';

const ORDERS: readonly (readonly [SeasonOrder, string])[] = [
  ['start', phrase('First to start')],
  ['harvest', phrase('First to harvest')],
  ['name', phrase('By name')],
];

/**
 * Picture of the growing year: for each planting when it is started, set out, harvested and put up, with
 * today's line and the frost dates. A frost date is a chance, and its words say which. In the south the
 * picture begins with the present month.
 *
 * @element croft-season
 * @attr book - Id of the `<croft-book>`; the one around it unless given.
 * @attr sort - `start` (usual), `harvest` or `name`.
 * @attr view - `picture` (usual) or `table`: the same days crop by crop, and week by week.
 * @attr bare - Without the title and the controls.
 * @attr theme - `light`, `dark` or `auto`; else the page's `color-scheme` counts.
 * @prop plantings - Plantings to show; those of the book's Beds sheet unless given.
 * @fires croft-show - A person chose a planting of a sheet: `detail` is `{ sheet, row, column }`, for the page
 *   to bring that sheet into view. The cell is selected in the book before.
 * @csspart controls - Choices above the picture.
 * @csspart frosts - The frost dates in words.
 * @csspart key - What the marks mean.
 * @csspart chart - The picture.
 * @csspart empty - What stands there while there are no plantings.
 * @cssprop --croft-bar - Colour of beginnings and of putting up.
 * @cssprop --croft-sprout - Colour of setting out and of growing.
 * @cssprop --croft-harvest - Colour of the harvest.
 * @cssprop --croft-short - Colour of what is late.
 * @cssprop --croft-sticky-top - Height of what the page keeps at the top of the window, for the axis.
 */
@customElement('croft-season')
export class CroftSeason extends LitElement {
  static override styles = [base, pictureStyles, seasonStyles];

  @property({ reflect: true, useDefault: true }) sort: SeasonOrder = 'start';
  @property({ reflect: true, useDefault: true }) view: 'picture' | 'table' = 'picture';
  @property({ type: Boolean, converter: tickTold }) bare = false;
  @property({ reflect: true }) theme: string | null = null;
  @property({ attribute: false }) plantings: readonly Planting[] | null = null;
  readonly #book = new BookController(this, (change) => this.#heed(change));
  readonly #roving = new Roving(this);
  #live: LiveBook | null = null;
  #read: readonly Planting[] | null = null;

  /** Puts the keyboard on the picture. */
  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('[data-mark][tabindex="0"]')?.focus();
  }

  protected override willUpdate(): void {
    const { live } = this.#book;
    if (live !== this.#live) this.#read = null;
    this.#live = live;
    if (live && !this.#read) this.#read = readPlantings(live);
  }

  protected override render() {
    const live = this.#live;
    if (!live) return withoutBook(this.#book.book);
    const rows = inOrder(seasonRows(this.plantings ?? this.#read ?? []), this.sort);
    if (rows.length === 0) return this.#empty(live);
    return html`
      ${this.bare ? nothing : this.#head(live)}
      ${
        this.view === 'table'
          ? html`${cropsTable(rows, (row) => this.#show(row))} ${weeksTable(seasonWeeks(rows))}`
          : this.#picture(live, rows)
      }
    `;
  }

  #empty(live: LiveBook): TemplateResult {
    const { lastFrost, firstFrost } = live.household;
    return html`<div class="empty" part="empty">
      <h2>${say`The growing year`}</h2>
      <p>
        ${
          live.sheetOfKind('beds') === undefined
            ? say`This picture is drawn from a Beds sheet, with one row for each crop that you sow or plant. This book has none.`
            : say`No plantings yet. Write one row in Beds for each crop that you sow or plant, with its variety and how it is started.`
        }
        ${
          lastFrost === null || firstFrost === null
            ? say`Its days count from your last spring frost and first fall frost: write them with the household’s settings.`
            : nothing
        }
      </p>
    </div>`;
  }

  #head(live: LiveBook): TemplateResult {
    return html`<div class="head">
        <h2>${say`The growing year`}</h2>
        ${this.#frosts(live)}
      </div>
      <div class="controls" part="controls">
        <div class="field">
          <label for="sort">${say`Order`}</label>
          <select id="sort" @change=${this.#sorted}>
            ${ORDERS.map(
              ([order, words]) =>
                html`<option value=${order} .selected=${this.sort === order}>${spoken(words)}</option>`,
            )}
          </select>
        </div>
        <button class="button" type="button" @click=${this.#turn}>
          ${this.view === 'table' ? say`Show as a picture` : say`Show as a table`}
        </button>
      </div>`;
  }

  #frosts(live: LiveBook): TemplateResult {
    const { lastFrost, firstFrost } = live.household;
    const words = [
      lastFrost && frostInWords('last', shownMonthDay(formatMonthDay(lastFrost)), chance(live, 'last')),
      firstFrost && frostInWords('first', shownMonthDay(formatMonthDay(firstFrost)), chance(live, 'first')),
    ].filter(Boolean);
    return words.length === 0
      ? html`<p class="small quiet" part="frosts">
          ${say`Write your frost dates with the household’s settings, and they are drawn here.`}
        </p>`
      : html`<ul class="frosts small" part="frosts">
          ${words.map((each) => html`<li>${each}</li>`)}
        </ul>`;
  }

  #picture(live: LiveBook, rows: readonly SeasonRow[]): TemplateResult {
    const { household } = live;
    const { asOf } = household;
    const span = seasonSpan(rows, household);
    const axis = timeAxis(span.from, span.to);
    const frosts = frostDays(household, span);
    const free = frostFree(frosts, span);
    const lines: DayLine[] = [
      ...frosts.map(({ kind, day }): DayLine => ({ x: axis.at(day), kind: `${kind}-frost` })),
      ...(axis.within(asOf) ? [{ x: axis.at(asOf), kind: 'as-of' } as const] : []),
    ];
    const tab = this.#roving.among(rows.map(({ key }) => key));
    return html`${patterns}${seasonKey()}
      <p class="unseen" id="keys">${say`Arrow keys move from one to the next; Enter goes to its row of the Beds sheet.`}</p>
      <div
        role="group"
        aria-label=${say`Plantings over the year`}
        aria-describedby="keys"
        @keydown=${this.#roving.pressed}
        @focusin=${this.#roving.focused}
      >
        <div class="chart" part="chart">
          ${this.#axis(axis, asOf, frosts, live.setting('as_of') !== undefined)}
          <ul class="rows">
            ${repeat(
              rows,
              ({ key }) => key,
              (row) => html`<li>${this.#row(row, axis, asOf, lines, free, tab)}</li>`,
            )}
          </ul>
        </div>
      </div>`;
  }

  #axis(axis: TimeAxis, asOf: DayNumber, frosts: readonly FrostDay[], named: boolean): TemplateResult {
    return html`<div class="axis" aria-hidden="true">
      <div class="line">
        <div class="plot">
          ${axis.within(asOf) ? dayName(axis.at(asOf), asOfInWords(asOf, named)) : nothing}
          ${frosts.map(({ kind, day }) => dayName(axis.at(day), kind === 'last' ? say`last frost` : say`first frost`, 'frost'))} ${monthNames(axis)}
          <svg class="weeks" focusable="false">
            ${axis.weeks.map((x) => svg`<line x1="${x}%" x2="${x}%" y1="0" y2="4"/>`)}
          </svg>
        </div>
      </div>
    </div>`;
  }

  #row(
    row: SeasonRow,
    axis: TimeAxis,
    asOf: DayNumber,
    lines: readonly DayLine[],
    free: readonly Span[],
    tab: string | undefined,
  ): TemplateResult {
    const inside = html`<span class="name"
        >${spoken(row.crop)} ${row.variety ? html`<span class="way small">${row.variety}</span>` : nothing}</span
      ><span class="unseen">: </span>
      ${seasonMarks(row, axis, lines, free)}
      <span class="next small figures ${isLate(row, asOf) ? 'late' : ''}">${nextInWords(row, asOf)}</span
      ><span class="unseen">. </span>
      <span class="days small figures"
        >${daysInWords(row, asOf).map(
          (each, i) => html`${i > 0 ? ' · ' : nothing}<span class="whole">${each}</span>`,
        )}</span
      >`;
    const index = row.key === tab ? 0 : -1;
    return row.cell
      ? html`<button
          class="mark"
          type="button"
          data-mark=${row.key}
          tabindex=${index}
          @click=${() => this.#show(row)}
        >
          ${inside}
        </button>`
      : html`<div class="mark" role="img" data-mark=${row.key} tabindex=${index} aria-label=${seasonSentence(row, asOf)}>${inside}</div>`;
  }

  #show({ cell }: SeasonRow): void {
    if (cell) showCell(this, this.#book.book, { ...cell, column: 'start_on' });
  }

  readonly #sorted = (event: Event): void => {
    const { value } = event.target as HTMLSelectElement;
    this.sort = ORDERS.find(([order]) => order === value)?.[0] ?? 'start';
  };

  readonly #turn = (): void => {
    this.view = this.view === 'table' ? 'picture' : 'table';
  };

  /** Plantings are read again when Beds may have changed, or Foods, which says what is put up. */
  #heed({ cells, sheets, settings, origin }: BookChange): void {
    const live = this.#book.live;
    const from: unknown[] = live ? [live.sheetOfKind('beds'), live.sheetOfKind('foods')] : [];
    const touched = settings || sheets.size > 0 || origin === 'engine';
    if (touched || cells.some(({ sheet }) => from.includes(sheet))) this.#read = null;
  }
}

/** The chance that a frost date stands for, in percent; null where it cannot be read. */
function chance(live: LiveBook, kind: 'last' | 'first'): number | null {
  const id = `${kind}_frost_chance`;
  if (live.settingProblem(id)) return null;
  const value = live.setting(id) ?? settingOf(id)?.usual;
  return typeof value === 'number' ? value : null;
}

export type { CroftEvents } from '../events.js';

declare global {
  interface HTMLElementTagNameMap {
    'croft-season': CroftSeason;
  }
}
