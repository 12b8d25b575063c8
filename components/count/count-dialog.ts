import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { LiveBook } from '../../src/live/live-book.js';
import type { PlaceToCount } from '../../src/planning/week/index.js';
import { phrase, say } from '../../src/words/index.js';
import { amountsByLine, fillsTelephone } from '../look/dialog-styles.js';
import { inWords } from '../look/problems.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import { foodNames } from '../week/food-names.js';
import { countStyles } from './count-styles.js';
import { countLine, unseenView } from './count-view.js';
import { countedOf, type Entries, type Entry, postingOf, type ToBeCounted, toBeCounted } from './counting.js';

/** There a field that takes the keyboard brings one up, over half of the shelf: only where someone touches it. */
const byTouch = (): boolean => matchMedia('(pointer: coarse)').matches;
const BLANK: Entry = { typed: '', notEaten: false };

/**
 * Counting the shelf again, one place after another, with the keyboard or a phone's number pad. What differs is
 * posted as draws 'count', a place (or whatever was counted) as one step of undo.
 */
@customElement('croft-count-dialog')
export class CountDialog extends ActionDialog {
  static override styles = [...ActionDialog.styles, amountsByLine, countStyles, fillsTelephone];

  @state() private at = 0;
  @state() private entries: Entries = new Map();
  /** What posting came to, place after place. */
  @state() private posted: readonly string[] = [];
  /** Someone is leaving with counts that are not posted. */
  @state() private leaving = false;
  #toCount: ToBeCounted | null = null;

  protected override heading = phrase('Count the shelf');

  protected override content(live: LiveBook): TemplateResult {
    // As the shelf stood when counting began: a place is not to change under the hand that counts it.
    this.#toCount ??= toBeCounted(live);
    const { places, unseen } = this.#toCount;
    const place = places[this.at];
    if (!place) {
      return html`<p>${say`Nothing on the shelf has anything left to be counted. Write lots on the Shelf sheet first.`}</p>
        ${this.foot()}`;
    }
    const nameOf = foodNames(live);
    return html`
      ${this.#where(places)}
      ${unseenView(unseen, { nameOf, placeOf: (lot) => this.#placeOf(lot), goTo: (lot) => void this.#goTo(lot) })}
      ${this.#said()} ${this.#lines(live, place)} ${this.#foot(live, places)}
    `;
  }

