import type { AddressInfo } from 'node:net';
import { resolve } from 'node:path';
import { createServer, preview } from 'vite';

const repository = resolve(import.meta.dirname, '../../..');

/** Where pages are served, and what ends that. */
export interface Served {
  readonly address: string;
  close(): Promise<void>;
}

const addressOf = (port: number): string => `http://127.0.0.1:${port}`;

/** Pages as built by `npm test` (which names the folder), or from source where a file of tests is run by itself. */
export async function servePages(): Promise<Served> {
  const built = process.env.CROFTSHEET_PAGES;
  if (built) {
    const server = await preview({
      root: repository,
      configFile: false,
      logLevel: 'error',
      appType: 'mpa',
      build: { outDir: built },
      preview: { port: 0, host: '127.0.0.1' },
    });
    const { port } = server.httpServer.address() as AddressInfo;
    return { address: addressOf(port), close: () => server.close() };
  }
  const server = await createServer({
    root: repository,
    configFile: false,
    logLevel: 'error',
    appType: 'mpa',
    cacheDir: resolve(repository, 'node_modules/.vite-tests'),
    server: { port: 0, hmr: false, watch: null },
    optimizeDeps: { entries: ['tests/browser/harness/pages/*.html'] },
    oxc: { target: 'es2022' },
  });
  await server.listen();
  const { port } = server.httpServer!.address() as AddressInfo;
  return { address: addressOf(port), close: () => server.close() };
}
