import type { BookEvents, SelectedCell } from './book/events.js';
import type { EmbedEvents } from './embed/embed-events.js';

/** What `croft-lesson-checked` tells of one answer or formula. */
export interface LessonChecked {
  /** Number of the question from 1 on, or id of the formula's task; on a sheet of formulas alone see `task`. */
  readonly question?: number | string;
  readonly task?: string;
  /** What the check found: `right`, `wrong` and so on. */
  readonly kind: string;
  /** Of a lesson: how many of its questions are right by now. Of a sheet of formulas: whether this one is. */
  readonly right: number | boolean;
  /** How many questions there are. */
  readonly count?: number;
}

/** Every event that an element of Croftsheet sends, by name. All bubble; all but `croft-what-if` leave shadow roots. */
export interface CroftEvents extends BookEvents, EmbedEvents {
  /** A person chose something that stands in a cell, for the page to bring its sheet into view. */
  'croft-show': CustomEvent<SelectedCell>;
  /** A person moved to another week: its Monday as an ISO date. */
  'croft-week': CustomEvent<string>;
  /** A person closed a working. */
  'croft-close': CustomEvent<null>;
  /** A person chose a formula function by its name. */
  'croft-function': CustomEvent<{ readonly name: string }>;
  /** An answer or a formula was checked. */
  'croft-lesson-checked': CustomEvent<LessonChecked>;
  /** What is tried on a copy of the book changed: how many values, and how many figures differ. */
  'croft-what-if': CustomEvent<{ readonly tried: number; readonly figures: number }>;
  /** Values that were tried were put into the book: how many. */
  'croft-what-if-put': CustomEvent<{ readonly values: number }>;
}

declare global {
  interface GlobalEventHandlersEventMap extends CroftEvents {}
}
