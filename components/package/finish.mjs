// The last step of a build: the manifest of elements from their doc blocks, the page for a frame, and a hash of
// every file for pages that check what they load.
import { createHash } from 'node:crypto';
import { copyFileSync, cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { documentTypes } from './document-types.mjs';
import { ONE_FILE } from './entries.mjs';
import { finishOneFile } from './finish-one-file.mjs';
import { leanMaps } from './lean-maps.mjs';
import { elementsManifest } from './manifest.mjs';

const repository = resolve(import.meta.dirname, '../..');
const dist = resolve(repository, 'dist');

const filesIn = (folder) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile() && /\.(js|html|css|json)$/.test(each.name))
    .map((each) => resolve(each.parentPath, each.name).slice(dist.length + 1))
    .filter((name) => !/^(?:server|types)\//.test(name) && name !== 'integrity.json')
    .sort();

/** What each version has, from the data that the guide shows too. */
function changelog() {
  const changes = JSON.parse(readFileSync(resolve(import.meta.dirname, 'changes.json'), 'utf8'));
  const parts = ({ title, lines }) => `### ${title}\n\n${lines.map((line) => `- ${line}\n`).join('')}`;
  const versions = changes.map(
    ({ version, date, parts: of }) => `## ${version} (${date})\n\n${of.map(parts).join('\n')}`,
  );
  return `# Changes\n\n${versions.join('\n')}`;
}

/** A hash of every file that a page may load. */
function makeIntegrity() {
  const hashes = filesIn(dist).map((name) => [
    name,
    `sha384-${createHash('sha384')
      .update(readFileSync(resolve(dist, name)))
      .digest('base64')}`,
  ]);
  writeFileSync(resolve(dist, 'integrity.json'), `${JSON.stringify(Object.fromEntries(hashes), null, 1)}\n`);
  return new Map(hashes);
}

/** Says of the files that stand alone how large they are and what a page checks them by. */
function say(hashes) {
  for (const name of ['croftsheet-embed.js', `${ONE_FILE.folder}/${ONE_FILE.name}.js`]) {
    const size = gzipSync(readFileSync(resolve(dist, name)), { level: 9 }).length;
    console.log(`${name}: ${size} bytes under gzip, integrity="${hashes.get(name)}"`);
  }
}

finishOneFile(dist);
leanMaps(dist);

const manifest = await elementsManifest();
writeFileSync(resolve(dist, 'custom-elements.json'), `${JSON.stringify(manifest, null, 1)}\n`);
documentTypes(resolve(dist, 'types'), manifest);
cpSync(resolve(repository, 'components/look/themes'), resolve(dist, 'themes'), { recursive: true });
// Written as they are: each names a library that is not here, so that nothing could be made of them.
cpSync(resolve(import.meta.dirname, 'frameworks'), resolve(dist, 'types/components/package/frameworks'), {
  recursive: true,
});
copyFileSync(resolve(import.meta.dirname, 'embed.html'), resolve(dist, 'embed.html'));
writeFileSync(resolve(dist, 'CHANGELOG.md'), changelog());
say(makeIntegrity());
