/** The elements of Croftsheet. Loading this defines them all. */
export { CroftBook, type Opening } from './book/croft-book.js';
export type { BookEvents, SelectedCell } from './book/events.js';
export { type OwnBookAnswers, readPeople, readStanding } from './book/own-book.js';
export { CroftSheet } from './sheet/croft-sheet.js';
export { CroftWorking } from './working/croft-working.js';
