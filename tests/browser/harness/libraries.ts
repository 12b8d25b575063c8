import type { Page } from 'playwright-core';

/**
 * Hears from now on which libraries a page loads. Built pages name each module's file above it, so what a file
 * is called, and what it was put together with, does not matter.
 */
export function librariesLoaded(page: Page): () => Promise<ReadonlySet<string>> {
  const scripts = new Set<string>();
  page.on('request', (request) => {
    if (new URL(request.url()).pathname.endsWith('.js')) scripts.add(request.url());
  });
  return async () => {
    const texts = await Promise.all([...scripts].map(async (url) => (await page.request.get(url)).text()));
    const named = texts.flatMap((text) => [
      ...text.matchAll(/^\/\/ node_modules\/((?:@[^/\s]+\/)?[^/\s]+)/gm),
    ]);
    return new Set(named.map(([, name]) => name!));
  };
}
