import { html, type TemplateResult } from 'lit';
import { say } from '../../src/words/index.js';
import type { CroftBook } from '../book/croft-book.js';
import { problemList } from '../look/problems.js';

/** What a picture shows while its book is being opened, or could not be. */
export const withoutBook = (book: CroftBook | null): TemplateResult =>
  book && book.problems.length > 0
    ? html`<div role="alert">
        <h3>${say`The book could not be opened`}</h3>
        ${problemList(book.problems)}
      </div>`
    : html`<p class="opening quiet" aria-busy="true">${say`Opening the book…`}</p>`;