  #where(places: readonly PlaceToCount[]): TemplateResult {
    return html`<div class="where">
      <button class="button" type="button" aria-label=${say`Place before`} ?disabled=${this.at === 0} @click=${() => this.#place(this.at - 1)}>
        <span class="turns" aria-hidden="true">←</span>
      </button>
      <div class="field">
        <label for="place">${say`Place ${this.at + 1} of ${places.length}`}</label>
        <select id="place" @change=${(event: Event) => this.#place((event.target as HTMLSelectElement).selectedIndex)}>
          ${places.map(
            ({ place, lots }, i) =>
              html`<option .selected=${i === this.at}>${place || say`No place written`} (${lots.length})</option>`,
          )}
        </select>
      </div>
      <button
        class="button"
        type="button"
        aria-label=${say`Place after`}
        ?disabled=${this.at === places.length - 1}
        @click=${() => this.#place(this.at + 1)}
      >
        <span class="turns" aria-hidden="true">→</span>
      </button>
    </div>`;
  }

  #lines(live: LiveBook, { place, lots }: PlaceToCount): TemplateResult {
    const { unseen } = this.#toCount!;
    const nameOf = foodNames(live);
    const found = postingOf(live, this.entries, unseen);
    const counted = found.ok ? found.value.counted : null;
    return html`<p class="small quiet" id="how">
        ${
          byTouch()
            ? say`As written: touch the amount. Otherwise touch − or +, or write what stands there. Blank: you did not look.`
            : say`Write what stands there, and Enter goes on; arrows move up and down. Blank: you did not look.`
        }
      </p>
      <ul class="lines" aria-label=${place ? say`Lots of ${place}` : say`Lots of no place`} @keydown=${this.#pressed}>
        ${repeat(
          lots,
          ({ lot }) => lot,
          (lot) =>
            countLine({
              lot,
              name: nameOf(lot.food),
              entry: this.entries.get(lot.lot) ?? BLANK,
              change: counted?.changes.find((each) => each.lot === lot.lot) ?? null,
              problem: counted?.problems[lot.lot] ?? null,
              months: unseen.find(({ lots: ids }) => ids.includes(lot.lot))?.months ?? null,
              write: (change) => this.#write(lot.lot, change),
            }),
        )}
      </ul>`;
  }

  #said(): TemplateResult | typeof nothing {
    return html`<div class="said small" role="status">
      ${this.posted.map((words) => html`<p>${words}</p>`)}
    </div>`;
  }

  #foot(live: LiveBook, places: readonly PlaceToCount[]): TemplateResult {
    const n = countedOf(this.entries).size;
    const last = this.at === places.length - 1;
    const after = places[this.at + 1]?.place;
    const next = last ? '' : after ? say` and go to ${after}` : say` and go to the next place`;
    if (this.leaving) {
      return html`<div class="row ends" role="alert">
        <span class="problem">${say`${n} counted and not posted yet.`}</span>
        <button class="button" type="button" @click=${() => this.close(this.posted.at(-1) ?? null)}>${say`Throw them away`}</button>
        <button class="button first" type="button" @click=${() => this.#post(live, true)}>${say`Post them`}</button>
      </div>`;
    }
    return html`<div class="row ends">
      <button class="button" type="button" @click=${this.#leave}>${say`Close`}</button>
      ${
        n === 0
          ? nothing
          : html`<button class="button first" id="post" type="button" @click=${() => this.#post(live, last)}>
              ${n === 1 ? say`Post this one` : say`Post these ${n}`}${next}
            </button>`
      }
    </div>`;
  }

  #write(lot: string, change: Partial<Entry>): void {
    const entries = new Map(this.entries);
    entries.set(lot, { ...(entries.get(lot) ?? BLANK), ...change });
    this.entries = entries;
    this.leaving = false;
  }

  #post(live: LiveBook, close: boolean): void {
    const { places, unseen } = this.#toCount!;
    const found = postingOf(live, this.entries, unseen);
    const wrong = found.ok ? Object.entries(found.value.counted.problems)[0] : null;
    if (!found.ok || wrong) {
      this.leaving = false;
      if (wrong) void this.#goTo(wrong[0]);
      else if (!found.ok) this.posted = [...this.posted, inWords(found.problem)];
      return;
    }
    const { counted, command } = found.value;
    const done = command ? live.apply(command) : null;
    if (done && !done.ok) {
      this.posted = [...this.posted, inWords(done.problem)];
      return;
    }
    const nameOf = foodNames(live);
    const changes = counted.changes.map(({ food, words }) => `${nameOf(food)}: ${words}`);
    const said = [
      counted.said,
      ...changes.map((words) => `${words}.`),
      command ? say`Undo takes it back.` : '',
    ];
    this.posted = [...this.posted, said.filter(Boolean).join(' ')];
    this.entries = new Map();
    // What was counted is now as it was counted.
    const before = this.#toCount!;
    const now = new Map(
      toBeCounted(live)
        .places.flatMap(({ lots }) => lots)
        .map((lot) => [lot.lot, lot]),
    );
    this.#toCount = {
      places: before.places.map(({ place, lots }) => ({
        place,
        lots: lots.map((lot) => now.get(lot.lot) ?? { ...lot, left: 0 }),
      })),
      unseen: toBeCounted(live).unseen,
    };
    if (close) this.close(this.posted.at(-1) ?? null);
    else this.#place(Math.min(this.at + 1, places.length - 1));
  }

  #place(at: number): void {
    this.at = at;
    void this.updateComplete.then(() => {
      this.renderRoot.querySelector('.lines')?.scrollTo({ top: 0 });
      if (byTouch()) void this.toTop();
      else this.#fields()[0]?.focus();
    });
  }

  #placeOf(lot: string): string {
    return this.#toCount?.places.find(({ lots }) => lots.some((each) => each.lot === lot))?.place ?? '';
  }

  async #goTo(lot: string): Promise<void> {
    const at = this.#toCount!.places.findIndex(({ lots }) => lots.some((each) => each.lot === lot));
    if (at >= 0) this.at = at;
    await this.updateComplete;
    const field = this.#fields().find(({ dataset }) => dataset.lot === lot);
    field?.focus();
    field?.scrollIntoView({ block: 'nearest' });
  }

  #fields(): HTMLInputElement[] {
    return [...this.renderRoot.querySelectorAll<HTMLInputElement>('.lines input[data-lot]')];
  }

  readonly #pressed = (event: KeyboardEvent): void => {
    const field = event.target as HTMLInputElement;
    if (field.dataset.lot === undefined) return;
    const fields = this.#fields();
    const step = { Enter: 1, ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const to = fields[fields.indexOf(field) + step];
    if (to) {
      to.focus();
      to.select();
    } else if (step > 0) this.#beyond();
  };

  /** After the last lot of a place: to what was counted, else to the next place. */
  #beyond(): void {
    const post = this.renderRoot.querySelector<HTMLElement>('#post');
    if (post) post.focus();
    else if (this.at < this.#toCount!.places.length - 1) this.#place(this.at + 1);
  }

  readonly #leave = (): void => {
    if (countedOf(this.entries).size > 0) this.leaving = true;
    else this.close(this.posted.at(-1) ?? null);
  };

  protected override firstUpdated(changed: Map<PropertyKey, unknown>): void {
    super.firstUpdated(changed);
    this.dialog.addEventListener('cancel', (event) => {
      if (countedOf(this.entries).size === 0 || this.leaving) return;
      event.preventDefault();
      this.leaving = true;
    });
    if (!byTouch()) this.#fields()[0]?.focus();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-count-dialog': CountDialog;
  }
}
