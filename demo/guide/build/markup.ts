/** HTML as text, for pages that are written when the site is built. */
import { escaped } from '../../../src/live/embed/snippet.js';

/** HTML that may stand in a page as it is. */
export class Markup {
  constructor(readonly text: string) {}
}

type Part = Markup | string | number | false | null | undefined | readonly Part[];

const partText = (part: Part): string => {
  if (part === false || part === null || part === undefined) return '';
  if (part instanceof Markup) return part.text;
  if (typeof part === 'object') return part.map(partText).join('');
  return escaped(String(part));
};

/** A template whose parts are escaped unless they are markup themselves; lists follow one another. */
export const html = (strings: TemplateStringsArray, ...parts: readonly Part[]): Markup =>
  new Markup(strings.reduce((text, next, i) => `${text}${partText(parts[i - 1])}${next}`));

/** Markup from text that is HTML already. */
export const raw = (text: string): Markup => new Markup(text);

/** Words with \`code\` and **strong** parts, as doc blocks and tables write them. */
export const words = (text: string): Markup =>
  raw(
    escaped(text)
      .replace(/`([^`]+)`/g, '<code>$1</code>')
      .replace(/\*\*([^*]+)\*\*/g, '<strong>$1</strong>')
      .replace(/\*([^*\s][^*]*)\*/g, '<em>$1</em>'),
  );

/** A table with a caption that readers of screens hear; it scrolls by itself where it is too wide. */
export const table = (
  caption: string,
  heads: readonly string[],
  rows: readonly (readonly Part[])[],
): Markup => html`<div class="scroll" tabindex="0" role="region" aria-label="${caption}"><table>
<caption class="unseen">${caption}</caption>
<thead><tr>${heads.map((head) => html`<th scope="col">${head}</th>`)}</tr></thead>
<tbody>${rows.map(
  (cells) =>
    html`<tr>${cells.map((cell, i) => (i === 0 ? html`<th scope="row">${cell}</th>` : html`<td>${cell}</td>`))}</tr>
`,
)}</tbody>
</table></div>`;

/** A word for an address within a page. */
export const slug = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
