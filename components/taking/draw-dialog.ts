import { html, nothing, type TemplateResult } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import {
  amountTyped,
  drawOf,
  linesNamed,
  type Take,
  type TakeLine,
  takeLines,
} from '../../src/live/doings/take-from-shelf.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { toIsoDay } from '../../src/planning/dates.js';
import { DRAW_PURPOSES } from '../../src/planning/types.js';
import { amountWords, foodWords } from '../../src/planning/week/words.js';
import { type Problem, refuse } from '../../src/problem.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { amountsByLine, fillsTelephone } from '../look/dialog-styles.js';
import { typedText } from '../look/typed-text.js';
import { ActionDialog } from '../sheet/actions/action-dialog.js';
import { readLotLine } from '../sheet/lot-line.js';
import { takeLine } from './take-line.js';
import { takeStyles } from './take-styles.js';
import { exampleOf, nameIn, notFound, takenWords } from './take-words.js';

interface Taken {
  readonly row: string;
  readonly words: string;
}

/** So many lines are shown before somebody writes which; more only where they are asked for. */
const SHOWN = 12;

/** Writing down what comes up from the shelf, by tapping or by typing; each is a draw and one step of undo. */
@customElement('croft-draw-dialog')
export class DrawDialog extends ActionDialog {
  static override styles = [...ActionDialog.styles, amountsByLine, takeStyles, fillsTelephone];

  @state() private sought = '';
  @state() private chosen: string | null = null;
  @state() private typed = '1';
  @state() private measure: string | null = null;
  @state() private said: Problem | string | null = null;
  @state() private taken: readonly Taken[] = [];
  @state() private all = false;
  @query('#which') private which!: HTMLInputElement;

  protected override heading = phrase('Take from the shelf');

  protected override content(live: LiveBook): TemplateResult {
    const lines = takeLines(live);
    if (lines.length === 0)
      return html`<p>${say`Foods lists nothing of which something is left. Write lots on the Shelf and their foods on Foods first.`}</p>
        ${this.foot()}`;
    return html`
      ${this.#once(live)}
      <form class="field" @submit=${(event: Event) => this.#enter(event, lines)}>
        <label for="which">${say`What is taken`}</label>
        <input
          id="which"
          autocomplete="off"
          enterkeyhint="go"
          placeholder=${exampleOf(lines)}
          aria-describedby="how said"
          .value=${this.sought}
          @input=${this.#seek}
        />
        <p id="how" class="small quiet">${say`Tap a food, or write it with how many and press Enter.`}</p>
      </form>
      <div id="said">${this.outcome(this.said)}</div>
      ${this.#takenSoFar()} ${this.#list(live, lines)} ${this.foot()}
    `;
  }

