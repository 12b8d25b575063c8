import type { TemplateResult } from 'lit';
import type { LiveBook } from '../../../src/live/live-book.js';
import type { Problem } from '../../../src/problem.js';

/** What an action may use of the sheet on which it was chosen. */
export interface ActionHost {
  readonly live: LiveBook;
  readonly sheet: string;
  /** The row that is selected; null where none is. */
  readonly row: string | null;
  /** A refusal or a note for the line under the sheet. */
  say(message: Problem | string | null): void;
  /** Puts a dialog (an `ActionDialog`) on the page, loaded when asked for. */
  show(load: () => Promise<TemplateResult>): Promise<void>;
}

/** Something to do that belongs to a kind of sheet: a button of its toolbar. */
export interface SheetAction {
  /** In English, as `title`: they are told in the language spoken when they are shown. */
  readonly label: string;
  /** What it does, in a sentence. */
  readonly title: string;
  readonly icon: TemplateResult;
  /** Offered in the empty sheet too. */
  readonly firstStep?: true;
  act(host: ActionHost): void | Promise<void>;
  /** Why the chosen row asks for it, to be said beside the tools; null where it does not. */
  urged?(at: Pick<ActionHost, 'live' | 'sheet' | 'row'>): string | null;
}
