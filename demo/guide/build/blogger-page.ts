import { contents } from './frame.js';
import { html, type Markup } from './markup.js';
import { readmeParagraph, readmeTable } from './readme.js';
import { code, example, snippet } from './snippet.js';

/** For somebody who keeps a blog: what to paste, and what to know of it. */
export const bloggerPage = (): Markup => html`${contents('On this page', [
  ['paste', 'Two lines'],
  ['try', 'Readers’ own numbers'],
  ['file', 'Data in a file'],
  ['frame', 'In a frame'],
  ['hash', 'The script’s hash'],
  ['policy', 'Security policy'],
  ['licence', 'Which licence'],
])}
<h2 id="paste">Two lines around a table</h2>
<p>Put the folder <code>dist</code> of the package on your site, under the name <code>croftsheet</code>. Then a table of
your own takes two lines: the script, once on the page, and the element around the table. It shows without script, too.
The <code>&lt;div&gt;</code> keeps them together: many editors put a paragraph around what stands alone, and no table can
stand in a paragraph.</p>
${example(snippet('blog-table.html'), { what: 'a table of your own' })}
<p>Such a table is its own data. Readers may write in a column marked <code>data-open</code>; one with
<code>data-formula</code> is worked out anew from the others, which it calls by their titles.
A row of totals goes into <code>&lt;tfoot&gt;</code>, or has <code>data-total</code> on its <code>&lt;tr&gt;</code>: it is
none of the data.</p>
<p>You need not write any of it: in your book choose <em>This book → For a web page…</em>, say which columns to show, and
press <em>Copy</em>. It says how long that is; a large book goes better <a href="#file">as a file</a>. Or take one of the <a href="./gallery.html">ten ready sheets</a>.</p>
<p>Light or dark follows the page’s own <code>color-scheme</code>. A page that is dark and does not say so needs
<code>theme="dark"</code> on the element, or the sheet stands in it light.</p>

<h2 id="try">Numbers that readers may try</h2>
<p>With the data inside, figures are worked out, and <code>open</code> names the columns in which readers may write.
Write another number under <em>Put up</em>: the tinted columns follow. What works them out is loaded only then.</p>
${example(snippet('blog-json.html'), { what: 'a sheet with its data inside' })}
<p>A book needs no more than this: sheets, each with its kind and rows; a row has its place (<code>order</code>) and its
cells. Leave out what you do not know. The <a href="./columns.html">columns of each kind</a> are listed. Where something
in the data is wrong, the element says where, and how to mend it.</p>
<p>${readmeParagraph('**What is kept where.**')}</p>
<p>The name is what <code>keep-as</code> says. Give it another in each post of your site: two sheets of one name would
show a reader the numbers that they tried in the other.</p>
<p>Readers may keep a whole book on your site, too. With <code>source="own"</code> the element shows theirs, the one that
they edited last; to everyone else it shows yours. Nobody but the reader sees it: it never leaves their browser.</p>
${example(snippet('blog-own.html'), { what: 'the reader’s own book' })}

<h2 id="file">Data in a file</h2>
<p>The data may lie in a file on the same site. In the book, <em>Save as a file</em> makes it, and
the lines to paste stand beside it. From another site nothing is fetched, whatever that site allows. Without script
nothing shows in its place, as no table stands in the page; <code>columns</code> says which of the file’s columns show.</p>
${example(snippet('blog-src.html'), { what: 'a sheet whose data lies in a file' })}

<h2 id="frame">Where scripts are stripped: a frame</h2>
<p>Some blog services allow no scripts but frames. The package brings a page for that. In its
address may stand what would stand on the element: <code>embed.html?src=/our-cellar.json&amp;theme=dark</code>.</p>
${example(snippet('blog-frame.html'), { what: 'a frame' })}
<p>The page in the frame tells its height to the page around it, which may use it:</p>
${code(snippet('frame-height.js'), 'heeding the height of frames')}

<h2 id="hash">With the script’s hash</h2>
<p>A page may say which script it trusts. The hash of each file stands in <code>integrity.json</code>; it is another one
with each version. This asks for it:</p>
${code(snippet('integrity.sh'), 'asking for the hash')}
${code(snippet('integrity.html'), 'the script with its hash')}
<p>The embedded sheet is one file until a reader does something, so one hash covers it.</p>

<h2 id="policy">What a security policy must allow</h2>
<p>Nothing needs <code>unsafe-inline</code>, <code>unsafe-eval</code> or WebAssembly.</p>
${readmeTable('Security policy by view', 'view')}

<h2 id="licence">Which use needs which licence</h2>
<p>Croftsheet’s own code is MIT. Two parts that it can load are not: the formula engine and the grid. An embedded table
loads neither of them, unless it has formulas of your own that must be worked out, or offers the grid by
<code>grid-licence-key</code>.</p>
${readmeTable('Licences by use', 'you')}
<p>This is a summary and no legal advice; the file NOTICE in the package names all parts and their licences.</p>`;
