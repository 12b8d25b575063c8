import type { BookDoc } from '../../book/index.js';
import type { LiveBook } from '../live-book.js';
import { cutBook } from './cut-book.js';
import { keepName } from './keep-name.js';
import { type ShownTable, shownTable, type TableOptions } from './shown-table.js';
import { embedFileHtml, embedHtml, type SnippetOptions } from './snippet.js';

export interface EmbedOptions extends TableOptions, SnippetOptions {}

/** A sheet made ready for a page of someone's own. */
export interface Embed {
  /** `<croft-embed>` with the table that shows without script and the data that figures are worked out from. */
  readonly html: string;
  readonly table: ShownTable;
  /** The book, cut down to what the figures shown need. */
  readonly book: BookDoc;
  /** Titles of the sheets that go along. */
  readonly goesAlong: readonly string[];
  /** The same for a file that `src` names: the table, and the book where `html` holds it, too. */
  readonly json: string;
  /** `<croft-embed>` for such a file, at the address `src`. */
  readonly htmlFor: (src: string) => string;
}

/** What `src` may name: a book that brings the table to show first. */
export interface EmbedFile extends BookDoc {
  readonly shown: ShownTable;
}

/**
 * One sheet of an open book for a web page, as HTML to paste: nothing has to be worked out before it shows.
 * With no `open` columns it is the table alone, and no more of the book goes along than what it shows.
 */
export function embedOf(live: LiveBook, sheet: string, options: EmbedOptions = {}): Embed {
  const table = shownTable(live, sheet, options);
  const book = cutBook(
    live.toJSON(),
    sheet,
    table.columns.map(({ id }) => id),
    table.day,
  );
  const needsBook = table.columns.some(({ open }) => open) || Boolean(options.gridLicenceKey);
  const goes = needsBook ? book : null;
  const said = { ...options, keepAs: options.keepAs ?? keepName(book.id, table, options.rows) };
  return {
    html: embedHtml(table, goes, said),
    table,
    book,
    goesAlong: needsBook
      ? Object.values(book.sheets)
          .filter(({ rows }) => Object.keys(rows).length > 0)
          .map(({ title }) => title)
      : [],
    json: `${JSON.stringify({ ...(goes ?? tableAlone(book, sheet)), shown: table } satisfies EmbedFile)}\n`,
    htmlFor: (src) => embedFileHtml(table, goes, said, src),
  };
}

/** A book with nothing in it but the name of a sheet: what its table shows stands beside it. */
function tableAlone({ settings: { as_of }, sheets, ...book }: BookDoc, sheet: string): BookDoc {
  const { kind, title, order } = sheets[sheet]!;
  return {
    ...book,
    settings: { ...(as_of !== undefined && { as_of }) },
    sheets: { [sheet]: { kind, title, order, columns: {}, rows: {} } },
  };
}
