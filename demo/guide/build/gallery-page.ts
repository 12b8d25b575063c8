import { caution } from '../../../src/facts/index.js';
import { READY_SHEETS, type ReadySheet } from '../gallery.js';
import { contents } from './frame.js';
import { html, type Markup } from './markup.js';
import { example } from './snippet.js';

const BOOKS = import.meta.glob<string>('../../data/*.json', {
  query: '?raw',
  import: 'default',
  eager: true,
});

/** The book of a ready sheet, as its file has it. */
export function bookOf({ id }: ReadySheet): string {
  const text = BOOKS[`../../data/${id}.json`];
  if (text === undefined) throw new Error(`There is no book ${id}.json.`);
  return text.trimEnd();
}

/** What is pasted: the script, the element, its data, and what must stand beside it for the sake of safety. */
export function pasted(sheet: ReadySheet): string {
  const { id, columns, open, cautions = [] } = sheet;
  const also = cautions.map((each) => `\n<p>${caution(each).text}</p>`).join('');
  return `<div>
<script type="module" src="/croftsheet/croftsheet-embed.js"></script>
<croft-embed sheet="${sheet.sheet}" columns="${columns.join(', ')}" open="${open.join(', ')}" keep-as="${id}">
<script type="application/json">
${bookOf(sheet).replaceAll('<', '\\u003c')}
</script>
</croft-embed>${also}
</div>`;
}

export const galleryPage =
  (): Markup => html`<p>Put the folder <code>dist</code> of the package on your site under the
name <code>croftsheet</code>, paste what <em>Copy</em> gives, and write your own lines into it: one row for each thing,
with an <code>order</code> that puts it in its place (<code>a0</code>, <code>a1</code> … <code>a9</code>, <code>aA</code>).
<code>as_of</code> is the day of your count; leave it out and it is today. All households and numbers here are
invented.</p>
${contents(
  'Ready sheets',
  READY_SHEETS.map(({ id, title }) => [id, title]),
)}
${READY_SHEETS.map(
  (sheet) => html`<section aria-labelledby="${sheet.id}">
<h2 id="${sheet.id}">${sheet.title}</h2>
<p>${sheet.about}</p>
${
  sheet.formulas &&
  html`<p class="quiet">It has formulas of its own: for those the formula engine is loaded, under the
<a href="./blogger.html#licence">licence that your page uses it by</a>.</p>`
}
${example(pasted(sheet), { what: sheet.title.toLowerCase(), later: true, folded: true })}
</section>
`,
)}`;
