import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import type { DayNumber } from '../../src/planning/types.js';
import { say, spoken } from '../../src/words/index.js';
import { BookController } from '../book/find-book.js';
import { base } from '../look/base.js';
import { withoutBook } from '../pictures/no-book.js';
import { pictureStyles } from '../pictures/picture-styles.js';
import { Roving } from '../pictures/roving.js';
import { showCell } from '../pictures/show.js';
import { tickTold } from '../told-as-text.js';
import { markOf, patterns, roomChart } from './room-chart.js';
import { type EatFirstRow, type RoomModel, readRoom, type StoreyRoom } from './room-model.js';
import { roomStyles } from './room-styles.js';
import { roomTable } from './room-table.js';
import {
  eatFirstInWords,
  freedInWords,
  nothingOver,
  STOREYS,
  storeyInWords,
  unitOfStorey,
  weekInWords,
} from './room-words.js';

/** Surpluses in sight; the others are one step away. */
const FIRST = 6;

/**
 * Picture of shelf room and freezer room over the coming year, week by week, against what there is room for:
 * stock is eaten down, batches and harvests come in. Says the first week that does not fit, and which surplus to
 * eat first to make room.
 *
 * @element croft-room
 * @attr book - Id of the `<croft-book>`; the one around it unless given.
 * @attr view - `picture` (usual) or `table`: the same figures as a table.
 * @attr bare - Without the title and the controls.
 * @attr theme - `light`, `dark` or `auto`; else the page's `color-scheme` counts.
 * @fires croft-show - A person chose a food to eat first: `detail` is `{ sheet, row, column }` of its Foods row,
 *   for the page to bring that sheet into view. The cell is selected in the book before.
 * @csspart controls - Choices above the picture.
 * @csspart chart - The picture.
 * @csspart first - What to eat first.
 * @csspart empty - What stands there while the book has no foods.
 * @cssprop --croft-bar - Colour of what stands there.
 * @cssprop --croft-short - Colour of what does not fit.
 */
@customElement('croft-room')
export class CroftRoom extends LitElement {
  static override styles = [base, pictureStyles, roomStyles];

  @property({ reflect: true, useDefault: true }) view: 'picture' | 'table' = 'picture';
  @property({ type: Boolean, converter: tickTold }) bare = false;
  @property({ reflect: true }) theme: string | null = null;
  /** The week pointed at, by its mark. */
  @state() private at: string | null = null;
  readonly #book = new BookController(this, (change) => this.#heed(change));
  readonly #roving = new Roving(this);
  #live: LiveBook | null = null;
  #room: RoomModel | null = null;

