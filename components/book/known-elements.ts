import type { CroftBook } from './croft-book.js';

/** Elements that look for a book: a page may have given their classes other names. */
const ours = new WeakSet<Element>();

/** To be called of each element that looks for a book. */
export const markOurs = (element: Element): void => void ours.add(element);

/** Whether it is an element of ours, under our name or one that the page has given it. */
export const isOurs = (element: Element): boolean =>
  element.localName.startsWith('croft-') || ours.has(element);

/** Whether it holds a book: by its name, as its script may come later, or by what it can do under another one. */
export const isBook = (element: Element): element is CroftBook =>
  element.localName === 'croft-book' || 'startOwnBook' in element;
