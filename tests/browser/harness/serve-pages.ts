import { rm } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { resolve } from 'node:path';
import { preview } from 'vite';
import { BUILT_PAGES, buildPages } from './build-pages.mjs';
import { ENGINE } from './engines/engine.js';
import { errorCatcher } from './error-catcher.js';

const repository = resolve(import.meta.dirname, '../../..');

/** Where pages are served, and what ends that. */
export interface Served {
  readonly address: string;
  close(): Promise<void>;
}

/** Pages as built by `npm test`, which names the folder; a file of tests run by itself builds its own. */
export async function servePages(): Promise<Served> {
  const shared = process.env.CROFTSHEET_PAGES;
  const built = shared ?? `${BUILT_PAGES}-${process.pid}`;
  if (shared === undefined) await buildPages(built);
  const server = await preview({
    root: repository,
    configFile: false,
    logLevel: 'error',
    appType: 'mpa',
    plugins: ENGINE === 'webkit' ? [errorCatcher(built)] : [],
    build: { outDir: built },
    preview: { port: 0, host: '127.0.0.1' },
  });
  const { port } = server.httpServer.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}`,
    async close() {
      await server.close();
      if (shared === undefined) await rm(built, { recursive: true, force: true });
    },
  };
}
