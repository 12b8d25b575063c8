import { resolve } from 'node:path';
import { defineConfig } from 'vite';

const at = (path: string) => resolve(import.meta.dirname, path);

export default defineConfig(({ mode }) => {
  if (mode === 'core') {
    return {
      build: {
        outDir: at('dist'),
        emptyOutDir: false,
        sourcemap: true,
        lib: { entry: at('src/core.ts'), formats: ['es'], fileName: () => 'core.js' },
        // Node users install these beside us; bundling them again would only duplicate them.
        rollupOptions: { external: [/^[a-z@]/i] },
      },
    };
  }
  if (mode === 'elements') {
    return {
      build: {
        outDir: at('dist'),
        emptyOutDir: true,
        sourcemap: true,
        target: 'es2022',
        lib: { entry: at('components/croftsheet.ts'), formats: ['es'], fileName: () => 'croftsheet.js' },
      },
    };
  }
  return {
    root: at('demo'),
    base: './',
    server: { fs: { allow: [at('.')] } },
    // Found only through import(): named here, so that the first visit needs no second load.
    optimizeDeps: { include: ['hyperformula', 'handsontable/base', 'yjs', 'idb', 'zod'] },
    build: {
      outDir: at('dist-demo'),
      emptyOutDir: true,
      target: 'es2022',
      rollupOptions: { input: [at('demo/index.html'), at('demo/blog.html'), at('demo/lessons.html')] },
    },
    test: { root: at('.'), include: ['tests/**/*.test.ts'], testTimeout: 90_000 },
  };
});
