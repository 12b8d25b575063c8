// Builds every page that browser tests open, once for all of them: a page of a few files opens several times
// quicker than one of hundreds of modules.
import { cpSync, readdirSync } from 'node:fs';
import { resolve } from 'node:path';
import { build } from 'vite';
import { PACKAGE_ALIASES } from '../../../components/package/aliases.mjs';
import { guidePages } from '../../../demo/guide/build/plugin.mjs';

const repository = resolve(import.meta.dirname, '../../..');
export const BUILT_PAGES = resolve(repository, 'node_modules/.croftsheet-pages');

export async function buildPages(into = BUILT_PAGES) {
  await build({
    root: repository,
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    plugins: [guidePages()],
    resolve: { alias: PACKAGE_ALIASES },
    build: {
      outDir: into,
      emptyOutDir: true,
      target: 'es2022',
      minify: false,
      reportCompressedSize: false,
      rollupOptions: {
        input: ['demo', 'demo/embed', 'demo/guide', 'tests/browser/harness/pages'].flatMap((folder) =>
          readdirSync(resolve(repository, folder))
            .filter((name) => name.endsWith('.html'))
            .map((name) => resolve(repository, folder, name)),
        ),
      },
    },
  });
  cpSync(resolve(repository, 'demo/data'), resolve(into, 'demo/data'), { recursive: true });
}