  #once(live: LiveBook): TemplateResult {
    return html`<div class="once">
      <div class="field">
        <label for="day">${say`Date`}</label>
        <input id="day" type="date" .defaultValue=${toIsoDay(live.household.asOf)} />
      </div>
      <div class="field">
        <label for="purpose">${say`For`}</label>
        <select id="purpose">
          ${DRAW_PURPOSES.filter((each) => each !== 'count').map(
            (each) => html`<option value=${each}>${spoken(each)}</option>`,
          )}
        </select>
      </div>
    </div>`;
  }

  #list(live: LiveBook, lines: readonly TakeLine[]): TemplateResult {
    const found = linesNamed(lines, nameIn(this.sought));
    if (found.length === 0)
      return html`<p>${say`Nothing that is left is called that. Write it as on Foods.`}</p>`;
    const few = this.all || this.sought !== '' ? found : found.slice(0, SHOWN);
    const draws = live.sheetOfKind('draws');
    const measures = draws ? (live.choices(draws, null, 'container') ?? []).map(({ value }) => value) : [];
    return html`<ul class="lines" aria-label=${say`What is left`}>
        ${few.map((line, at) =>
          takeLine(
            {
              line,
              chosen: line.key === this.chosen,
              typed: this.typed,
              measure: this.measure ?? line.counted,
              measures:
                line.counted === null || measures.includes(line.counted)
                  ? measures
                  : // One name may be that of two measures (`piece` and `each` in German).
                    [line.counted, ...measures.filter((each) => spoken(each) !== spoken(line.counted!))],
              choose: () => void this.#choose(line, at),
              write: (typed) => {
                this.typed = typed;
              },
              stepBy: (by) => this.#step(by),
              measured: (id) => {
                this.measure = id === line.counted ? null : id;
              },
              take: () => void this.#takeTyped(line, at),
            },
            at,
          ),
        )}
      </ul>
      ${
        few.length < found.length
          ? html`<button class="link" type="button" @click=${this.#showAll}>${say`Show all ${String(found.length)}`}</button>`
          : nothing
      }`;
  }

  #takenSoFar(): TemplateResult | typeof nothing {
    if (this.taken.length === 0) return nothing;
    return html`<div>
      <p class="small quiet">${say`Taken so far, the latest first:`}</p>
      <ul class="taken small">
        ${this.taken.map(
          (each) => html`<li>
            <span>${each.words}</span>
            <button class="link" type="button" aria-label=${say`Take back: ${each.words}`} @click=${() => this.#takeBack(each)}>
              ${say`Take back`}
            </button>
          </li>`,
        )}
      </ul>
    </div>`;
  }

  readonly #seek = (event: Event): void => {
    this.sought = (event.target as HTMLInputElement).value;
    this.chosen = null;
    this.said = null;
  };

  readonly #showAll = (): void => {
    this.all = true;
  };

  async #choose(line: TakeLine, at: number): Promise<void> {
    this.chosen = this.chosen === line.key ? null : line.key;
    const written = readLotLine(this.sought);
    this.typed = typedText(written.ok && written.value.count ? written.value.count : 1);
    this.measure = null;
    this.said = null;
    await this.updateComplete;
    const part = this.chosen === null ? `[data-line='${at}']` : '.how-much .first';
    this.renderRoot.querySelector<HTMLElement>(part)?.focus();
    this.renderRoot.querySelector('.how-much')?.scrollIntoView({ block: 'nearest' });
  }

  #step(by: 1 | -1): void {
    const now = amountTyped(this.typed);
    const next = (now.ok ? now.value : 0) + by;
    if (next > 0) this.typed = typedText(next);
  }

  async #takeTyped(line: TakeLine, at: number): Promise<void> {
    const amount = amountTyped(this.typed);
    if (!amount.ok) {
      this.said = amount.problem;
      this.renderRoot.querySelector<HTMLElement>('#amount')?.focus();
      return;
    }
    if (!this.#take({ line, amount: amount.value, measure: this.measure })) return;
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>(`[data-line='${at}']`)?.focus();
  }

  /** A line as it was written: taken at once where it names one food. */
  #enter(event: Event, lines: readonly TakeLine[]): void {
    event.preventDefault();
    const read = readLotLine(this.sought);
    const name = read.ok ? read.value.food : nameIn(this.sought);
    if (!read.ok && name === '') {
      this.said = read.problem;
      return;
    }
    const found = linesNamed(lines, name);
    const [line] = found;
    if (!line || found.length > 1) {
      this.said = refuse(
        'no-food',
        line ? say`More than one food is called that.` : say`Nothing that is left is called that.`,
        line ? say`Tap the one that is meant, or write the way it is kept too.` : say`Write it as on Foods.`,
      ).problem;
      return;
    }
    if (!read.ok) {
      this.said = read.problem;
      return;
    }
    // A pint of what is frozen is a bag.
    const again = readLotLine(this.sought, line.way);
    const { count, container } = again.ok ? again.value : read.value;
    const amount = amountTyped(typedText(count ?? 1));
    if (!amount.ok) this.said = amount.problem;
    else this.#take({ line, amount: amount.value, measure: container === line.counted ? null : container });
    this.which.focus();
  }

  #take(take: Take): boolean {
    const { live } = this;
    if (!live) return false;
    const field = (id: string): string =>
      this.renderRoot.querySelector<HTMLInputElement | HTMLSelectElement>(`#${id}`)?.value ?? '';
    const sheet = live.sheetOfKind('draws') ?? 'draws';
    const outcome = live.insertRows(sheet, [drawOf(take, field('day'), field('purpose'))]);
    if (!outcome.ok) {
      this.said = outcome.problem;
      return false;
    }
    const [row] = outcome.rows;
    const { line, amount, measure } = take;
    const unit = measure ?? line.counted;
    const much = unit === null ? String(amount) : amountWords(amount, unit);
    const words = `${much} · ${foodWords(line.food, null)}, ${spoken(line.way)}`;
    this.taken = [{ row: row!, words }, ...this.taken];
    const problem = ['amount', 'container', 'date', 'not_found']
      .map((column) => live.problem(sheet, row!, column))
      .find(Boolean);
    const now = takeLines(live).find(({ key }) => key === line.key);
    const missed = live.value(sheet, row!, 'not_found');
    this.said =
      problem ?? (typeof missed === 'number' ? notFound(words, missed, unit) : takenWords(words, now));
    this.chosen = null;
    this.sought = '';
    return true;
  }

  #takeBack(each: Taken): void {
    const { live } = this;
    const outcome = live?.removeRows(live.sheetOfKind('draws')!, [each.row]);
    if (!outcome) return;
    this.said = outcome.ok ? say`Back on the shelf: ${each.words}.` : outcome.problem;
    if (outcome.ok) this.taken = this.taken.filter((other) => other !== each);
    this.which.focus();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-draw-dialog': DrawDialog;
  }
}
