// Writes the pages of the guide when they are built or served: what they tell is read from the declarations.
import { basename, resolve } from 'node:path';
import { runnerImport } from 'vite';

const here = import.meta.dirname;
const MARK = '<!-- guide -->';

export function guidePages() {
  let pages;
  /** Once for all pages of a build. */
  const load = async () => {
    // The analyzer is large, and needed only where pages are written.
    const { elementsManifest } = await import('../../../components/package/manifest.mjs');
    const [{ module }, manifest] = await Promise.all([
      runnerImport(resolve(here, 'pages.ts'), {
        configFile: false,
        root: resolve(here, '../../..'),
        logLevel: 'error',
      }),
      elementsManifest(),
    ]);
    return (file) => module.pageOf(file, manifest);
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
