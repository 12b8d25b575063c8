import { languageAround } from '../look/language-around.js';
import { copied } from './draw-table.js';

/** The data that the page wrote inside, if it did. */
export const scriptOf = (host: HTMLElement): HTMLScriptElement | null =>
  host.querySelector('script[type="application/json"]');

/** Its table: editors put a `<figure>` or a `<div>` around one. */
export const tableOf = (host: HTMLElement): HTMLTableElement | null => host.querySelector('table');

/** Whether the page wrote a table or data inside. */
export const hasContent = (host: HTMLElement): boolean => tableOf(host) !== null || scriptOf(host) !== null;

/** What the page wrote inside, without looks. */
export const contentOf = (host: HTMLElement): string =>
  [...copied(host).children].map((each) => each.outerHTML).join('') + (scriptOf(host)?.textContent ?? '');

/** The language in which the page writes its table, as a BCP 47 tag; English where none is said. */
export function languageOf(host: HTMLElement): string {
  try {
    return Intl.getCanonicalLocales(languageAround(tableOf(host) ?? host))[0] ?? 'en';
  } catch {
    // An attribute of a page may hold anything.
    return 'en';
  }
}
