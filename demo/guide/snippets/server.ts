import { embedOf, openBook, parseBook } from 'croftsheet/core';
// Every entry may be imported on a server, too: nothing is drawn there.
import 'croftsheet/embed';

/** A shelf as HTML that shows before any script has come. */
export function shelfHtml(json: string): string {
  const parsed = parseBook(json);
  if (!parsed.ok) throw new Error(parsed.problems[0]?.message);
  const book = openBook(parsed.book);
  const { html } = embedOf(book, 'shelf', { columns: ['food', 'left', 'weeks_of_supply'] });
  book.close();
  return html;
}
