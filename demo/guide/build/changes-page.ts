import changes from '../../../components/package/changes.json';
import { html, type Markup, words } from './markup.js';

export const changesPage =
  (): Markup => html`<p>Versions follow semantic versioning: the first number changes where
something that worked may work otherwise, the second where something is added, the third where something is mended. Below
1.0.0 the second number may do what the first does. The same list comes with the package, as
<code>dist/CHANGELOG.md</code>.</p>
${changes.map(
  ({ version, date, parts }) => html`<section aria-labelledby="v${version}">
<h2 id="v${version}">${version} <time datetime="${date}">${date}</time></h2>
${parts.map(
  ({ title, lines }) => html`<h3>${title}</h3>
<ul>${lines.map((line) => html`<li>${words(line)}</li>`)}</ul>
`,
)}</section>
`,
)}`;
