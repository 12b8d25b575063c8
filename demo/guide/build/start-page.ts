import { html, type Markup } from './markup.js';
import { ENTRIES } from './site.js';

/** What to read first: the other pages, each with what it holds. */
export const startPage = (): Markup => html`<ul class="ways">
${ENTRIES.slice(1).map(
  ({ file, title, about }) => html`<li><a href="./${file}">${title}</a><p>${about}</p></li>
`,
)}</ul>
<h2>What it is</h2>
<p>A household that grows, puts up and eats its own food writes a book: what stands on the shelf, what was taken, what
is eaten in a week, what is sown. From that Croftsheet works out how long everything lasts, what to use first, what to
put up and what to grow. What is worked out stands in tinted columns; choose one of its figures and it tells how it
came about.</p>
<p><a href="../index.html">Open the book of a whole household</a>, invented for trying things, or
<a href="../lessons.html">the lessons made from a school garden’s</a>.</p>`;
