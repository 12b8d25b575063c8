import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { keyed } from 'lit/directives/keyed.js';
import {
  EXAMPLE_CONTEXT,
  type FunctionContext,
  functionNamed,
  standardFunctions,
} from '../../src/formulas/index.js';
import { say, spoken, spokenTag } from '../../src/words/index.js';
import { BookController } from '../book/find-book.js';
import { base } from '../look/base.js';
import { Roving } from '../pictures/roving.js';
import { found, foundInWords, type ListedFunction } from './found.js';
import './function-reference.js';
import { tickTold } from '../told-as-text.js';
import { functionsStyles } from './functions-styles.js';

/**
 * The reference of formula functions: a list to search, and of each function what it gives, its arguments with
 * their units, its source, and an example in which the numbers can be changed: the value and its working follow,
 * and what does not fit says why. Inside a book the day and the season basis are the book's; else the examples'.
 *
 * @element croft-functions
 * @attr function - Name of the function that is shown, such as `JARS_PER_BUSHEL`; the first one found unless given.
 * @attr search - Only functions that hold these words: in their names, their help or their arguments.
 * @attr book - Id of the `<croft-book>`; the one around it, if any, unless given.
 * @attr bare - Without the title.
 * @attr theme - `light`, `dark` or `auto`; else the page's `color-scheme` counts.
 * @fires croft-function - A person chose a function: `detail` is `{ name }`.
 * @csspart controls - The search.
 * @csspart list - The list of functions.
 * @csspart reference - What is said of the function that is shown.
 * @cssprop --croft-list-height - Greatest height of the list beside the reference.
 */
@customElement('croft-functions')
export class CroftFunctions extends LitElement {
  static override styles = [base, functionsStyles];

  @property({ reflect: true, useDefault: true }) function = '';
  @property() search = '';
  @property({ type: Boolean, converter: tickTold }) bare = false;
  @property({ reflect: true }) theme: string | null = null;
  readonly #book = new BookController(this, () => this.requestUpdate());
  readonly #roving = new Roving(this);

  /** Shows a function by its name, in any case; the search is cleared where it does not hold it. */
  show(name: string): void {
    this.function = name.trim().toUpperCase();
    if (!this.#names.includes(this.function)) this.search = '';
  }

  /** Puts the keyboard into the search. */
  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('#search')?.focus();
  }

  protected override updated(changed: PropertyValues): void {
    if (changed.has('function'))
      this.renderRoot
        .querySelector(`[data-mark="${CSS.escape(this.#shown)}"]`)
        ?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  get #names(): readonly string[] {
    return found(this.search).flatMap(({ functions }) => functions.map(({ name }) => name));
  }

  /** The one asked for where the search holds it, else the first that it holds. */
  get #shown(): string {
    const names = this.#names;
    const asked = this.function.trim().toUpperCase();
    return names.includes(asked) ? asked : (names[0] ?? '');
  }

  /** The day and basis to work examples out with; those of the examples where there is no book. */
  get #context(): FunctionContext {
    const { household } = this.#book.live ?? {};
    return household ? { asOf: household.asOf, basis: household.basis } : EXAMPLE_CONTEXT;
  }

  protected override render() {
    const groups = found(this.search);
    const shown = this.#shown;
    return html`
      ${this.bare ? nothing : html`<h2>${say`Functions`}</h2>`}
      <div class="controls field" part="controls" role="search">
        <label for="search">${say`Search`}</label>
        <input
          id="search"
          type="search"
          autocomplete="off"
          spellcheck="false"
          placeholder=${say`jars, frost, eggs…`}
          .value=${this.search}
          aria-describedby="found"
          @input=${this.#searched}
          @keydown=${this.#searchKey}
        />
      </div>
      <p id="found" class="small quiet" role="status">${foundInWords(groups)}</p>
      <div class="both">
        <nav part="list" aria-label=${say`Functions`} @focusin=${this.#roving.focused} @keydown=${this.#roving.pressed}>
          ${groups.map(
            ({ title, functions }, i) => html`<div role="group" aria-labelledby=${`group-${i}`}>
              <h3 id=${`group-${i}`}>${spoken(title)}</h3>
              <ul>
                ${functions.map((each) => this.#line(each, shown))}
              </ul>
            </div>`,
          )}
        </nav>
        <div part="reference" class="reference">${this.#reference(shown)}</div>
      </div>
    `;
  }

  #line({ name, summary }: ListedFunction, shown: string): TemplateResult {
    const stop = this.#roving.among(this.#names);
    return html`<li>
      <button
        type="button"
        data-mark=${name}
        tabindex=${name === stop ? 0 : -1}
        aria-current=${name === shown ? 'true' : nothing}
        title=${spoken(summary)}
        @click=${() => void this.#choose(name)}
      >
        ${name}
      </button>
    </li>`;
  }

  #reference(name: string) {
    const declaration = functionNamed(name);
    if (declaration)
      return keyed(
        name,
        html`<croft-function-reference
          .declaration=${declaration}
          .context=${this.#context}
          .inBook=${this.#book.live !== null}
          .language=${spokenTag()}
        ></croft-function-reference>`,
      );
    const standard = standardFunctions.find((each) => each.name === name);
    if (!standard) return nothing;
    return html`<h3 tabindex="-1">${standard.signature}</h3>
      <p>${spoken(standard.summary)}</p>
      <p class="small quiet">
        ${say`A function of the OpenFormula standard.`} <code>[more]</code> ${say`stands for any number of further ones.`}
      </p>`;
  }

  async #choose(name: string): Promise<void> {
    this.function = name;
    this.dispatchEvent(
      new CustomEvent('croft-function', { detail: { name }, bubbles: true, composed: true }),
    );
    await this.updateComplete;
    const of = this.renderRoot.querySelector<HTMLElement>('croft-function-reference, .reference h3');
    of?.focus();
  }

  readonly #searched = (event: Event): void => {
    this.search = (event.target as HTMLInputElement).value;
  };

  /** Down to the list, or straight to the first that was found. */
  readonly #searchKey = (event: KeyboardEvent): void => {
    if (event.isComposing) return;
    if (event.key === 'ArrowDown') {
      event.preventDefault();
      this.renderRoot.querySelector<HTMLElement>('[data-mark][tabindex="0"]')?.focus();
    } else if (event.key === 'Enter' && this.#shown !== '') {
      event.preventDefault();
      void this.#choose(this.#shown);
    }
  };
}

export type { CroftEvents } from '../events.js';

declare global {
  interface HTMLElementTagNameMap {
    'croft-functions': CroftFunctions;
  }
}
