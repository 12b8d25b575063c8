import type { EmbedCell, EmbedColumn, ShownTable } from '../../src/live/embed/index.js';
import { levelTable } from './level-table.js';
import { HERE, say, shownText } from './said.js';
import { CAUTIONS_IN_SIGHT } from './words.js';

/** Makes an element with text in it and attributes on it; attributes that are undefined are left out. */
export function make<K extends keyof HTMLElementTagNameMap>(
  name: K,
  text = '',
  attributes: Readonly<Record<string, string | undefined>> = {},
): HTMLElementTagNameMap[K] {
  const made = document.createElement(name);
  if (text !== '') made.textContent = text;
  for (const key of Object.keys(attributes)) {
    const value = attributes[key];
    if (typeof value === 'string') made.setAttribute(key, value);
  }
  return made;
}

/** All that a cell says, in one text. */
const wholeText = (cell: EmbedCell): string =>
  typeof cell === 'string' ? cell : [cell.text, cell.unit, cell.range].filter(Boolean).join(' ');

/** What the page itself put into cells that show something else now, links and all. */
const putThere = new WeakMap<HTMLElement, { readonly text: string; readonly nodes: readonly Node[] }>();

/**
 * Puts into a cell of the table what it shows. One that says so already keeps what the page put there, and one that
 * says again what the page did has that back.
 */
export function fillCell(into: HTMLElement, cell: EmbedCell): void {
  const now = into.textContent?.trim() ?? '';
  if (now === wholeText(cell)) return;
  const before = putThere.get(into) ?? { text: now, nodes: [...into.childNodes] };
  putThere.set(into, before);
  if (before.text === wholeText(cell)) {
    into.replaceChildren(...before.nodes);
    return;
  }
  if (typeof cell === 'string') {
    into.textContent = cell;
    return;
  }
  const { text, unit, range, iso } = cell;
  into.replaceChildren(iso ? make('time', text, { datetime: iso }) : text);
  if (unit) into.append(' ', make('span', unit));
  if (range) into.append(' ', make('small', range));
}

function header({ id, title, unit, role, type, open }: EmbedColumn): HTMLElement {
  const cell = make('th', title, {
    scope: 'col',
    'data-column': id,
    'data-planning': role === 'planning' ? '' : undefined,
    'data-type': type === 'number' || type === 'date' || type === 'tick' ? type : undefined,
    'data-open': open ? '' : undefined,
  });
  if (unit) cell.append(' ', make('small', unit));
  return cell;
}

const items = (texts: readonly string[]): HTMLElement => {
  const list = make('ul');
  list.append(...texts.map((text) => make('li', text)));
  return list;
};

/** Food-safety words under a table, a few of them in sight. */
export function cautions(all: readonly string[]): HTMLElement {
  const aside = make('aside', '', { 'data-cautions': '', 'aria-label': say`Food safety${HERE}` });
  aside.append(items(all.slice(0, CAUTIONS_IN_SIGHT)));
  if (all.length > CAUTIONS_IN_SIGHT) {
    const details = make('details');
    details.append(make('summary', say`More on food safety${HERE}`), items(all.slice(CAUTIONS_IN_SIGHT)));
    aside.append(details);
  }
  return aside;
}

/** The same table that the page's own HTML would hold, from data; what is around it included. */
export function drawTable(shown: ShownTable): DocumentFragment {
  const table = make('table');
  const head = make('tr');
  const body = make('tbody');
  head.append(...shown.columns.map(header));
  for (const { id, cells } of shown.rows) {
    const row = make('tr', '', { 'data-row': id });
    cells.forEach((cell, i) => {
      const at = i === 0 && cell !== '' ? make('th', '', { scope: 'row' }) : make('td');
      fillCell(at, cell);
      row.append(at);
    });
    body.append(row);
  }
  const thead = make('thead');
  thead.append(head);
  table.append(make('caption', shown.title), thead, body);
  const day = make('p', say`Figures for ${HERE}`, { 'data-day': '' });
  day.append(make('time', shownText(shown.day), { datetime: shown.day }), '.');
  const all = document.createDocumentFragment();
  all.append(table, day);
  if (shown.cautions.length > 0) all.append(cautions(shown.cautions));
  return all;
}

const LOOKS = [
  'style',
  'class',
  'width',
  'height',
  'align',
  'valign',
  'bgcolor',
  'border',
  'cellpadding',
  'cellspacing',
  'id',
];

/** What the page wrote inside the element, without the looks that an editor may have put on it. */
export function copied(host: HTMLElement): DocumentFragment {
  const all = document.createDocumentFragment();
  for (const child of host.children) all.append(child.cloneNode(true));
  for (const each of all.querySelectorAll('script, style, template, link')) each.remove();
  for (const each of all.querySelectorAll(LOOKS.map((name) => `[${name}]`).join()))
    for (const name of LOOKS) each.removeAttribute(name);
  return all;
}

/** The same with its table in the form that is read. */
export function adopted(host: HTMLElement): DocumentFragment {
  const all = copied(host);
  const table = all.querySelector('table');
  if (table) levelTable(table);
  return all;
}
