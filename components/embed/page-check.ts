import { adopted } from './draw-table.js';
import { TOTALS } from './frame.js';
import type { Advice } from './page-advice.js';
import { scriptOf, tableOf } from './page-content.js';

const told = new WeakSet<HTMLElement>();

/** Tells whoever keeps the page, once for an element: readers are told nothing of it. */
export function adviseOnce(host: HTMLElement, what: Advice | undefined, called = ''): void {
  if (what === undefined || told.has(host)) return;
  told.add(host);
  import('./page-advice.js').then(
    ({ advise }) => advise(host, what, called),
    () => undefined,
  );
}

/** Looks whether there is nothing to show, as on a page whose markup threw the table out. */
export function checkEmpty(host: HTMLElement): void {
  const given =
    host.hasAttribute('src') || host.getAttribute('source') === 'own' || Reflect.get(host, 'book');
  if (given || tableOf(host) || scriptOf(host)) return;
  adviseOnce(host, host.parentElement?.localName === 'p' ? 'in-paragraph' : 'empty');
}

/** Looks whether a table written by hand asks for more than can be read of it. */
export function checkTable(host: HTMLElement): void {
  if (told.has(host) || scriptOf(host)) return;
  const table = tableOf(host) && adopted(host).querySelector('table');
  if (table) adviseOnce(host, ...unreadIn(table, host.getAttribute('open') ?? ''));
}

const wordsOf = (cell: Element | undefined): string => cell?.textContent?.trim() ?? '';

function unreadIn(table: HTMLTableElement, open: string): [what?: Advice, called?: string] {
  const asks = '[data-open], [data-formula]';
  if (open.trim() === '' && !table.querySelector(asks)) return [];
  const heads = table.tHead?.rows;
  const head = [...(heads?.[heads.length - 1]?.cells ?? [])];
  if (head.length === 0) return ['no-head'];
  const also = open.split(',').map((each) => each.trim());
  const rows = [...table.querySelectorAll<HTMLTableRowElement>('tbody > tr')];
  const spanned = head.find(
    (cell, i) =>
      (cell.matches(asks) || also.includes(`c${i + 1}`)) && rows.some(({ cells }) => cells[i]?.hidden),
  );
  if (spanned) return ['spanned', wordsOf(spanned)];
  const last = rows.at(-1);
  return last && looksLikeTotal(last) ? ['total', wordsOf(last.cells[0])] : [];
}

/** What authors call a row of totals, in languages that are likely. */
const TOTAL = /^((grand |sub-?)?total|sum(me)?\b|(ins)?gesamt|zusammen|together)/i;

const looksLikeTotal = (row: HTMLTableRowElement): boolean =>
  TOTAL.test(wordsOf(row.cells[0])) && /\d/.test(wordsOf(row)) && !row.matches(TOTALS);
