// `npm run words`: writes the catalogue of what the source says, and goes over the German with it: a translation
// whose text has moved goes along, one whose text is no longer said goes out. Says what German lacks.
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { runnerImport } from 'vite';

const { module } = await runnerImport('./tests/support/catalogue.ts', {
  configFile: false,
  logLevel: 'error',
});
const { catalogueOfSource, catalogueFile, catalogueText, translationsOf, partsWith } = module;

const catalogue = catalogueOfSource();
const german = Object.assign({}, ...partsWith('de').map((part) => translationsOf(part, 'de')));
for (const language of ['catalogue', 'de']) {
  const folder = dirname(catalogueFile('units', language));
  const parts = [...catalogue.keys()].map((part) => basename(catalogueFile(part, language)));
  mkdirSync(folder, { recursive: true });
  for (const name of readdirSync(folder)) if (!parts.includes(name)) rmSync(`${folder}/${name}`);
}
for (const [part, texts] of catalogue) {
  writeFileSync(catalogueFile(part), catalogueText(texts));
  const said = texts.filter((text) => german[text] !== undefined);
  if (said.length > 0)
    writeFileSync(
      catalogueFile(part, 'de'),
      catalogueText(Object.fromEntries(said.map((text) => [text, german[text]]))),
    );
  console.log(`${part}: ${texts.length} texts, ${said.length} in German`);
}
