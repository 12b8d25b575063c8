import type { LitElement } from 'lit';
import type { CroftWorking } from '../working/croft-working.js';
import { scrollFromUnder } from './wide.js';

/** The working beside a sheet, or under it on narrow pages: whether it is open, and that it is seen. */
export class WorkingPanel {
  isOpen = false;
  readonly #element: LitElement;

  constructor(element: LitElement) {
    this.#element = element;
  }

  async open({ focus }: { readonly focus: boolean }): Promise<void> {
    this.isOpen = true;
    this.#element.requestUpdate();
    await this.#element.updateComplete;
    const panel = this.#panel;
    await panel?.updateComplete;
    if (focus) panel?.focus();
    panel?.scrollIntoView({ block: 'nearest' });
  }

  close(): void {
    this.isOpen = false;
    this.#element.requestUpdate();
  }

  /** On narrow pages it lies over the foot of the window: the figure that it explains comes above. */
  async uncover(box: () => DOMRect | undefined): Promise<void> {
    await this.#element.updateComplete;
    scrollFromUnder(this.#panel?.getBoundingClientRect(), box());
  }

  get #panel(): CroftWorking | null {
    return this.#element.renderRoot.querySelector('croft-working');
  }
}
