import { html, LitElement, nothing } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { OwnBookAnswers } from '../../components/book/own-book.js';
import { openModal } from '../../components/look/modal.js';
import { MOSTLY_IN } from '../../components/sheet/mostly-in.js';
import { called } from '../../src/live/choices.js';
import { WAYS_KEPT } from '../../src/planning/types.js';
import { CONTAINERS } from '../../src/units/index.js';
import { phrase, SaidAnew, say, spoken } from './said.js';
import { answersOf } from './start-answers.js';

interface Place {
  readonly way: string;
  readonly container: string;
  /** Examples that the fields show while they are blank. */
  readonly place: string;
  readonly foods: string;
}

const CELLAR: Place = {
  way: 'canned',
  container: 'quart jar',
  place: phrase('Cellar, top shelf'),
  foods: phrase('tomatoes 24, green beans 18 pints'),
};
const FREEZER: Place = {
  way: 'frozen',
  container: 'quart freezer bag',
  place: phrase('Chest freezer'),
  foods: phrase('peas 12, beef 40 pounds'),
};
const ANOTHER: Place = { ...CELLAR, place: '', foods: '' };

/** The few questions that start a household's book. None must be answered. */
@customElement('croft-demo-start')
export class StartDialog extends LitElement {
  /** Takes the answers. */
  @property({ attribute: false }) use: (answers: OwnBookAnswers) => void = () => {};
  @state() private places: readonly Place[] = [CELLAR, FREEZER];
  @state() private wrong = '';
  /** The form is in the page only while it is asked for, and begins anew each time. */
  @state() private asking = false;
  @query('dialog') private dialog!: HTMLDialogElement;

  constructor() {
    super();
    new SaidAnew(this);
  }

  protected override createRenderRoot() {
    return this;
  }

  async open(): Promise<void> {
    this.places = [CELLAR, FREEZER];
    this.wrong = '';
    this.asking = true;
    await this.updateComplete;
    openModal(this.dialog);
  }

  protected override render() {
    return html`<dialog id="start" aria-labelledby="start-title" @close=${this.#closed}>
      ${this.asking ? this.#form() : nothing}
    </dialog>`;
  }

  #form() {
    return html`<form @submit=${this.#send}>
        <h2 id="start-title">${say`Start your own book`}</h2>
        <p>
          ${say`Answer what you know; every answer can be changed later. This book stays as it is, beside yours.`}
        </p>
        <div class="field">
          <label for="own-title">${say`What shall the book be called?`}</label>
          <input id="own-title" name="title" maxlength="200" placeholder=${say`Our book`} autocomplete="off" />
        </div>
        <div class="field">
          <label for="own-people">${say`Who eats at the table?`}</label>
          <input id="own-people" name="people" placeholder=${say`Ada, Tom, little Jo 0.5`} autocomplete="off" aria-describedby="own-people-help" />
          <small id="own-people-help">${say`Names with commas between. A number is a share: 1 is a grown appetite, 0.5 half of that.`}</small>
        </div>
        <div class="pair">
          <div class="field">
            <label for="own-last">${say`Last spring frost`}</label>
            <input id="own-last" name="lastFrost" placeholder="05-24" autocomplete="off" aria-describedby="own-frost-help" />
          </div>
          <div class="field">
            <label for="own-first">${say`First fall frost`}</label>
            <input id="own-first" name="firstFrost" placeholder="09-18" autocomplete="off" aria-describedby="own-frost-help" />
          </div>
          <div class="field">
            <label for="own-altitude">${say`Altitude in feet`}</label>
            <input id="own-altitude" name="altitudeFt" placeholder=${say`2300 ft`} autocomplete="off" />
          </div>
        </div>
        <small id="own-frost-help" hidden>${say`A month and a day.`}</small>
        <fieldset aria-describedby="own-standing-help">
          <legend>${say`What stands where?`}</legend>
          <small id="own-standing-help" class="places-help">
            ${say`Foods with how many, with commas between. A container after a number goes before the place’s own. The rest can follow later.`}
          </small>
          ${this.places.map((place, i) => this.#place(place, i))}
          <div><button type="button" @click=${this.#another}>${say`Another place`}</button></div>
        </fieldset>
        <p class="problem" role="alert" ?hidden=${this.wrong === ''}>${this.wrong}</p>
        <div class="ends">
          <button type="button" @click=${() => this.dialog.close()}>${say`Cancel`}</button>
          <button class="first">${say`Start the book`}</button>
        </div>
      </form>`;
  }

  readonly #closed = (): void => {
    this.asking = false;
  };

  #place({ way, container, place, foods }: Place, i: number) {
    const id = (name: string) => `own-${name}-${i + 1}`;
    const n = this.places.length > 1 ? html`<span class="unseen"> ${say`of place ${i + 1}`}</span>` : nothing;
    return html`<div class="place" role="group" aria-label=${say`Place ${i + 1}`}>
      <div class="field">
        <label for=${id('place')}>${say`Place`}${n}</label>
        <input id=${id('place')} name="place" maxlength="100" placeholder=${spoken(place)} autocomplete="off" />
      </div>
      <div class="field">
        <label for=${id('way')}>${say`Way kept`}${n}</label>
        <select id=${id('way')} name="way" @change=${(event: Event) => this.#wayChosen(event, id('container'))}>
          ${WAYS_KEPT.map((each) => html`<option value=${each} ?selected=${each === way}>${spoken(each)}</option>`)}
        </select>
      </div>
      <div class="field">
        <label for=${id('container')}>${say`Container`}${n}</label>
        <select id=${id('container')} name="container">
          ${called(
            CONTAINERS.map(({ id: each }) => each),
            container,
          ).map(
            ({ value, label }) =>
              html`<option value=${value} ?selected=${value === container}>${label}</option>`,
          )}
        </select>
      </div>
      <div class="field foods">
        <label for=${id('foods')}>${say`Foods and how many`}${n}</label>
        <textarea id=${id('foods')} name="foods" rows="2" placeholder=${spoken(foods)}></textarea>
      </div>
    </div>`;
  }

  #wayChosen(event: Event, container: string): void {
    const mostly = MOSTLY_IN[(event.target as HTMLSelectElement).value];
    const field = this.querySelector<HTMLSelectElement>(`#${container}`);
    if (mostly && field) field.value = mostly;
  }

  readonly #another = async (): Promise<void> => {
    this.places = [...this.places, ANOTHER];
    await this.updateComplete;
    this.querySelector<HTMLElement>(`#own-place-${this.places.length}`)?.focus();
  };

  readonly #send = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    const form = event.target as HTMLFormElement;
    const answers = answersOf(new FormData(form));
    this.wrong = answers.ok ? '' : `${answers.problem.message} ${answers.problem.mend}`;
    if (!answers.ok) {
      await this.updateComplete;
      this.querySelector('.problem')?.scrollIntoView({ block: 'nearest' });
      return;
    }
    this.dialog.close();
    this.use(answers.value);
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-demo-start': StartDialog;
  }
}
