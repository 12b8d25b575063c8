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
  const inPackage = (path) => paths.get(path.replace(/^\//, '')) ?? path;
  const modules = manifest.modules.map((module) => ({
    ...module,
    path: inPackage(module.path),
    declarations: module.declarations
      .filter(({ customElement }) => customElement)
      .map((each) => ({
        ...each,
        cssProperties: [...(each.cssProperties ?? []), ...sharedProperties(each.tagName)],
        // Those without a word to them are between elements of ours.
        events: each.events?.filter(({ description }) => description),
        members: each.members?.filter(
          ({ privacy, name }) => (privacy ?? 'public') === 'public' && !name.startsWith('#'),
        ),
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

/** The custom properties that every element heeds which draws something, each with what it is unless given. */
function sharedProperties(tagName) {
  if (tagName === 'croft-book') return [];
  const tokens = readFileSync(resolve(repository, 'components/look/token-text.ts'), 'utf8');
  return Object.entries(CSS_PROPERTIES).map(([name, description]) => {
    const [, value] = new RegExp(`: var\\(\\s*${name},([^;]*)\\);`).exec(tokens);
    return { name, description, default: value.replace(/\s+/g, ' ').trim() };
  });
}
