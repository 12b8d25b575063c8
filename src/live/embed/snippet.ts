import type { BookDoc } from '../../book/index.js';
import { say } from '../../words/index.js';
import { shownDay } from '../shown.js';
import { CAUTIONS_IN_SIGHT, type EmbedCell, type EmbedColumn, type ShownTable } from './shown-table.js';

export interface SnippetOptions {
  /** Name under which a reader's own numbers are kept in their browser; see `keepName` for the one unless given. */
  readonly keepAs?: string;
  /** Licence key of the grid: readers may then open the sheet as a grid. */
  readonly gridLicenceKey?: string;
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text as it may stand in an element or in a quoted attribute. */
export const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => ENTITIES[sign]!);

/** Data as it may stand in a `<script>`: nothing in it can end the element or begin a comment. */
export const scriptJson = (value: unknown): string => JSON.stringify(value).replaceAll('<', '\\u003c');

const attribute = (name: string, value: string | undefined): string =>
  value === undefined || value === '' ? '' : ` ${name}="${escaped(value)}"`;

const cellHtml = (cell: EmbedCell): string => {
  if (typeof cell === 'string') return escaped(cell);
  const { text, unit, range, iso } = cell;
  const words = iso ? `<time datetime="${escaped(iso)}">${escaped(text)}</time>` : escaped(text);
  return `${words}${unit ? ` <span>${escaped(unit)}</span>` : ''}${range ? ` <small>${escaped(range)}</small>` : ''}`;
};

const headerHtml = ({ id, title, unit, role, type, open }: EmbedColumn): string =>
  `<th scope="col"${attribute('data-column', id)}${role === 'planning' ? ' data-planning' : ''}${
    type === 'number' || type === 'date' || type === 'tick' ? ` data-type="${type}"` : ''
  }${open ? ' data-open' : ''}>${escaped(title)}${unit ? ` <small>${escaped(unit)}</small>` : ''}</th>`;

const rowHtml = ({ id, cells }: ShownTable['rows'][number]): string =>
  `<tr${attribute('data-row', id)}>${cells
    .map((cell, i) =>
      i === 0 && cell !== '' ? `<th scope="row">${cellHtml(cell)}</th>` : `<td>${cellHtml(cell)}</td>`,
    )
    .join('')}</tr>`;

const items = (texts: readonly string[]): string =>
  `<ul>${texts.map((each) => `<li>${escaped(each)}</li>`).join('')}</ul>`;

/** A few in sight, the others one step away, without script too. */
function cautionsHtml(all: readonly string[]): string[] {
  if (all.length === 0) return [];
  const more = all.slice(CAUTIONS_IN_SIGHT);
  const details =
    more.length === 0
      ? ''
      : `<details><summary>${escaped(say`More on food safety`)}</summary>${items(more)}</details>`;
  return [
    `<aside data-cautions aria-label="${escaped(say`Food safety`)}">${items(all.slice(0, CAUTIONS_IN_SIGHT))}${details}</aside>`,
  ];
}

function startTag(table: ShownTable, book: BookDoc | null, options: SnippetOptions, src?: string): string {
  const keepAs = book ? options.keepAs : undefined;
  return `<croft-embed${attribute('sheet', table.sheet)}${attribute('src', src)}${attribute('keep-as', keepAs)}${attribute('grid-licence-key', options.gridLicenceKey)}>`;
}

/** The HTML to paste where the data lies in a file, at this address. */
export const embedFileHtml = (
  table: ShownTable,
  book: BookDoc | null,
  options: SnippetOptions,
  src: string,
): string => `${startTag(table, book, options, src)}</croft-embed>`;

/** The HTML to paste: a plain table for everyone, and, where readers may try things, the book behind it. */
export function embedHtml(table: ShownTable, book: BookDoc | null, options: SnippetOptions): string {
  const lines = [
    startTag(table, book, options),
    // Room in cells for pages that give tables no look of their own.
    '<table cellpadding="6">',
    `<caption>${escaped(table.title)}</caption>`,
    `<thead><tr>${table.columns.map(headerHtml).join('')}</tr></thead>`,
    '<tbody>',
    ...table.rows.map(rowHtml),
    '</tbody>',
    '</table>',
    `<p data-day>${escaped(say`Figures for `)}<time datetime="${table.day}">${escaped(shownDay(table.day))}</time>.</p>`,
    ...cautionsHtml(table.cautions),
    ...(book ? [`<script type="application/json">${scriptJson(book)}</script>`] : []),
    '</croft-embed>',
  ];
  return lines.join('\n');
}

/**
 * An element with the script that draws it, as it is pasted into a page: in a block of its own, since an editor puts
 * a paragraph around what stands alone, and no table can stand in one.
 *
 * @param script address of the script.
 */
export const toPaste = (html: string, script: string): string =>
  `<div>\n<script type="module" src="${escaped(script)}"></script>\n${html}\n</div>`;
