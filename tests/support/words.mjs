// `npm run words`: writes the catalogue of what the source says, and the list of what German lacks.
import { mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { runnerImport } from 'vite';

const { module } = await runnerImport('./tests/support/catalogue.ts', {
  configFile: false,
  logLevel: 'error',
});
const { catalogueOfSource, catalogueFile, catalogueText, translationsOf } = module;

const catalogue = catalogueOfSource();
const written = new Set();
for (const [part, texts] of catalogue) {
  const file = catalogueFile(part);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, catalogueText(texts));
  written.add(file);
  const has = translationsOf(part, 'de');
  const done = texts.filter((text) => has[text] !== undefined).length;
  const gone = Object.keys(has).filter((text) => !texts.includes(text));
  console.log(
    `${part}: ${texts.length} texts, ${done} in German${gone.length > 0 ? `, ${gone.length} no longer said` : ''}`,
  );
}
const folder = dirname(catalogueFile('units'));
for (const name of readdirSync(folder)) if (!written.has(join(folder, name))) rmSync(join(folder, name));
