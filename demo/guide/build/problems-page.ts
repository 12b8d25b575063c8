import { PROBLEM_CODES } from '../../../src/problem-codes.js';
import source from '../../../src/problem-codes.ts?raw';
import { contents } from './frame.js';
import { html, type Markup, slug, table } from './markup.js';

/** Codes by the headings that stand over them where they are declared. */
export function problemGroups(): (readonly [title: string, codes: readonly string[]])[] {
  const groups: [string, string[]][] = [];
  for (const line of source.split('\n')) {
    const heading = /^ {2}\/\/ (.+)$/.exec(line);
    if (heading?.[1]) groups.push([heading[1], []]);
    const code = /^ {2}(?:'([^']+)'|([\w-]+)):/.exec(line);
    const named = code?.[1] ?? code?.[2];
    if (named && named in PROBLEM_CODES) groups.at(-1)?.[1].push(named);
  }
  return groups;
}

export const problemsPage =
  (): Markup => html`<p>A refusal, an error in a cell, or a fault of a file is a value:
<code>{ code, message, mend, where }</code>. The message says what is wrong, <code>mend</code> how to put it right, and
<code>where</code> the sheet, row, column or place in the file. A <code>code</code> never changes; one that ends in … stands
for all codes that begin so. In Node the same list is <code>PROBLEM_CODES</code> of <code>croftsheet/core</code>.</p>
<p class="filter"><label for="filter">Search the codes</label>
<input id="filter" type="search" autocomplete="off" data-filter="#content tbody tr" /></p>
${contents(
  'Groups',
  problemGroups().map(([title]) => [slug(title), title]),
)}
${problemGroups().map(
  ([title, codes]) => html`<section aria-labelledby="${slug(title)}">
<h2 id="${slug(title)}">${title}</h2>
${table(
  title,
  ['Code', 'What it means'],
  codes.map((code) => [html`<code id="${slug(code)}">${code}</code>`, PROBLEM_CODES[code] ?? '']),
)}
</section>
`,
)}`;