  /** Puts the keyboard on the picture. */
  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('[data-mark][tabindex="0"]')?.focus();
  }

  protected override willUpdate(): void {
    const { live } = this.#book;
    if (live === this.#live && this.#room) return;
    this.#live = live;
    this.#room = live && readRoom(live);
  }

  protected override render() {
    const live = this.#live;
    if (!live) return withoutBook(this.#book.book);
    const room = this.#room;
    if (!room || live.foodLines.length === 0) return this.#empty();
    return html`
      ${this.bare ? nothing : this.#head()}
      ${this.view === 'table' ? roomTable(room) : this.#picture(room)} ${this.#first(room)} ${leftOut(room)}
    `;
  }

  #empty(): TemplateResult {
    return html`<div class="empty" part="empty">
      <h2>${say`Room for it all`}</h2>
      <p>
        ${say`Write what stands on the Shelf, and what you keep in Foods: this picture then shows whether it all fits through the year.`}
      </p>
    </div>`;
  }

  #head(): TemplateResult {
    return html`<div class="over-picture">
      <div class="head">
        <h2>${say`Room for it all`}</h2>
        <p class="quiet small">${say`What stands there at the end of each week, if the plan is kept.`}</p>
      </div>
      <div class="controls" part="controls">
        <button class="button" type="button" @click=${this.#turn}>
          ${this.view === 'table' ? say`Show as a picture` : say`Show as a table`}
        </button>
      </div>
    </div>`;
  }

  #picture(room: RoomModel): TemplateResult {
    const marks = room.storeys.flatMap((each) => each.weeks.map(({ from }) => markOf(each, from)));
    const tab = this.#roving.among(marks);
    return html`${patterns}
      <p class="unseen" id="keys">${say`Arrow keys move from week to week.`}</p>
      <div
        class="two"
        part="chart"
        @keydown=${this.#roving.pressed}
        @focusin=${this.#focused}
        @pointerover=${this.#pointed}
      >
        ${room.storeys.map((each) => this.#storey(each, room, tab))}
      </div>`;
  }

  #storey(each: StoreyRoom, { asOf }: RoomModel, tab: string | undefined): TemplateResult {
    const title = spoken(STOREYS[each.storey].title);
    const unit = unitOfStorey(each.storey);
    return html`<section aria-labelledby=${each.storey}>
      <h3 id=${each.storey}>${title} <span class="quiet small">${unit}</span></h3>
      <p class=${each.full >= 0 ? 'full' : ''}>${storeyInWords(each, asOf)}</p>
      ${each.room === null && (each.weeks[each.most]?.taken ?? 0) === 0 ? nothing : this.#weeks(each, asOf, tab)}
    </section>`;
  }

  #weeks(each: StoreyRoom, asOf: DayNumber, tab: string | undefined): TemplateResult {
    const week = each.weeks.find(({ from }) => markOf(each, from) === this.at);
    return html`<div role="group" aria-label=${say`${STOREYS[each.storey].title}, week by week`} aria-describedby="keys">
        ${roomChart(each, asOf, tab)}
      </div>
      <p class="readout small figures" aria-hidden="true">
        ${week ? weekInWords(each, week) : html`<span class="quiet">${say`Point at a week, or touch it, for its figures.`}</span>`}
      </p>`;
  }

  #first(room: RoomModel): TemplateResult | typeof nothing {
    const none = nothingOver(room);
    if (none) return html`<p part="first">${none}</p>`;
    if (room.eatFirst.length === 0) return nothing;
    const rest = room.eatFirst.slice(FIRST);
    return html`<section part="first" aria-labelledby="first">
      <h3 id="first">${say`Eat first, to make room`}</h3>
      <p class="small">${freedInWords(room)}</p>
      <ul class="first">
        ${room.eatFirst.slice(0, FIRST).map((row) => this.#food(row))}
      </ul>
      ${
        rest.length === 0
          ? nothing
          : html`<details class="small">
              <summary>${say`${rest.length} more`}</summary>
              <ul class="first">
                ${rest.map((row) => this.#food(row))}
              </ul>
            </details>`
      }
    </section>`;
  }

  #food(row: EatFirstRow): TemplateResult {
    const inside = html`<span class="name">${row.name}</span> <span class="way small quiet">${spoken(row.way)}</span
      >: <span class="small figures">${eatFirstInWords(row)}</span>`;
    const { cell } = row;
    return cell
      ? html`<li>
          <button class="mark" type="button" @click=${() => showCell(this, this.#book.book, cell)}>
            ${inside}
          </button>
        </li>`
      : html`<li class="mark">${inside}</li>`;
  }

  readonly #turn = (): void => {
    this.view = this.view === 'table' ? 'picture' : 'table';
  };

  readonly #focused = (event: FocusEvent): void => {
    this.#roving.focused(event);
    this.#pointed(event);
  };

  readonly #pointed = (event: Event): void => {
    const { mark } = event.target instanceof HTMLElement ? event.target.dataset : {};
    if (mark !== undefined) this.at = mark;
  };

  /** Room is reckoned again only when something that it rests on may have changed. */
  #heed({ cells, sheets, settings, origin }: BookChange): void {
    const live = this.#book.live;
    const from: unknown[] = live
      ? [live.sheetOfKind('foods'), live.sheetOfKind('shelf'), live.sheetOfKind('batches')]
      : [];
    const touched = settings || sheets.size > 0 || origin === 'engine';
    if (touched || cells.some(({ sheet }) => from.includes(sheet))) this.#room = null;
  }
}

const leftOut = ({ leftOut: all }: RoomModel): TemplateResult | typeof nothing =>
  all.length === 0
    ? nothing
    : html`<details class="small">
        <summary>${all.length === 1 ? say`One food is left out` : say`${all.length} foods are left out`}</summary>
        <ul>
          ${all.map(({ name, way, why }) => html`<li>${name}, ${spoken(way)}: ${why}</li>`)}
        </ul>
      </details>`;

export type { CroftEvents } from '../events.js';

declare global {
  interface HTMLElementTagNameMap {
    'croft-room': CroftRoom;
  }
}
