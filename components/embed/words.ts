/** So many cautions stand in sight; as in the HTML that a page's author is given. */
export const CAUTIONS_IN_SIGHT = 3;

let days: Intl.DateTimeFormat | undefined;

/** An ISO date as readers see it; the same words as in the table. */
export function shownText(iso: string): string {
  days ??= new Intl.DateTimeFormat('en-US', { dateStyle: 'medium', timeZone: 'UTC' });
  const at = new Date(`${iso}T00:00:00Z`);
  return Number.isNaN(at.getTime()) ? iso : days.format(at);
}

export const NOT_LOADED =
  'What works the figures out could not be loaded. Check the connection and try again.';
export const KEPT = 'Your own numbers, kept in this browser.';
export const NOT_KEPT = 'Your own numbers are not kept here: they are gone when the page is closed.';
export const NEWER = 'These are your own numbers. The page has newer figures.';
export const HINT = 'The marked cells are yours to try: the figures follow.';
export const WORKING = 'Working it out…';
export const OPENING_OWN = 'Opening your own book…';
export const NO_OWN_BOOK = 'You keep no book of your own in this browser yet.';
export const START_OWN = 'Start a book';
export const HOW_TO_START =
  'A book is started on this site’s page for books of one’s own; it stays in this browser.';

/** What stands under a sheet of the reader's own book. */
export const fromOwn = (title: string): string =>
  `From “${title}”, your own book: it stays as it is, whatever you try here.`;
export const NEWER_OWN = 'These are numbers that you tried. Your book has newer figures.';
