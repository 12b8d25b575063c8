import { html, nothing, type TemplateResult } from 'lit';
import type { LiveBook } from '../../../src/live/live-book.js';
import type { Problem } from '../../../src/problem.js';
import { NOT_LOADED } from '../../look/problems.js';
import type { ActionHost, SheetAction } from './action.js';
import type { DialogDone } from './action-dialog.js';

/** What running actions needs of the sheet around them. */
export interface RunsActions {
  here(): { readonly live: LiveBook; readonly sheet: string; readonly row: string | null } | null;
  say(message: Problem | string | null): void;
  requestUpdate(): void;
  /** Gives the keyboard back after a dialog. */
  refocus(): void;
}

/** Runs the actions of one sheet, one at a time, and holds the dialog that one of them opened. */
export class RunningActions {
  readonly #of: RunsActions;
  #dialog: TemplateResult | null = null;
  #busy = false;

  constructor(of: RunsActions) {
    this.#of = of;
  }

  /** To be rendered somewhere in the sheet. */
  get dialog(): TemplateResult | typeof nothing {
    return this.#dialog === null
      ? nothing
      : html`<div @croft-dialog-done=${this.#done}>${this.#dialog}</div>`;
  }

  /** Another sheet is shown: nothing stands open. */
  clear(): void {
    this.#dialog = null;
  }

  /** Puts a dialog on the page that no action of the kind opens. */
  async show(load: () => Promise<TemplateResult>): Promise<void> {
    try {
      this.#dialog = await load();
      this.#of.requestUpdate();
    } catch (error) {
      console.error(error);
      this.#of.say(NOT_LOADED);
    }
  }

  readonly run = async (action: SheetAction): Promise<void> => {
    const here = this.#of.here();
    if (!here || this.#busy) return;
    this.#of.say(null);
    const host: ActionHost = {
      ...here,
      say: (message) => this.#of.say(message),
      show: async (load) => {
        this.#dialog = await load();
        this.#of.requestUpdate();
      },
    };
    this.#busy = true;
    try {
      await action.act(host);
    } catch (error) {
      console.error(error);
      this.#of.say(NOT_LOADED);
    } finally {
      this.#busy = false;
    }
  };

  readonly #done = (event: CustomEvent<DialogDone>): void => {
    this.#dialog = null;
    this.#of.say(event.detail.say);
    this.#of.requestUpdate();
    this.#of.refocus();
  };
}
