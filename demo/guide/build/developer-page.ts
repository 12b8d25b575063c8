import { contents } from './frame.js';
import { html, type Markup } from './markup.js';
import { code, example, snippet } from './snippet.js';

/** For somebody who builds pages: what to import, and what comes of it. */
export const developerPage = (): Markup => html`${contents('On this page', [
  ['install', 'Install and import'],
  ['events', 'Typed events'],
  ['later', 'Bundlers'],
  ['frameworks', 'Frameworks'],
  ['node', 'In Node'],
  ['server', 'On a server'],
  ['lookup', 'Look things up'],
])}
<h2 id="install">Install, and import what you use</h2>
${code(snippet('install.sh'), 'installing')}
<p>Each element has an entry that defines it and exports its class; <code>croftsheet</code> is all of them,
<code>croftsheet/embed</code> the embedded sheet alone.</p>
${code(snippet('entries.ts'), 'importing two elements')}
<p>A book is given by <code>src</code>, by a <code>&lt;script type="application/json"&gt;</code> inside, or by the
property <code>book</code>. Elements stand inside it, or name it:</p>
${example(snippet('page.html'), { what: 'a book, a sheet of it, and a button' })}
<p>To read, that is all. Before a sheet opens as a grid, <code>&lt;croft-book&gt;</code> must say by
<code>grid-licence-key</code> under which licence you use the grid: see <a href="./blogger.html#licence">Licences</a>.</p>

<h2 id="events">Events and their types</h2>
<p>The button above is this script. What is done to a book answers either <code>{ ok: true }</code> or
<code>{ ok: false, problem }</code>, which says what is wrong and how to mend it; nothing is thrown. Undo takes it back
like anything else.</p>
${code(snippet('events.ts'), 'hearing of changes')}
<p>Tag names give the right class in <code>querySelector</code> and <code>createElement</code>, since the types extend
<code>HTMLElementTagNameMap</code>.</p>

<h2 id="later">Bundlers</h2>
<p>Grid and formula engine are loaded by <code>import()</code> and only when they are needed, so any bundler puts them
into files of their own. Do the same with elements that are not seen at once:</p>
${code(snippet('later.ts'), 'an element that is loaded later')}

<h2 id="frameworks">Frameworks</h2>
<p>They are custom elements: any library that writes HTML can write them. Attributes are plain text; objects go to
properties (<code>.book</code>), and what happens comes as DOM events whose names begin with <code>croft-</code>. Where a
library sets a property in an attribute’s stead, that takes the same text. For JSX there are types:</p>
${code(snippet('component.tsx.txt'), 'a component in JSX')}
<p>They are added to the global <code>JSX</code>. React 19 keeps its own, which takes a file beside yours:</p>
${code(snippet('react.d.ts.txt'), 'the types in React 19')}
<p>There an event is <code>oncroft-change={…}</code>, in Solid <code>on:croft-change</code>, in Vue
<code>@croft-change</code>, in Svelte <code>oncroft-change</code>. Written on a server, elements are what stands in the
HTML, and none of them changes any of it before the page’s script has taken it over: hydration finds what was sent. What
<code>embedOf</code> answers goes in as HTML (<code>dangerouslySetInnerHTML</code>, <code>v-html</code>,
<code>{@html}</code>) into an element that stands around it, as it brings its <code>&lt;croft-embed&gt;</code> along; a
table can as well be written as elements inside.</p>

<h2 id="node">Books in Node</h2>
<p><code>croftsheet/core</code> needs no page: it reads, checks and works out books, and evaluates formulas. The package
is ES modules; <code>require</code> answers them too, from Node 20.19 on.</p>
${code(snippet('node.ts'), 'weeks of supply from a file')}

<h2 id="server">On a server</h2>
<p>Every entry may be imported where there is no page; nothing is drawn there. <code>embedOf</code> writes the table that
readers get first, and with <code>open</code> the data for trying.</p>
${code(snippet('server.ts'), 'a shelf as HTML')}

<h2 id="lookup">Look things up</h2>
<p>Types come along. <code>croftsheet/custom-elements.json</code> describes the elements for editors; the same is on
<a href="./elements.html">Every element</a>. A problem’s <code>code</code> never changes: see
<a href="./problems.html">Every problem code</a>. The security policy and licences stand on the page
<a href="./blogger.html#policy">for blogs</a>.</p>`;
