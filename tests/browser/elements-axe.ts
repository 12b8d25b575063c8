import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Axe {
  run(
    context: { exclude: string[][] },
    options: object,
  ): Promise<{ violations: { id: string; nodes: { target: unknown }[] }[] }>;
}

/** What axe-core finds wrong in our own markup: the inside of the grid is its maker's. */
export async function axeViolations(page: Page): Promise<string[]> {
  await page.evaluate(source);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as { axe: Axe };
    const inGrid = (target: unknown): boolean =>
      Array.isArray(target) && target.flat().some((part) => part === 'croft-grid-pane');
    const { violations } = await axe.run({ exclude: [] }, { resultTypes: ['violations'] });
    return violations.flatMap(({ id, nodes }) =>
      nodes.filter(({ target }) => !inGrid(target)).map(({ target }) => `${id}: ${JSON.stringify(target)}`),
    );
  });
}
