import { phrase, say } from './said.js';

/** So many cautions stand in sight; as in the HTML that a page's author is given. */
export const CAUTIONS_IN_SIGHT = 3;

export const NOT_LOADED = phrase(
  'What works the figures out could not be loaded. Check the connection and try again.',
);
export const KEPT = phrase('Your own numbers, kept in this browser.');
export const NOT_KEPT = phrase('Your own numbers are not kept here: they are gone when the page is closed.');
export const ON_PAPER = phrase('With your own numbers.');
export const NEWER = phrase('These are your own numbers. The page has newer figures.');
export const HINT = phrase('The marked cells are yours to try: the figures follow.');
export const ALL_YOURS = phrase('All of it is yours to try: the page stays as it is.');
export const WORKING = phrase('Working it out…');
export const OPENING_OWN = phrase('Opening your own book…');
export const NO_OWN_BOOK = phrase('You keep no book of your own in this browser yet.');
export const START_OWN = phrase('Start a book');
export const HOW_TO_START = phrase(
  'A book is started on this site’s page for books of one’s own; it stays in this browser.',
);

/** What stands under a sheet of the reader's own book. */
export const fromOwn = (title: string): string =>
  say`From “${title}”, your own book: it stays as it is, whatever you try here.`;
export const NEWER_OWN = phrase('These are numbers that you tried. Your book has newer figures.');
