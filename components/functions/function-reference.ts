import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import {
  type ArgumentHelp,
  exampleTexts,
  type FunctionContext,
  type FunctionDeclaration,
  type FunctionReference,
  problemText,
  referenceOf,
  type TriedFunction,
  tryFunction,
} from '../../src/formulas/index.js';
import { withShownDays } from '../../src/live/shown.js';
import { toIsoDay } from '../../src/planning/dates.js';
import { numberFormat, say } from '../../src/words/index.js';
import { base } from '../look/base.js';
import { icons } from '../look/icons.js';
import { referenceStyles } from './functions-styles.js';

/** Words of a declaration as a sentence. */
const sentence = (text: string): string => stopped(text.slice(0, 1).toUpperCase() + text.slice(1));
const stopped = (text: string): string => (/[.?!]$/.test(text) ? text : `${text}.`);
/** A long name may go on in the next line after each of its words. */
const breakable = (text: string): TemplateResult[] =>
  text.split(/(?<=_)/).map((part, i) => (i === 0 ? html`${part}` : html`<wbr />${part}`));

/**
 * Inside `<croft-functions>`: one function with a field for each argument; the answer and its working follow
 * what is typed.
 */
@customElement('croft-function-reference')
export class FunctionReferenceView extends LitElement {
  static override styles = [base, referenceStyles];

  @property({ attribute: false }) declaration!: FunctionDeclaration;
  @property({ attribute: false }) context!: FunctionContext;
  /** The day and basis are those of a book. */
  @property({ type: Boolean }) inBook = false;
  /** The language spoken: another one tells everything anew. */
  @property() language = '';
  @state() private texts: readonly string[] = [];
  @state() private copied = '';
  #reference!: FunctionReference;
  /** The example as its fields were filled. */
  #example: readonly string[] = [];

  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('h3')?.focus();
  }

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('declaration') || changed.has('language'))
      this.#reference = referenceOf(this.declaration);
    const example = exampleTexts(this.declaration);
    const untouched = this.texts.every((text, i) => text === this.#example[i]);
    if (changed.has('declaration') || untouched) this.texts = example;
    this.#example = example;
    if (changed.has('declaration')) this.copied = '';
  }

  protected override render() {
    const { signature, summary, gives, arguments: args, details, caution } = this.#reference;
    const tried = tryFunction(this.declaration, this.texts, this.context);
    return html`<article aria-labelledby="name">
      <h3 id="name" tabindex="-1">${breakable(signature)}</h3>
      <p>${summary} <span class="quiet">${say`Gives ${stopped(gives)}`}</span></p>
      ${caution === '' ? nothing : html`<p class="caution small">${icons.care}<span>${caution}</span></p>`}
      <div class="try">
        <div class="fields" role="group" aria-label=${say`Numbers to try`}>
          ${args.map((arg, i) => this.#field(arg, i))}
        </div>
        ${this.#answer(tried)}
      </div>
      ${
        details.length === 0
          ? nothing
          : html`<ul class="details">
              ${details.map((text) => html`<li>${text}</li>`)}
            </ul>`
      }
      ${this.#errors()}
      <p class="small quiet">${say`Source: ${stopped(this.#reference.source)}`}</p>
    </article>`;
  }

  #field({ name, help, takes, unit, optional, otherwise, values }: ArgumentHelp, i: number): TemplateResult {
    const isNumber = this.declaration.arguments[i]?.kind === 'number';
    return html`<div class="field">
      <label for=${`arg-${i}`}><code>${name}</code>${optional ? html` <span class="quiet">${say`may stay blank`}</span>` : nothing}</label>
      <input
        id=${`arg-${i}`}
        autocomplete="off"
        autocapitalize="off"
        spellcheck="false"
        inputmode=${isNumber ? 'decimal' : 'text'}
        list=${values.length > 0 ? `values-${i}` : nothing}
        aria-describedby=${`help-${i}`}
        .value=${this.texts[i] ?? ''}
        @input=${(event: Event) => this.#typed(i, (event.target as HTMLInputElement).value)}
      />
      ${
        values.length > 0
          ? html`<datalist id=${`values-${i}`}>${values.map((value) => html`<option value=${value}></option>`)}</datalist>`
          : nothing
      }
      <p class="small quiet" id=${`help-${i}`}>
        ${sentence(help)} ${say`Takes ${takes}`}${unit === '' ? '.' : html`${say`; in`} <em>${unit}</em>.`}
        ${optional ? say`Left out: ${stopped(otherwise)}` : nothing}
      </p>
    </div>`;
  }

  #answer({ formula, answer }: TriedFunction): TemplateResult {
    const isExample = exampleTexts(this.declaration).every((text, i) => text === this.texts[i]);
    const day = withShownDays(toIsoDay(this.context.asOf));
    return html`<div class="answer">
      <p class="formula"><code>${formula}</code></p>
      <div role="status" class="says">
        ${
          answer.ok
            ? html`<p class="value figures">${withShownDays(answer.value.text)}</p>`
            : html`<p class="problem">${problemText(answer.problem)}</p>`
        }
      </div>
      ${answer.ok ? this.#working(answer.value) : nothing}
      <p class="small quiet">
        ${
          this.inBook
            ? say`With this book’s day and season: ${day}, counting on the ${this.context.basis} end of what is published.`
            : say`${day}, counting on the ${this.context.basis} end of what is published.`
        }
      </p>
      <div class="row">
        <button class="button" type="button" @click=${() => void this.#copy(formula)}>${icons.copy}${say`Copy the formula`}</button>
        ${
          isExample
            ? nothing
            : html`<button class="button plain" type="button" @click=${this.#again}>${say`The example again`}</button>`
        }
        <span role="status" class="small">${this.copied}</span>
      </div>
    </div>`;
  }

  #working({ steps, explained }: Extract<TriedFunction['answer'], { ok: true }>['value']): TemplateResult {
    const { low, high, source } = explained;
    const ranges = low !== undefined && high !== undefined && low !== high;
    return html`<h4>${say`Step by step`}</h4>
      <ol class="steps figures">
        ${steps.map((text) => html`<li>${withShownDays(text)}</li>`)}
      </ol>
      ${ranges ? html`<p class="small">${say`Published from ${shorter(low)} to ${shorter(high)}.`}</p>` : nothing}
      <p class="small quiet">${say`From ${stopped(source)}`}</p>`;
  }

  #errors(): TemplateResult {
    return html`<details class="errors">
      <summary>${say`What can go wrong`}</summary>
      <p class="small quiet">${say`Where something does not fit, the cell shows an error and says:`}</p>
      <ul class="small">
        ${this.#reference.errors.map((each) => html`<li>${problemText(each)} <code>${each.code}</code></li>`)}
      </ul>
    </details>`;
  }

  #typed(at: number, text: string): void {
    this.texts = this.texts.map((each, i) => (i === at ? text : each));
    this.copied = '';
  }

  readonly #again = async (): Promise<void> => {
    this.texts = exampleTexts(this.declaration);
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('input')?.focus();
  };

  async #copy(formula: string): Promise<void> {
    try {
      await navigator.clipboard.writeText(formula);
      this.copied = say`Copied.`;
    } catch {
      const shown = this.renderRoot.querySelector('.formula code');
      if (shown) getSelection()?.selectAllChildren(shown);
      this.copied = say`Press Ctrl or Cmd and C to copy what is chosen.`;
    }
  }
}

const shorter = (value: number): string =>
  numberFormat({ maximumFractionDigits: 3, useGrouping: false }).format(value);

declare global {
  interface HTMLElementTagNameMap {
    'croft-function-reference': FunctionReferenceView;
  }
}
