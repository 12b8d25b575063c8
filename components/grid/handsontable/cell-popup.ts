import { say } from '../../../src/words/index.js';
import type { Hint, Suggestion } from './suggestions.js';

let popups = 0;

const GAP = 2;

/**
 * The list and the hint under an open editor: in the top layer, so that nothing clips them, and in the
 * editor's own tree, so that the editor can name the chosen line to screen readers.
 */
export class CellPopup {
  readonly #box: HTMLElement;
  readonly #hint: HTMLElement;
  readonly #list: HTMLElement;
  readonly #status: HTMLElement;
  #field: HTMLElement | null = null;
  #items: readonly Suggestion[] = [];
  #active = -1;
  #pick: (item: Suggestion) => void = () => {};

  constructor(wrapper: HTMLElement) {
    const { ownerDocument: document } = wrapper;
    const id = `croft-list-${++popups}`;
    this.#box = document.createElement('div');
    this.#box.className = 'croft-popup';
    this.#box.popover = 'manual';
    this.#hint = document.createElement('div');
    this.#hint.className = 'croft-hint';
    this.#hint.id = `${id}-hint`;
    this.#list = document.createElement('div');
    this.#list.className = 'croft-list';
    this.#list.id = id;
    this.#list.setAttribute('role', 'listbox');
    this.#status = document.createElement('div');
    this.#status.className = 'croft-unseen';
    this.#status.setAttribute('role', 'status');
    this.#box.append(this.#hint, this.#list);
    wrapper.append(this.#box, this.#status);
    // The editor keeps the keyboard, and the grid must not take the press for one outside the editor.
    for (const type of ['mousedown', 'touchstart'])
      this.#box.addEventListener(type, (event) => event.stopPropagation());
    this.#box.addEventListener('mousedown', (event) => event.preventDefault());
    this.#list.addEventListener('click', (event) => {
      const at = this.#options.findIndex((option) => option.contains(event.target as Node));
      const item = this.#items[at];
      if (item) this.#pick(item);
    });
  }

  get isListOpen(): boolean {
    return this.#items.length > 0;
  }

  get active(): Suggestion | null {
    return this.#items[this.#active] ?? null;
  }

  /** Shows a list, a hint, both, or nothing when both are empty. `active`: -1 for none chosen yet. */
  show(
    field: HTMLElement,
    { hint, items, active }: { hint: Hint | null; items: readonly Suggestion[]; active: number },
    pick: (item: Suggestion) => void,
  ): void {
    const before = this.#items.length;
    this.#items = items;
    this.#pick = pick;
    this.#field = field;
    if (!hint && items.length === 0) {
      this.hide();
      return;
    }
    this.#paintHint(hint);
    this.#list.hidden = items.length === 0;
    this.#list.setAttribute('aria-label', say`Suggestions`);
    this.#list.replaceChildren(...items.map((item, i) => this.#option(item, i)));
    field.setAttribute('aria-autocomplete', 'list');
    field.setAttribute('aria-controls', this.#list.id);
    if (hint) field.setAttribute('aria-describedby', this.#hint.id);
    else field.removeAttribute('aria-describedby');
    if (!this.#box.matches(':popover-open')) this.#box.showPopover();
    this.#activate(active);
    this.place();
    if (items.length !== before && items.length > 0)
      this.#status.textContent =
        items.length === 1 ? say`One suggestion.` : say`${items.length} suggestions.`;
  }

  move(by: 1 | -1): void {
    const { length } = this.#items;
    if (length === 0) return;
    this.#activate(this.#active < 0 ? (by > 0 ? 0 : length - 1) : (this.#active + by + length) % length);
  }

  hide(): void {
    this.#items = [];
    this.#active = -1;
    this.#status.textContent = '';
    this.#list.replaceChildren();
    this.#hint.replaceChildren();
    for (const name of ['aria-controls', 'aria-activedescendant', 'aria-describedby'])
      this.#field?.removeAttribute(name);
    if (this.#box.matches(':popover-open')) this.#box.hidePopover();
  }

  /** Puts the popup under its field, or above where there is more room. */
  place(): void {
    if (!this.#field || !this.#box.matches(':popover-open')) return;
    const { left, top, bottom, width } = this.#field.getBoundingClientRect();
    const { innerWidth, innerHeight } = this.#box.ownerDocument.defaultView!;
    const { style } = this.#box;
    style.setProperty('min-width', `${Math.max(width, 160)}px`);
    const below = innerHeight - bottom - GAP;
    const above = top - GAP;
    const under = below >= Math.min(240, this.#box.scrollHeight) || below >= above;
    style.setProperty('max-height', `${Math.max(80, Math.min(280, (under ? below : above) - 8))}px`);
    const size = this.#box.getBoundingClientRect();
    style.setProperty('left', `${Math.max(4, Math.min(left, innerWidth - size.width - 4))}px`);
    style.setProperty('top', `${under ? bottom + GAP : Math.max(4, top - GAP - size.height)}px`);
  }

  get #options(): HTMLElement[] {
    return [...this.#list.children] as HTMLElement[];
  }

  #activate(index: number): void {
    this.#active = index;
    for (const [i, option] of this.#options.entries())
      option.setAttribute('aria-selected', String(i === index));
    const option = this.#options[index];
    if (!option) {
      this.#field?.removeAttribute('aria-activedescendant');
      return;
    }
    this.#field?.setAttribute('aria-activedescendant', option.id);
    option.scrollIntoView({ block: 'nearest' });
  }

  #option({ label, note }: Suggestion, index: number): HTMLElement {
    const { ownerDocument: document } = this.#list;
    const option = document.createElement('div');
    option.className = 'croft-option';
    option.id = `${this.#list.id}-${index}`;
    option.setAttribute('role', 'option');
    const name = document.createElement('span');
    name.className = 'croft-option-label';
    name.textContent = label;
    option.append(name);
    if (note !== '') {
      const beside = document.createElement('span');
      beside.className = 'croft-option-note';
      beside.textContent = note;
      option.append(beside);
    }
    return option;
  }

  #paintHint(hint: Hint | null): void {
    this.#hint.hidden = hint === null;
    if (!hint) return;
    const { ownerDocument: document } = this.#hint;
    const line = document.createElement('div');
    line.className = 'croft-signature';
    const current = document.createElement('b');
    current.textContent = hint.current;
    line.append(hint.before, current, hint.after);
    const help = document.createElement('div');
    help.textContent = hint.help;
    this.#hint.replaceChildren(line, help);
  }
}
