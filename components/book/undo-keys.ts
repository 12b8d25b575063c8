import type { CroftBook } from './croft-book.js';
import { bookAround } from './find-book.js';

const isTyping = (target: EventTarget | undefined): boolean =>
  target instanceof HTMLTextAreaElement ||
  target instanceof HTMLSelectElement ||
  (target instanceof HTMLInputElement && !['checkbox', 'radio', 'button'].includes(target.type)) ||
  (target instanceof HTMLElement && target.isContentEditable);

/** Which way a key stroke asks to go, if it does. */
export function undoKey(event: KeyboardEvent): 'undo' | 'redo' | undefined {
  if (event.altKey || !(event.ctrlKey || event.metaKey)) return undefined;
  const key = event.key.toLowerCase();
  if (key === 'z') return event.shiftKey ? 'redo' : 'undo';
  return key === 'y' && !event.shiftKey ? 'redo' : undefined;
}

/**
 * Undo and redo by keys anywhere on the page, for the book that the key was pressed in; a field that is being
 * typed in keeps its own undo. With the keyboard in no book, the page's only book takes it.
 */
export function takesUndoKey(event: KeyboardEvent, book: CroftBook): 'undo' | 'redo' | undefined {
  if (event.defaultPrevented) return undefined;
  const which = undoKey(event);
  const [target] = event.composedPath();
  if (!which || isTyping(target)) return undefined;
  const around = event
    .composedPath()
    .map((each) => (each instanceof HTMLElement ? bookAround(each) : null))
    .find((each) => each !== null);
  if (around) return around === book ? which : undefined;
  return document.querySelectorAll('croft-book').length === 1 ? which : undefined;
}
