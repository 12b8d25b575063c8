import { css, html, LitElement, nothing, render, type TemplateResult, unsafeCSS } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { type Label, labelsFor } from '../../src/planning/week/index.js';
import { say, spoken } from '../../src/words/index.js';
import { BookController } from '../book/find-book.js';
import { base } from '../look/base.js';
import { PAPER_FONTS, printInFrame } from '../look/print-frame.js';
import { styled } from '../look/styled.js';
import { withoutBook } from '../pictures/no-book.js';
import { listTold, type Several } from '../told-as-text.js';
import { foodNames } from '../week/food-names.js';
import { LABEL_RULES, type LabelSize, sizeCalled } from './label-sheets.js';

const LONG_NAME = 18;

/** More labels than these are shown only in part; all are printed. */
const MOST_SHOWN = 60;

/**
 * Labels for lots of the Shelf, as they are printed: food, day put up, best quality by, place, and the lot's id.
 *
 * @element croft-labels
 * @attr book - Id of the `<croft-book>`; the one around it unless given.
 * @attr lots - Ids of lots, with commas between.
 * @attr each - `container` (usual): one for every jar or bag that is left; `lot`: one for each lot.
 * @attr size - `small` for lids, `usual` for jars, `large` for freezer bags.
 * @attr theme - `light`, `dark` or `auto`; else the page's `color-scheme` counts. Labels are always on white.
 * @csspart labels - The labels.
 * @csspart empty - What stands there while there are none.
 */
@customElement('croft-labels')
export class CroftLabels extends LitElement {
  static override styles = [
    base,
    css`
      ${unsafeCSS(LABEL_RULES)}
      .labels {
        gap: 0.375rem;
      }
      .empty {
        border: 1px dashed var(--plan-line);
        border-radius: var(--radius);
        padding: 1rem;
      }
      .more {
        margin-top: 0.5rem;
      }
      @media print {
        .labels {
          gap: 0;
        }
        .more {
          display: none;
        }
      }
    `,
  ];

  @property({ converter: listTold })
  get lots(): readonly string[] {
    return this.#lots;
  }
  set lots(told: Several) {
    this.#lots = listTold(told);
  }
  @property() each: 'container' | 'lot' = 'container';
  @property() size = 'usual';
  @property({ reflect: true }) theme: string | null = null;
  /** On paper all of them stand. */
  @state() private everything = false;
  #lots: readonly string[] = [];
  readonly #book = new BookController(this);

  /** The labels that are printed, in the order of `lots`. */
  labels(live: LiveBook | null = this.#book.live): readonly Label[] {
    return live ? labelsFor(live.foodLines, this.lots, { each: this.each, nameOf: foodNames(live) }) : [];
  }

  /** Prints the labels alone, all of them. */
  print(): void {
    const all = this.labels();
    if (all.length === 0) return;
    const size = sizeCalled(this.size);
    printInFrame(say`Labels`, PAPER_RULES, (body) => render(labelsView(all, size), body));
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('beforeprint', this.#showAll);
    window.addEventListener('afterprint', this.#showAll);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('beforeprint', this.#showAll);
    window.removeEventListener('afterprint', this.#showAll);
  }

  readonly #showAll = ({ type }: Event): void => {
    this.everything = type === 'beforeprint';
    // Printing does not wait for the usual update.
    if (this.isUpdatePending) this.performUpdate();
  };

  protected override render() {
    const { live, book } = this.#book;
    if (!live) return withoutBook(book);
    const all = this.labels(live);
    if (all.length === 0) {
      return html`<p class="empty" part="empty">
        ${say`No labels: choose lots that have something left and a container written.`}
      </p>`;
    }
    const shown = this.everything ? all : all.slice(0, MOST_SHOWN);
    return html`${labelsView(shown, sizeCalled(this.size))}
      ${
        all.length > shown.length
          ? html`<p class="more small quiet">${say`The first ${MOST_SHOWN} of ${all.length}; all are printed.`}</p>`
          : nothing
      }`;
  }
}

const PAPER_RULES = `
  @page { margin: 10mm; }
  body { margin: 0; font: 8pt/1.2 ${PAPER_FONTS}; }
  ${LABEL_RULES}
`;

const labelsView = (labels: readonly Label[], size: LabelSize): TemplateResult => html`
  <ul class="labels ${size.id}" part="labels" aria-label=${say`Labels`}>
    ${labels.map((label) => labelView(label, size))}
  </ul>
`;

function labelView(label: Label, { width, height }: LabelSize): TemplateResult {
  const { lot, number, of, food, way, container, putUp, bestBy, place } = label;
  return html`<li
    class="label ${food.length > LONG_NAME ? 'long' : ''}"
    ${styled({ width: `${width}mm`, height: `${height}mm` })}
  >
    <span class="food">${food}<span class="kept">${spoken(way)}, ${spoken(container)}</span></span>
    <span class="when">${putUp || say`put up ______`}${bestBy ? html`<span class="best">${bestBy}</span>` : nothing}</span>
    <span class="where">
      <span>${place || nothing}</span>
      <span class="id">${lot}${of > 1 ? ` ${number}/${of}` : ''}</span>
    </span>
  </li>`;
}

export type { CroftEvents } from '../events.js';

declare global {
  interface HTMLElementTagNameMap {
    'croft-labels': CroftLabels;
  }
}
