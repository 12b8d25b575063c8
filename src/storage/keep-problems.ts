import { type Problem, standing } from '../problem.js';
import { say } from '../words/index.js';

const named = (error: unknown): string => (error instanceof Error || isDomException(error) ? error.name : '');
const isDomException = (error: unknown): error is DOMException =>
  typeof DOMException !== 'undefined' && error instanceof DOMException;

/** What stands in the way of keeping a book, from the error that the browser gave (undefined: no storage at all). */
export function storageProblem(error: unknown): Problem {
  switch (named(error)) {
    case 'QuotaExceededError':
      return standing(
        'storage-full',
        () => say`The storage that this browser gives to this site is full, so the last edits are not saved.`,
        () =>
          say`Choose 'Save a copy' before you close this page. Then free some room (remove books that you no longer need, or files on the device); saving is tried again by itself.`,
      );
    case 'VersionError':
      return standing(
        'storage-newer',
        () => say`A newer version of this page has used the storage, so this one cannot save there.`,
        () => say`Choose 'Save a copy' before you close this page, then reload the page.`,
      );
    case '':
    case 'SecurityError':
    case 'InvalidAccessError':
      return standing(
        'storage-refused',
        () =>
          say`This browser keeps nothing for this page (a private window, perhaps, or storage is turned off).`,
        () => say`Choose 'Save a copy' before you close this page, or open the page in an ordinary window.`,
      );
    default:
      return standing(
        'storage-failed',
        () => say`The browser could not save the last edits.`,
        () =>
          say`It is tried again by itself. Choose 'Save a copy' before you close this page, in case it goes on.`,
      );
  }
}

export const STORAGE_CLEARED: Problem = standing(
  'storage-cleared',
  () => say`The storage of this page was cleared. The whole book has been saved again from this page.`,
  () => say`Earlier versions of it are gone.`,
);
