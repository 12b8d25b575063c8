import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { CSS_PROPERTIES } from '../../../components/package/css-properties.mjs';
import type { ElementDeclaration, ElementsManifest } from '../../../components/package/manifest.mjs';
import { contents } from './frame.js';
import { html, type Markup, table, words } from './markup.js';
import { example, snippet } from './snippet.js';

type Described = NonNullable<ElementDeclaration['attributes']>[number];

/** `croft-book` first, for the others find theirs in it. */
export const elementsOf = (manifest: ElementsManifest): readonly ElementDeclaration[] =>
  manifest.modules
    .flatMap(({ declarations }) => declarations)
    .sort((a, b) =>
      a.tagName === 'croft-book' ? -1 : b.tagName === 'croft-book' ? 1 : a.tagName.localeCompare(b.tagName),
    );

const shared = new Set(Object.keys(CSS_PROPERTIES));

const part = (title: string, heads: readonly string[], rows: readonly (readonly (Markup | string)[])[]) =>
  rows.length > 0 && html`<h3>${title}</h3>${table(title, heads, rows)}`;

const named = (all: readonly Described[] = [], name = (text: string) => text) =>
  all.map((each) => [html`<code>${name(each.name)}</code>`, words(each.description ?? '')]);

/** Events with their types: those are in the package, and in `CroftEvents`. */
const sent = (events: readonly Described[] = []) =>
  events.map(({ name, description = '', type }) => [
    html`<code>${name}</code>`,
    html`${words(description)}${type && html` <code class="type">${type.text}</code>`}`,
  ]);

/** Properties that no attribute tells of, and methods: those that are described. */
function members({ members = [], attributes = [] }: ElementDeclaration): (readonly [Markup, Markup])[] {
  const ofAttributes = new Set(attributes.map((each) => (each as { fieldName?: string }).fieldName));
  return members
    .filter(({ name, description }) => description && !ofAttributes.has(name))
    .map((member) => {
      const given = (member.parameters ?? []).map(({ name }) => name).join(', ');
      const shown = member.kind === 'method' ? `${member.name}(${given})` : member.name;
      const type = member.kind === 'method' ? member.return?.type.text : member.type?.text;
      return [
        html`<code>${shown}</code>`,
        html`${words(member.description ?? '')}${type && html` <code class="type">${type}</code>`}`,
      ];
    });
}

function element(declaration: ElementDeclaration): Markup {
  const { tagName, description = '', attributes, events, slots, cssParts, cssProperties = [] } = declaration;
  const own = cssProperties.filter(({ name }) => !shared.has(name));
  return html`<section aria-labelledby="${tagName}" class="element">
<h2 id="${tagName}"><code>&lt;${tagName}&gt;</code></h2>
<p>${words(description)}</p>
${tagName === 'croft-book' && html`<p>The other examples on this page show the book that is held by this one:</p>`}
${example(snippet(`${tagName}.html`), { what: `example of ${tagName}`, later: tagName !== 'croft-book' })}
${part('Attributes', ['Attribute', 'Says'], named(attributes))}
${part('Properties and methods', ['Name', 'Is'], members(declaration))}
${part('Events', ['Event', 'When'], sent(events))}
${part(
  'Slots',
  ['Slot', 'Holds'],
  named(slots, (name) => name || '(the content)'),
)}
${part('Parts', ['Part', 'Is'], named(cssParts))}
${part('Custom properties of its own', ['Property', 'Sets'], named(own))}
</section>
`;
}

const COMPONENTS = resolve(import.meta.dirname, '../../../components');

const sources = (): string[] =>
  readdirSync(COMPONENTS, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(resolve(COMPONENTS, name), 'utf8'));

/** Elements that others are made of: their names with the first sentence said of them. */
export function innerElements(offered: readonly string[]): (readonly [tag: string, says: string])[] {
  return sources()
    .flatMap((source) => {
      const map = /interface HTMLElementTagNameMap \{([^}]*)\}/.exec(source)?.[1] ?? '';
      return [...map.matchAll(/'(croft-[\w-]+)'/g)].map(([, tag = '']) => {
        const before = source.slice(0, source.indexOf(`@customElement('${tag}')`));
        const doc = before.slice(before.lastIndexOf('/**') + 3, before.lastIndexOf('*/'));
        const text = doc
          .replace(/^\s*\*\s?/gm, '')
          .replace(/\s+/g, ' ')
          .trim();
        return [tag, text] as const;
      });
    })
    .filter(([tag]) => !offered.includes(tag))
    .sort(([a], [b]) => a.localeCompare(b));
}

export function elementsPage(manifest: ElementsManifest): Markup {
  const all = elementsOf(manifest);
  const tags = all.map(({ tagName }) => tagName);
  return html`<p>Every element takes <code>theme</code> where it is named below: <code>light</code>, <code>dark</code> or
<code>auto</code>. The examples share one book, that of a small school garden.</p>
${contents('Elements', [
  ...tags.map((tag): [string, string] => [tag, tag]),
  ['looks', 'Looks'],
  ['inner', 'Inner elements'],
])}
${all.map(element)}
<h2 id="looks">Looks</h2>
<p>These custom properties are heeded by every element that draws something; set them on the element, or anywhere
above it.</p>
${table(
  'Custom properties of all elements',
  ['Property', 'Sets'],
  Object.entries(CSS_PROPERTIES).map(([name, says]) => [html`<code>${name}</code>`, says]),
)}
<h2 id="inner">Inner elements</h2>
<p>The elements above are made of these. They are named here because they are defined on the page, too; they are not
meant to be written by hand, and may change with any version.</p>
${table(
  'Inner elements',
  ['Element', 'What it is'],
  innerElements(tags).map(([tag, says]) => [html`<code>${tag}</code>`, words(says)]),
)}`;
}
