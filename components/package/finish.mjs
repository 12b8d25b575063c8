// The last step of a build: the manifest of elements from their doc blocks, the page for a frame, and a hash of
// every file for pages that check what they load.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { copyFileSync, cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { CSS_PROPERTIES } from './css-properties.mjs';
import { ELEMENT_ENTRIES } from './entries.mjs';

const repository = resolve(import.meta.dirname, '../..');
const dist = resolve(repository, 'dist');
const MANIFEST = 'custom-elements.json';

function makeManifest() {
  const analyze = resolve(repository, 'node_modules/.bin/cem');
  const globs = Object.values(ELEMENT_ENTRIES).flatMap((source) => ['--globs', source]);
  const done = spawnSync(analyze, ['analyze', '--litelement', '--quiet', '--outdir', 'dist', ...globs], {
    cwd: repository,
    stdio: 'inherit',
  });
  if (done.status !== 0) throw new Error('The manifest of elements could not be made.');
  const file = resolve(dist, MANIFEST);
  const manifest = JSON.parse(readFileSync(file, 'utf8'));
  writeFileSync(file, `${JSON.stringify(published(manifest), null, 1)}\n`);
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

const filesIn = (folder) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile() && /\.(js|html)$/.test(each.name))
    .map((each) => resolve(each.parentPath, each.name).slice(dist.length + 1))
    .filter((name) => !name.startsWith('server/') && !name.startsWith('types/') && name !== 'core.js')
    .sort();

function makeIntegrity() {
  const hashes = filesIn(dist).map((name) => [
    name,
    `sha384-${createHash('sha384')
      .update(readFileSync(resolve(dist, name)))
      .digest('base64')}`,
  ]);
  writeFileSync(resolve(dist, 'integrity.json'), `${JSON.stringify(Object.fromEntries(hashes), null, 1)}\n`);
}

makeManifest();
cpSync(resolve(repository, 'components/look/themes'), resolve(dist, 'themes'), { recursive: true });
copyFileSync(resolve(import.meta.dirname, 'embed.html'), resolve(dist, 'embed.html'));
makeIntegrity();
