/** Keeping, versions, tabs and copies. Load this on demand: the libraries for it are reached only from here. */
export { differences } from '../book/differences.js';
export type { Conflict } from './clashes.js';
export { ConflictList } from './conflict-list.js';
export type { MergedCopy } from './copy-merging.js';
export { copyName, copyText, type OpenedCopy, openACopy, saveACopy, saveForMerging } from './files.js';
export { type BookLabel, Keep, openKeep } from './keep.js';
export type { BookEntry } from './keep-database.js';
export { storageProblem } from './keep-problems.js';
export type { VersionEntry } from './keep-versions.js';
export { KeptBook } from './kept-book.js';
export type { EditableBook, KeptBookOptions } from './kept-book-options.js';
export { readKeptCopy } from './kept-copy.js';
export {
  bothOf,
  conflictKey,
  type Decision,
  decided,
  type MergePlan,
  mergeCommand,
  planMerge,
  usualDecision,
} from './merge-plan.js';
export { type BookCopy, type MergedBooks, mergeBooks } from './merging.js';
export type { ParseBook } from './opening.js';
export { BookReplica, type Origin } from './replica.js';
export type { KeepState, KeepStatus } from './status.js';
export { type BookVersions, KeptVersions, MAX_VERSION_NAME, PageVersions } from './versions.js';
