import { adopted } from './draw-table.js';

/** The data that the page wrote inside, if it did. */
export const scriptOf = (host: HTMLElement): HTMLScriptElement | null =>
  host.querySelector(':scope > script[type="application/json"]');

export const tableOf = (host: HTMLElement): HTMLTableElement | null => host.querySelector(':scope > table');

/** Whether the page wrote a table or data inside. */
export const hasContent = (host: HTMLElement): boolean => tableOf(host) !== null || scriptOf(host) !== null;

/** What the page wrote inside, without looks. */
export const contentOf = (host: HTMLElement): string =>
  [...adopted(host).children].map((each) => each.outerHTML).join('') + (scriptOf(host)?.textContent ?? '');
