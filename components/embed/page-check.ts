import { adopted } from './draw-table.js';
import { TOTALS } from './frame.js';
import { scriptOf, tableOf } from './page-content.js';

/** For whoever keeps the page: readers are told nothing of it. */
const warn = (host: HTMLElement, words: string): void =>
  console.warn(`<croft-embed${host.id && ` id="${host.id}"`}>: ${words}`);

const told = new WeakSet<HTMLElement>();

function once(host: HTMLElement, words: string | undefined): void {
  if (words === undefined || told.has(host)) return;
  told.add(host);
  warn(host, words);
}

/** Says once where there is nothing to show, as on a page whose markup threw the table out. */
export function checkEmpty(host: HTMLElement): void {
  const given =
    host.hasAttribute('src') || host.getAttribute('source') === 'own' || Reflect.get(host, 'book');
  if (!given && !tableOf(host) && !scriptOf(host)) once(host, emptyWords(host));
}

function emptyWords(host: HTMLElement): string {
  const { parentElement: around } = host;
  return around?.localName === 'p'
    ? 'there is nothing inside. A browser puts a table out of the <p> that stands around this element: put a <div> around it instead, or nothing (in many editors, as a block of HTML).'
    : 'there is nothing inside, so nothing shows. Put a <table> into it, or name a file with src.';
}

/** Says once where a reader's numbers in one element would take the place of those in another. */
export function checkName(host: HTMLElement): void {
  const name = nameOf(host);
  const first = [...document.querySelectorAll(host.localName)].find((each) => nameOf(each) === name);
  if (name !== '' && first && first !== host && host.getRootNode() === document)
    once(
      host,
      `another one on this page is called “${name}”, too: what readers try in one is kept in place of what they tried in the other. Give each a keep-as of its own.`,
    );
}

const nameOf = (host: Element): string => host.getAttribute('keep-as') || host.id;

/** Says once where a table written by hand asks for more than can be read of it. */
export function checkTable(host: HTMLElement): void {
  if (told.has(host) || scriptOf(host) || !tableOf(host)) return;
  const table = adopted(host).querySelector('table');
  if (table) once(host, unreadIn(table, host.getAttribute('open') ?? ''));
}

function unreadIn(table: HTMLTableElement, open: string): string | undefined {
  const asks = '[data-open], [data-formula]';
  if (open.trim() === '' && !table.querySelector(asks)) return undefined;
  const heads = table.tHead?.rows;
  const head = [...(heads?.[heads.length - 1]?.cells ?? [])];
  if (head.length === 0)
    return 'its table has no head, so data-open and data-formula are not heeded: put its first row into <thead>, or make each of its cells a <th>.';
  const also = open.split(',').map((each) => each.trim());
  const spanned = head.findIndex(
    (cell, i) =>
      (cell.matches(asks) || also.includes(`c${i + 1}`)) &&
      [...table.tBodies].some(({ rows }) => [...rows].some(({ cells }) => cells[i]?.hidden)),
  );
  if (spanned >= 0)
    return `a cell with rowspan or colspan stands in the column “${head[spanned]?.textContent?.trim()}”, so readers cannot write into that column: give each row a cell of its own.`;
  const last = [...table.tBodies].flatMap(({ rows }) => [...rows]).at(-1);
  if (last && looksLikeTotal(last))
    return `its last row, “${last.cells[0]?.textContent?.trim()}”, looks like a total, and counts as one more row: put data-total on its <tr>, or the row into <tfoot>.`;
  return undefined;
}

/** What authors call a row of totals, in the languages that blogs of kitchens and gardens are likeliest in. */
const TOTAL =
  /^(?:(?:grand |sub-?)?total|totale|totaal|totals|sum|summe|suma|somme|gesamt(?:summe)?|insgesamt|zusammen|together|in all|altogether|all together|ensemble)\b/i;

/** A row of numbers under such a word, or the only one of the table in which all is bold. */
function looksLikeTotal(row: HTMLTableRowElement): boolean {
  const [first, ...others] = [...row.cells].filter((cell) => !cell.hidden);
  const filled = others.filter(({ textContent }) => textContent?.trim());
  if (row.matches(TOTALS) || !first || !filled.some(({ textContent }) => /\d/.test(textContent ?? '')))
    return false;
  if (TOTAL.test(first.textContent?.trim() ?? '')) return true;
  const isBold = (cells: readonly Element[]): boolean =>
    cells.every((cell) => cell.querySelector('b, strong'));
  const before = row.previousElementSibling;
  return isBold(filled) && before !== null && !isBold([...before.children].slice(1));
}
