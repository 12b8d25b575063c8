import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

const SCRIPT = '/__croftsheet-errors.js';

const CATCHER = `window.__croftsheetErrors = [];
addEventListener('error', ({ message, error }) => __croftsheetErrors.push(error?.stack ? message + ' ' + error.stack : message));
addEventListener('unhandledrejection', ({ reason }) => __croftsheetErrors.push(String(reason)));
const { error } = console;
console.error = (...said) => { __croftsheetErrors.push(said.join(' ')); error.apply(console, said); };`;

/**
 * Gives each page a script before its own that keeps what goes wrong: for an engine whose driver does not tell.
 */
export const errorCatcher = (folder: string): Plugin => ({
  name: 'error-catcher',
  configurePreviewServer({ middlewares }) {
    middlewares.use((request, response, next) => {
      const path = new URL(request.url ?? '/', 'http://localhost').pathname;
      if (path === SCRIPT) {
        response.setHeader('Content-Type', 'text/javascript');
        response.end(CATCHER);
      } else if (path.endsWith('.html')) {
        try {
          const page = readFileSync(join(folder, path), 'utf8');
          response.setHeader('Content-Type', 'text/html; charset=utf-8');
          response.end(page.replace(/<head[^>]*>/, (head) => `${head}<script src="${SCRIPT}"></script>`));
        } catch {
          next();
        }
      } else next();
    });
  },
});
