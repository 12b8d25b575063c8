import type { nothing, ReactiveControllerHost, TemplateResult } from 'lit';
import { KINDS } from '../../src/book/index.js';
import type { BookChange, LiveBook } from '../../src/live/live-book.js';
import type { GridCell } from '../grid/grid-view.js';
import { nextStep, nextStepView } from './next-step.js';
import { RenamedNames, renamedView, stillCalled } from './renamed-name.js';
import { RestedReading } from './rested-reading.js';
import type { Sheet } from './sheet-called.js';
import { suggestedUses, suggestedUsesView } from './suggested-uses.js';

interface NotesHost extends ReactiveControllerHost {
  readonly readOnly: boolean;
  say(message: string | null): void;
}

/** What a sheet says above its rows: what was suggested, what else has an old name, what to do next. */
export class NotesAbove {
  readonly #host: NotesHost;
  readonly #renamed = new RenamedNames();
  readonly #suggested: RestedReading<ReturnType<typeof suggestedUses>>;
  readonly #next: RestedReading<ReturnType<typeof nextStep>>;
  readonly #still: RestedReading<ReturnType<typeof stillCalled>>;

  constructor(host: NotesHost) {
    this.#host = host;
    this.#suggested = new RestedReading(host, (live, { id, kind }) =>
      kind === 'foods' ? suggestedUses(live, id) : [],
    );
    this.#next = new RestedReading(host, (live, { kind }) => nextStep(live, kind), [
      'shelf',
      'foods',
      'draws',
    ]);
    this.#still = new RestedReading(
      host,
      (live, { kind }) => stillCalled(live, kind, this.#renamed.last),
      Object.keys(KINDS),
    );
  }

  heed(live: LiveBook | null, change: BookChange): void {
    if (live) this.#renamed.heed(live, change);
    for (const reading of [this.#suggested, this.#next, this.#still]) reading.heed(change);
  }

  view(live: LiveBook, sheet: Sheet, look: (cell: GridCell) => void): (TemplateResult | typeof nothing)[] {
    const suggested = suggestedUsesView(this.#suggested.of(live, sheet), look);
    return this.#host.readOnly ? [suggested] : [suggested, this.#toDo(live, sheet)];
  }

  #toDo(live: LiveBook, sheet: Sheet): TemplateResult | typeof nothing {
    const [places, { last }] = [this.#still.of(live, sheet), this.#renamed];
    if (!last || places.length === 0) return nextStepView(live, this.#next.of(live, sheet));
    return renamedView(live, last, places, (said) => {
      this.#renamed.forget();
      if (said === null) this.#host.requestUpdate();
      else this.#host.say(said);
    });
  }
}
