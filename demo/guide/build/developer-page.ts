import { contents } from './frame.js';
import { html, type Markup, table } from './markup.js';
import { code, example, snippet } from './snippet.js';

/** Name, entry with its types, an event as it is written there, and what else to know. */
const LIBRARIES: readonly (readonly [string, string, string, Markup | string])[] = [
  [
    'React 19',
    'react',
    'oncroft-change={…}',
    html`Objects go to properties: <code>book={data}</code>. On a page that was written on a server React leaves them out as
it hydrates: give the book by <code>src</code> or as text inside.`,
  ],
  [
    'React 18',
    'react',
    'addEventListener',
    html`Everything is written as an attribute: so <code>class</code>, and the book by <code>src</code> or as text inside.`,
  ],
  ['Preact', 'preact', 'oncroft-change={…}', html`Objects go to properties.`],
  ['Solid', 'solid', 'on:croft-change={…}', ''],
  [
    'Svelte 5',
    'svelte',
    'oncroft-change={…}',
    'On a server an object is written as text; that does no harm, and the page sets it anew.',
  ],
  [
    'Vue 3',
    'vue',
    '@croft-change="…"',
    html`Its compiler must know the tags: <code>isCustomElement: (tag) =&gt; tag.startsWith('croft-')</code>.`,
  ],
  ['Any other JSX', 'jsx', 'oncroft-change={…}', html`For those that take the global <code>JSX</code>.`],
];

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
<p>Import for the type alone is left out by TypeScript, and the element is then not defined: write
<code>import 'croftsheet/croft-sheet'</code> for the element, and <code>import type</code> for its class.</p>
<p>A book is given by <code>src</code>, by a <code>&lt;script type="application/json"&gt;</code> inside, or by the
property <code>book</code>; without any it begins empty. Elements stand inside it, or name it:</p>
${example(snippet('page.html'), { what: 'a book, a sheet of it, and a button' })}
<p>To read, that is all. Before a sheet opens as a grid, <code>&lt;croft-book&gt;</code> must say by
<code>grid-licence-key</code> under which licence you use the grid: see <a href="./blogger.html#licence">Licences</a>.</p>

<h2 id="events">Events and their types</h2>
<p>The button above is this script. What is done to a book answers either <code>{ ok: true }</code> or
<code>{ ok: false, problem }</code>, which says what is wrong and how to mend it; nothing is thrown. Undo takes it back
like anything else.</p>
${code(snippet('events.ts'), 'hearing of changes')}
<p>Who listens late has missed <code>croft-ready</code>: a book that is open already is <code>live</code> of its
<code>&lt;croft-book&gt;</code>, and null until then. An element that waits for a book that is not on the page says so in
the console.</p>
<p>Tag names give the right class in <code>querySelector</code> and <code>createElement</code>, since the types extend
<code>HTMLElementTagNameMap</code>.</p>

<h2 id="later">Bundlers</h2>
<p>Grid and formula engine are loaded by <code>import()</code> and only when they are needed, so any bundler puts them
into files of their own. The elements are built whole: they ask for no plugin. <code>croftsheet/core</code> takes what it
needs from beside it, the formula engine among it, and with Rollup a plugin for CommonJS. Do the same with elements that are not seen at once:</p>
${code(snippet('later.ts'), 'an element that is loaded later')}
<p>On a page that uses lit itself, its development files say that several versions are loaded: the elements bring their
own, and neither disturbs the other.</p>

<h2 id="frameworks">Frameworks</h2>
<p>They are custom elements: any library that writes HTML can write them. Attributes are plain text; objects go to
properties (<code>.book</code>), and what happens comes as DOM events whose names begin with <code>croft-</code>. Where a
library sets a property in an attribute’s stead, that takes the same text; a tick that it writes as <code>false</code> is
none.</p>
${code(snippet('component.tsx.txt'), 'a component in JSX')}
<p>The last import tells the type checker of tags and events, and does nothing else. Each library has its own:</p>
${table(
  'Types and events by library',
  ['Library', 'What to write'],
  LIBRARIES.map(([name, entry, event, and]) => [
    name,
    html`<code>import 'croftsheet/${entry}'</code>, <code>${event}</code>${and && html`. ${and}`}`,
  ]),
)}
<p>Written on a server, elements are what stands in the
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
