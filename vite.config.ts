import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { defineConfig } from 'vite';
import { PACKAGE_ALIASES, STAND_INS } from './components/package/aliases.mjs';
import {
  definingEntries,
  definingEntry,
  embedAlone,
  embedClass,
} from './components/package/build-plugins.js';
import { DEFINING, ENTRIES } from './components/package/entries.mjs';
import { guardedLoops } from './components/package/guarded-loops.js';
import { oneFileBuild } from './components/package/one-file-build.js';
import { booksBeside, guidePages } from './demo/guide/build/plugin.mjs';

const at = (path: string) => resolve(import.meta.dirname, path);

/**
 * What always loads together is one file: dozens of small ones, each found only in the one before, would take
 * longer to fetch than to run. What a person asks for later (sharing ground, suggesting meals) stays apart.
 */
const GROUPS = [
  // Asked by nearly all of the others: within one of them, it would bring that one along.
  { name: 'loops', test: /virtual:guarded-loops/ },
  {
    name: 'book',
    test: (id: string): boolean =>
      /\/src\/(?:units|facts|planning|book|live)\/|\/src\/problem/.test(id) &&
      !/\/(?:doings|ground)\/|\/suggest|\/evaluate\.ts|\/embed-of|\/snippet|\/cut-book|\/needs/.test(id),
    includeDependenciesRecursively: true,
  },
  {
    // All that a grid is first drawn with, its library above all.
    name: 'grid-first',
    test: /node_modules\/handsontable\/|\/components\/grid\/(?:first\/|handsontable\/(?:sheets|portal|bridge|styles-))/,
    includeDependenciesRecursively: true,
  },
  {
    name: 'look',
    test: /node_modules\/(?:lit|@lit|lit-html|lit-element)\/|\/components\/look\/(?!.*\?embed)/,
  },
  {
    name: 'croft-sheet',
    test: /\/components\/(?:sheet|book|working)\/(?!.*dialog|actions|engine|copies|keeping|sheet-called)/,
  },
];

const { version } = JSON.parse(readFileSync(at('package.json'), 'utf8')) as { version: string };
const define = { __CROFTSHEET_VERSION__: JSON.stringify(version) };
const alias = {
  ...STAND_INS,
  '@lit/reactive-element/decorators/custom-element.js': at('components/package/custom-element.ts'),
};

const NODE_TESTS = ['tests/{unit,property}/**/*.test.ts'];
/** Change what all modules share: the language spoken, of which every open book hears, or something global. */
const ALONE = [
  'tests/{unit,property}/*german*.test.ts',
  ...['core-language', 'looks-rules', 'own-taken', 'words-say', 'no-code-from-text', 'history-versions'].map(
    (name) => `tests/unit/${name}.test.ts`,
  ),
];

export default defineConfig(({ mode }) => {
  if (mode === 'core') {
    return {
      build: {
        outDir: at('dist'),
        emptyOutDir: false,
        sourcemap: true,
        lib: { entry: at('src/core.ts'), formats: ['es'], fileName: () => 'core.js' },
        // Node users install these beside us; bundling them again would only duplicate them.
        rollupOptions: {
          external: [/^[a-z@]/i],
          output: { chunkFileNames: 'core-parts/[name]-[hash].js' },
        },
      },
    };
  }
  if (mode === 'one-file')
    return { plugins: [guardedLoops], define, resolve: { alias }, build: oneFileBuild(at) };
  const fileName = (_format: string, name: string) => `${name}.js`;
  if (mode === 'elements') {
    const entry = Object.fromEntries(
      Object.entries(ENTRIES).map(([name, source]) => [
        name,
        DEFINING.includes(name) ? definingEntry(name) : at(source),
      ]),
    );
    return {
      plugins: [definingEntries(at), embedAlone, embedClass, guardedLoops],
      define,
      resolve: { alias },
      build: {
        outDir: at('dist'),
        emptyOutDir: true,
        sourcemap: true,
        target: 'es2022',
        lib: { entry, formats: ['es'], fileName },
        rollupOptions: {
          preserveEntrySignatures: 'allow-extension',
          output: {
            chunkFileNames: 'parts/[name]-[hash].js',
            minify: true,
            codeSplitting: { groups: GROUPS },
          },
        },
      },
    };
  }
  if (mode === 'server') {
    // The same entries for where there is no page: lit and the others come from beside us, with their own
    // files for servers, so that importing an element throws nothing and defines nothing that could draw.
    const entry = Object.fromEntries(Object.entries(ENTRIES).map(([name, source]) => [name, at(source)]));
    return {
      define,
      build: {
        outDir: at('dist/server'),
        emptyOutDir: true,
        sourcemap: true,
        ssr: true,
        lib: { entry, formats: ['es'], fileName },
        rollupOptions: {
          external: [/^(?!@oxc-project\/)[a-z@](?!.*\.css)/i],
          output: { chunkFileNames: 'parts/[name]-[hash].js' },
        },
      },
    };
  }
  return {
    root: at('demo'),
    base: './',
    plugins: [guidePages(), booksBeside()],
    resolve: { alias: PACKAGE_ALIASES },
    server: { fs: { allow: [at('.')] } },
    // Found only through import(): named here, so that the first visit needs no second load.
    optimizeDeps: { include: ['hyperformula', 'handsontable/base', 'yjs', 'idb', 'zod'] },
    build: {
      outDir: at('dist-demo'),
      emptyOutDir: true,
      target: 'es2022',
      rollupOptions: {
        input: [
          at('demo/index.html'),
          at('demo/blog.html'),
          at('demo/embed/cellar.html'),
          at('demo/lessons.html'),
          ...readdirSync(at('demo/guide'))
            .filter((name) => name.endsWith('.html'))
            .map((name) => at(`demo/guide/${name}`)),
        ],
      },
    },
    test: {
      root: at('.'),
      testTimeout: 90_000,
      hookTimeout: 90_000,
      // Two at once even on two cores: a file of browser tests mostly waits for its browser.
      maxWorkers: 2,
      // Loading modules is a good part of all the time: files of a project share them.
      isolate: false,
      // A worker stays with one project, so one project after the other.
      projects: [
        { extends: true, test: { name: 'browser', include: ['tests/browser/**/*.test.ts'] } },
        {
          extends: true,
          test: {
            name: 'node',
            include: NODE_TESTS,
            exclude: ALONE,
            setupFiles: 'tests/support/as-at-first.ts',
            sequence: { groupOrder: 1 },
          },
        },
        {
          extends: true,
          test: { name: 'alone', include: ALONE, isolate: true, sequence: { groupOrder: 2 } },
        },
      ],
    },
  };
});
