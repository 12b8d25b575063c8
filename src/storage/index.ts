/** Keeping, versions, tabs and copies. Load this on demand: the libraries for it are reached only from here. */
export { differences } from '../book/differences.js';
export { copyName, copyText, type OpenedCopy, openACopy, saveACopy, saveForMerging } from './files.js';
export { type BookLabel, Keep, openKeep, type VersionEntry } from './keep.js';
export type { BookEntry } from './keep-database.js';
export { storageProblem } from './keep-problems.js';
export { type BookCopy, type Conflict, type MergedBooks, type MergedCopy, mergeBooks } from './merging.js';
export type { ParseBook } from './opening.js';
export { BookReplica, type Origin } from './replica.js';
export { type EditableBook, KeptBook, type KeptBookOptions } from './session.js';
export type { KeepState, KeepStatus } from './status.js';
