import { isOurs } from './known-elements.js';

/** Milliseconds after which a book that is still to come counts as forgotten. */
const LONG_ENOUGH = 5000;

const said = new WeakSet<Element>();

/**
 * Says in the console, to whoever builds the page, why an element goes on waiting for its book: there is none
 * around it and it names none, or not one that is there. Once of each element.
 */
export function sayWhatIsMissing(element: HTMLElement, hasBook: () => boolean): void {
  // What an element is made of waits for the same.
  const { host } = element.getRootNode() as ShadowRoot;
  if (host && isOurs(host)) return;
  setTimeout(() => {
    if (hasBook() || !element.isConnected || said.has(element)) return;
    // Some can do without.
    if (!element.shadowRoot?.querySelector('.opening')) return;
    said.add(element);
    console.warn(`<${element.localName}> ${whatIsMissing(element)}`, element);
  }, LONG_ENOUGH);
}

function whatIsMissing(element: HTMLElement): string {
  const id = element.getAttribute('book');
  return id === null
    ? 'has no book. Put it inside a <croft-book>, or name one: book="its id".'
    : `has no book: there is no <croft-book id="${id}"> on this page.`;
}
