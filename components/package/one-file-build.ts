import type { UserConfig } from 'vite';
import { ONE_FILE } from './entries.mjs';
import { oneFileChunks } from './one-file-chunks.js';

/** How the one file is built; `finish.mjs` puts into it what the bundler sets beside it. */
export const oneFileBuild = (at: (path: string) => string): NonNullable<UserConfig['build']> => ({
  outDir: at(`dist/${ONE_FILE.folder}`),
  emptyOutDir: true,
  sourcemap: true,
  target: 'es2022',
  lib: { entry: { facade: at(ONE_FILE.source) }, formats: ['es'], fileName: (_format, name) => `${name}.js` },
  rollupOptions: {
    output: {
      minify: true,
      chunkFileNames: '[name].js',
      codeSplitting: { groups: [{ name: oneFileChunks(ONE_FILE.name, at(ONE_FILE.source)) }] },
    },
  },
});
