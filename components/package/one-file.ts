/**
 * What one file holds for those who can put only one on their site: a book to read, its sheets, pictures and lists,
 * and the embedded sheet. Formulas of one's own and the grid stay files of their own beside it, under their own
 * licences; without them all else works.
 */
import { defineElements } from './definitions.js';

export { CroftBook } from '../book/croft-book.js';
export { CroftEmbed } from '../embed/croft-embed.js';
export { CroftLabels } from '../labels/croft-labels.js';
export { CroftLists } from '../lists/croft-lists.js';
export { CroftRoom } from '../room/croft-room.js';
export { CroftRunway } from '../runway/croft-runway.js';
export { CroftSeason } from '../season/croft-season.js';
export { CroftSheet } from '../sheet/croft-sheet.js';
export { CroftFiguresDay } from '../sheet/figures-day.js';
export { CroftWishList } from '../week/croft-wish-list.js';
export { CroftWorking } from '../working/croft-working.js';

defineElements();
