import type { Problem } from '../problem.js';

const COPY = "Choose 'Save a copy' before you close this page";

const named = (error: unknown): string => (error instanceof Error || isDomException(error) ? error.name : '');
const isDomException = (error: unknown): error is DOMException =>
  typeof DOMException !== 'undefined' && error instanceof DOMException;

/** What stands in the way of keeping a book, from the error that the browser gave (undefined: no storage at all). */
export function storageProblem(error: unknown): Problem {
  switch (named(error)) {
    case 'QuotaExceededError':
      return {
        code: 'storage-full',
        message: 'The storage that this browser gives to this site is full, so the last edits are not saved.',
        mend: `${COPY}. Then free some room (remove books that you no longer need, or files on the device); saving is tried again by itself.`,
      };
    case 'VersionError':
      return {
        code: 'storage-newer',
        message: 'A newer version of this page has used the storage, so this one cannot save there.',
        mend: `${COPY}, then reload the page.`,
      };
    case '':
    case 'SecurityError':
    case 'InvalidAccessError':
      return {
        code: 'storage-refused',
        message:
          'This browser keeps nothing for this page (a private window, perhaps, or storage is turned off).',
        mend: `${COPY}, or open the page in an ordinary window.`,
      };
    default:
      return {
        code: 'storage-failed',
        message: 'The browser could not save the last edits.',
        mend: `It is tried again by itself. ${COPY}, in case it goes on.`,
      };
  }
}

export const STORAGE_CLEARED: Problem = {
  code: 'storage-cleared',
  message: 'The storage of this page was cleared. The whole book has been saved again from this page.',
  mend: 'Earlier versions of it are gone.',
};
