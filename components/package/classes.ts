/**
 * The classes of the elements, none of them defined: for pages that give them names of their own, or define them
 * when they choose. `defineElements()` defines all under their usual names; so does making the first one, for
 * what it needs inside.
 */
export { CroftBook } from '../book/croft-book.js';
export { CroftBookMenu } from '../book-menu/croft-book-menu.js';
export { CroftEmbed } from '../embed/croft-embed.js';
export { CroftFormulas } from '../formulas/croft-formulas.js';
export { CroftFunctions } from '../functions/croft-functions.js';
export { CroftLabels } from '../labels/croft-labels.js';
export { CroftLesson } from '../lesson/croft-lesson.js';
export { CroftLessonSheet } from '../lesson/croft-lesson-sheet.js';
export { CroftLists } from '../lists/croft-lists.js';
export { CroftRoom } from '../room/croft-room.js';
export { CroftRunway } from '../runway/croft-runway.js';
export { CroftSeason } from '../season/croft-season.js';
export { CroftSheet } from '../sheet/croft-sheet.js';
export { CroftFiguresDay } from '../sheet/figures-day.js';
export { CroftWishList } from '../week/croft-wish-list.js';
export { CroftWhatIf } from '../what-if/croft-what-if.js';
export { CroftWorking } from '../working/croft-working.js';
export { defineElements } from './definitions.js';
