/** Code that a page shows, and runs: one text for both. */
import { html, type Markup, raw } from './markup.js';

export const SNIPPETS: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(
    import.meta.glob<string>('../snippets/*', { query: '?raw', import: 'default', eager: true }),
  ).map(([path, text]) => [path.replace('../snippets/', ''), text.trimEnd()]),
);

/** The text of a snippet's file, by its name. */
export function snippet(name: string): string {
  const text = SNIPPETS[name];
  if (text === undefined) throw new Error(`There is no snippet called ${name}.`);
  return text;
}

/** Scripts of the package, which this page brings in its own way. */
const SCRIPT_LINE = /^<script type="module" src="\/croftsheet\/[^>]*><\/script>\n?/gm;

/**
 * A snippet as it runs on these pages: word for word, but that its files lie in other folders here, and that the
 * script is the page's own.
 */
export const live = (text: string): string =>
  text
    .replace(SCRIPT_LINE, '')
    .replaceAll('"/croftsheet/embed.html?src=/', '"./embed.html?src=../data/')
    .replaceAll(' src="/', ' src="../data/');

/** Code with a button that copies it. */
export const code = (text: string, what: string): Markup => html`<div class="code">
<pre tabindex="0" role="region" aria-label="${what}"><code>${text}</code></pre>
<button type="button" class="copy" data-copy aria-label="Copy: ${what}">Copy</button>
</div>`;

export interface Shown {
  /** What it is, for readers of screens: 'the freezer list'. */
  readonly what: string;
  /** It comes into the page only when it is nearly in sight. */
  readonly later?: boolean;
  /** The code is folded away. */
  readonly folded?: boolean;
}

/** A snippet running, with its code below. */
export function example(text: string, { what, later = false, folded = false }: Shown): Markup {
  const running = raw(live(text));
  const shown = code(text, what);
  return html`<div class="example">
<div class="live"${later ? raw(' data-later') : ''}>${later ? html`<template>${running}</template>` : running}</div>
${folded ? html`<details><summary>The code to paste</summary>${shown}</details>` : shown}
</div>`;
}
