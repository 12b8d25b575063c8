/** The elements of Croftsheet. Loading this defines them all; each can be loaded by itself, too. */
export { CroftBook, type Opening } from './book/croft-book.js';
export type { BookEvents, SelectedCell } from './book/events.js';
export { type OwnBookAnswers, readPeople } from './book/own-book.js';
export { type PlaceAsked, readPlace, readStanding, type Standing } from './book/standing.js';
export { CroftBookMenu } from './book-menu/croft-book-menu.js';
export { CroftEmbed } from './embed/croft-embed.js';
export { CroftFormulas } from './formulas/croft-formulas.js';
export { CroftLabels } from './labels/croft-labels.js';
export { CroftLesson } from './lesson/croft-lesson.js';
export { CroftLists } from './lists/croft-lists.js';
export type { ShowEvent } from './pictures/show.js';
export { CroftRoom } from './room/croft-room.js';
export { CroftRunway } from './runway/croft-runway.js';
export { CroftSeason } from './season/croft-season.js';
export { CroftSheet } from './sheet/croft-sheet.js';
export { FiguresDay } from './sheet/figures-day.js';
export { CroftWishList } from './week/croft-wish-list.js';
export { CroftWorking } from './working/croft-working.js';
