/** What stands around every page of the guide. */
import { html, type Markup, raw } from './markup.js';
import { ENTRIES, entryOf } from './site.js';

const navigation = (file: string): Markup => html`<nav class="guide-nav" aria-label="Guide"><ul>
${ENTRIES.map(
  (entry) =>
    html`<li><a href="./${entry.file}"${entry.file === file ? raw(' aria-current="page"') : ''}>${entry.short}</a></li>
`,
)}</ul></nav>`;

/** Head and body of a page; `contents` are links to its parts. */
export function framed(file: string, content: Markup): { readonly head: string; readonly body: string } {
  const { title, about } = entryOf(file);
  const head = html`<title>${title} · Croftsheet</title>
<meta name="description" content="${about}" />
<link rel="icon" href="../mark.svg" type="image/svg+xml" />
<link rel="stylesheet" href="../page.css" />
<link rel="stylesheet" href="./guide.css" />
<script type="module" src="./page.ts"></script>`;
  const body = html`<a class="skip" href="#content">To the content</a>
<header class="wide top guide-top">
<a class="brand" href="../index.html"><img src="../mark.svg" alt="" />Croftsheet</a>
${navigation(file)}
</header>
<main class="wide guide" id="content" tabindex="-1">
<h1>${title}</h1>
<p class="about">${about}</p>
${content}
</main>
<footer class="wide">
<p>Households and their figures on these pages are invented. Croftsheet counts jars; it gives no process times and
never calls old food safe. For every jar follow a current, tested process of your national or local food-safety
authority, at your altitude.</p>
</footer>
<div class="unseen" role="status" id="said"></div>`;
  return { head: head.text, body: body.text };
}

/** Links to the parts of a page. */
export const contents = (label: string, parts: readonly (readonly [id: string, title: string])[]): Markup =>
  html`<nav class="contents" aria-label="${label}"><ul>
${parts.map(
  ([id, title]) => html`<li><a href="#${id}">${title}</a></li>
`,
)}</ul></nav>`;
