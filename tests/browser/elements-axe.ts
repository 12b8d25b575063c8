import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** Rows of a long table are alike: some of them are looked at, the last one too. */
const ALIKE = ['croft-reading-view', 'croft-grid-pane'].map((view) => ({
  fromShadowDom: ['croft-sheet', view, 'tbody tr:nth-child(n+9):not(:last-child)'],
}));
/** What stands behind an open dialog, and is looked at by itself. */
const BEHIND = ['croft-reading-view', 'croft-grid-pane'].map((view) => ({
  fromShadowDom: ['croft-sheet', view],
}));

interface Axe {
  run(
    context: { exclude: { fromShadowDom: string[] }[] },
    options: object,
  ): Promise<{ violations: { id: string; nodes: { target: unknown }[] }[] }>;
}

/** What may be wrong inside the grid, in its maker's markup, which is not ours to change: the rule, where, and why. */
const GRID_MAKERS: readonly { readonly rule: string; readonly at: string; readonly why: string }[] = [
  {
    rule: 'aria-required-children',
    at: '^#ht_',
    why: 'Its layers are presentational and take focus, so that they scroll; rows and cells stand inside them.',
  },
  {
    rule: 'label',
    at: '^(textarea|\\.handsontableInput)',
    why: 'The field that hears keys and holds the text while a cell is edited has no name of its own; the cell has.',
  },
];

/**
 * What axe-core finds wrong, by all of its rules or some, but for what the grid's maker is known to have left.
 */
export async function axeViolations(
  page: Page,
  rules?: readonly string[],
  { inDialog = false } = {},
): Promise<string[]> {
  await page.evaluate(source);
  return page.evaluate(
    async ([makers, only, exclude]) => {
      const { axe } = globalThis as unknown as { axe: Axe };
      const known = (rule: string, target: unknown): boolean => {
        const path = Array.isArray(target) ? target.flat().map(String) : [];
        return (
          path.includes('croft-grid-pane') &&
          makers.some((each) => each.rule === rule && new RegExp(each.at).test(path.at(-1) ?? ''))
        );
      };
      const { violations } = await axe.run(
        { exclude },
        // No rule of those that are asked needs style sheets or sounds to be fetched once more.
        { resultTypes: ['violations'], preload: false, ...(only && { runOnly: only }) },
      );
      return violations.flatMap(({ id, nodes }) =>
        nodes
          .filter(({ target }) => !known(id, target))
          .map(({ target }) => `${id}: ${JSON.stringify(target)}`),
      );
    },
    [GRID_MAKERS, rules, inDialog ? BEHIND : ALIKE] as const,
  );
}

/** In the light, then whether all can be read in the dark: by the page's own colour scheme, which all follow. */
export async function axeInBothLights(
  page: Page,
  where: string,
  options?: { inDialog?: boolean },
): Promise<void> {
  const setScheme = (scheme: 'light' | 'dark') =>
    page.evaluate((each) => document.documentElement.style.setProperty('color-scheme', each), scheme);
  expect(await axeViolations(page, undefined, options), where).toEqual([]);
  await setScheme('dark');
  // Colours go over, they do not jump; and not before the next frame.
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  await page.waitForFunction(() => document.getAnimations().length === 0);
  expect(await axeViolations(page, ['color-contrast'], options), `${where}, dark`).toEqual([]);
  await setScheme('light');
}
