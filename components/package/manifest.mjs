// The manifest of elements from their doc blocks: what the package offers to editors, and what the guide tells.
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { cli } from '@custom-elements-manifest/analyzer/cli.js';
import { CSS_PROPERTIES } from './css-properties.mjs';
import { ELEMENT_ENTRIES } from './entries.mjs';

const repository = resolve(import.meta.dirname, '../..');

export async function elementsManifest() {
  const sources = [...Object.values(ELEMENT_ENTRIES), 'components/embed/embed-attributes.ts'];
  const globs = sources.flatMap((source) => ['--globs', source]);
  // The folder is where package.json says that it lies: the analyzer would write there what else it is told.
  const argv = ['analyze', '--litelement', '--quiet', '--outdir', 'dist', ...globs];
  return published(await cli({ argv, cwd: repository, noWrite: true }));
}

/** Paths as they are in the package, and nothing that is no one else's to call. */
function published(manifest) {
  const paths = new Map(
    Object.entries(ELEMENT_ENTRIES).map(([name, source]) => [
      source,
      name === 'croft-embed' ? 'dist/croftsheet-embed.js' : `dist/elements/${name}.js`,
    ]),
  );
  const types = eventTypes();
  const inPackage = (path) => paths.get(path.replace(/^\//, '')) ?? path;
  const modules = manifest.modules.map((module) => ({
    ...module,
    path: inPackage(module.path),
    declarations: module.declarations
      .filter(({ customElement }) => customElement)
      .map((each) => ({
        ...each,
        // What elements of ours extend is a class of no entry, or of a library that comes along.
        superclass: { name: 'HTMLElement' },
        attributes: each.attributes?.map((attribute) => withProperty(attribute, each.members ?? [])),
        cssProperties: [...(each.cssProperties ?? []), ...sharedProperties(each.tagName)],
        // Those without a word to them are between elements of ours.
        events: each.events
          ?.filter(({ description }) => description)
          .map((event) => ({ ...event, type: { text: types.get(event.name) } })),
        members: each.members
          ?.filter(({ privacy, name }) => (privacy ?? 'public') === 'public' && !name.startsWith('#'))
          .map(({ inheritedFrom: _, ...member }) => withMeaning(member, each.attributes ?? [])),
      })),
    exports: module.exports
      .filter(({ kind, name }) => kind === 'custom-element-definition' || /^[A-Z]/.test(name))
      .map((each) => ({
        ...each,
        declaration: { ...each.declaration, module: inPackage(each.declaration.module ?? module.path) },
      })),
  }));
  return { ...manifest, modules };
}

const EVENTS = ['components/events.ts', 'components/book/events.ts', 'components/embed/embed-events.ts'];

/** The type of each event, from where it is declared. */
function eventTypes() {
  const declared = EVENTS.flatMap((path) => [
    ...readFileSync(resolve(repository, path), 'utf8').matchAll(
      /^ {2}'(croft-[\w-]+)': (CustomEvent<.*>);$/gm,
    ),
  ]);
  return new Map(declared.map(([, name, type]) => [name, type]));
}

const camel = (name) => name.replace(/-(\w)/g, (_, letter) => letter.toUpperCase());

/** An attribute whose property is written out, and not declared, has it and its type told here. */
function withProperty(attribute, members) {
  const name = attribute.fieldName ?? camel(attribute.name);
  const member = members.find((each) => each.name === name && each.kind === 'field');
  return member ? { ...attribute, fieldName: name, type: attribute.type ?? member.type } : attribute;
}

/** A property means what its attribute does, where nothing else is said of it. */
function withMeaning(member, attributes) {
  const attribute = attributes.find((each) => (each.fieldName ?? camel(each.name)) === member.name);
  return attribute && member.kind === 'field'
    ? { ...member, attribute: attribute.name, description: member.description ?? attribute.description }
    : member;
}

/** The custom properties that every element heeds which draws something, each with what it is unless given. */
function sharedProperties(tagName) {
  if (tagName === 'croft-book') return [];
  const tokens = readFileSync(resolve(repository, 'components/look/token-text.ts'), 'utf8');
  return Object.entries(CSS_PROPERTIES).map(([name, description]) => {
    const [, value] = new RegExp(`: var\\(\\s*${name},([^;]*)\\);`).exec(tokens);
    return { name, description, default: value.replace(/\s+/g, ' ').trim() };
  });
}
