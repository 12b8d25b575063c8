import { unsafeCSS } from 'lit';
import { tokenText } from './token-text.js';

/** The look of every element (see `token-text.ts`), as elements of lit adopt it. */
export const tokens = unsafeCSS(tokenText);
