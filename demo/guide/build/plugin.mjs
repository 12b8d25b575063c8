// Writes the pages of the guide when they are built or served: what they tell is read from the declarations.
import { cpSync, rmSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

const here = import.meta.dirname;
const repository = resolve(here, '../../..');
const MARK = '<!-- guide -->';
let builds = 0;

/** What writes the pages, built for Node: among the modules, so that it finds what it depends on. */
async function pageWriter() {
  const outDir = resolve(repository, `node_modules/.croftsheet-guide/${process.pid}-${++builds}`);
  try {
    await build({
      root: repository,
      configFile: false,
      publicDir: false,
      logLevel: 'error',
      define: { 'import.meta.dirname': JSON.stringify(here) },
      build: { ssr: resolve(here, 'pages.ts'), outDir, target: 'es2022', minify: false },
    });
    return await import(pathToFileURL(resolve(outDir, 'pages.js')).href);
  } finally {
    rmSync(outDir, { recursive: true, force: true });
  }
}

export function guidePages() {
  let pages;
  /** Once for all pages of a build. */
  const load = async () => {
    // The analyzer is large, and needed only where pages are written.
    const { elementsManifest } = await import('../../../components/package/manifest.mjs');
    const { pageOf } = await pageWriter();
    const manifest = await elementsManifest();
    return (file) => pageOf(file, manifest);
  };
  return {
    name: 'guide-pages',
    transformIndexHtml: {
      order: 'pre',
      async handler(text, { filename }) {
        if (!text.includes(MARK)) return text;
        pages ??= load();
        const { head, body } = (await pages)(basename(filename));
        return text.replace(`${MARK}</head>`, () => `${head}</head>`).replace(MARK, () => body);
      },
    },
    // While the site is being worked on, what a page tells may change with any file.
    handleHotUpdate() {
      pages = undefined;
    },
  };
}

/** Books that pages name by address go with them, since nothing in a page’s code says so. */
export function booksBeside() {
  let into = '';
  return {
    name: 'books-beside',
    apply: 'build',
    configResolved({ root, build }) {
      into = resolve(root, build.outDir, 'data');
    },
    closeBundle() {
      cpSync(resolve(here, '../../data'), into, { recursive: true });
    },
  };
}
