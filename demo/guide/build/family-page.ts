import { html, type Markup, raw } from './markup.js';
import { live, snippet } from './snippet.js';

const shown = (name: string): Markup =>
  html`<div class="live">${raw(live(snippet(`family-${name}.html`)))}</div>`;

/** For a household: what to do on which evening, beside a small book that shows it. */
export const familyPage = (): Markup => html`${raw(live(snippet('family-book.html')))}
<p>Below, in small, is the book of an invented household: Ines, Tobias, and Wren, who counts for half. Yours begins with
<a href="../index.html">Start your own book</a> on the page of the demo. It stays in your browser; nothing is sent
anywhere. Save a copy now and then.</p>

<h2 id="first-evening">The first evening</h2>
<p>Take a lamp and a pencil, go along the shelves, and write <strong>one line for each lot</strong>: what is in the
jars, how it was kept, how many, the day they were put up, and where they stand. What you do not know stays blank. The
form that starts your book takes whole shelves at once: <code>tomatoes 24, green beans 18 pints</code>.</p>
${shown('shelf')}

<h2 id="foods">Then: what you eat</h2>
<p>On <strong>Foods</strong> stands one line for each food and the way it is kept. Write how much your table eats in a
week; a guess will do, since the draws that you write later put it right. Now the tinted columns answer: for how many
weeks it lasts, when it runs out, how much to put up. A food that you call otherwise here is renamed on the other sheets
as well: the book asks.</p>
${shown('foods')}

<h2 id="draws">From then on: what you take</h2>
<p>Whoever carries something up writes it down: <em>Take from the shelf</em>, over Shelf or Draws, is made for a telephone
in the cellar. Tap the food, or write <em>tomatoes 2</em>. A line on <strong>Draws</strong> does as well. If nobody does, count the shelf once a month:
<em>Count the shelf…</em> writes the difference. After four weeks the book knows by itself how much you eat.</p>
${shown('draws')}

<h2 id="sunday">On Sunday: the week</h2>
<p>Write on <strong>Week</strong> which dishes you mean to cook, or let the book suggest some that use what should go
first. It makes three lists to print: what to bring up, what to buy, what to do ahead. When a meal is eaten, mark it
done: the draws are written for you.</p>
${shown('week')}

<h2 id="season">Before the season</h2>
<p>How long does each food last, against its next harvest?</p>
${shown('runway')}
<p>What is short goes into the ground. On <strong>Beds</strong> the plants you mean to set say what they may give, and
when to start them, counted from your frost dates.</p>
${shown('season')}
<p>When the year is over, <em>Turn the year…</em> closes the season, keeps its totals, and carries the shelf forward.</p>`;
