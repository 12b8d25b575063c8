import type { Page } from 'playwright-core';

type Printing = NonNullable<Parameters<Page['pdf']>[0]>;

/** Centimetres. */
const PAPERS: Readonly<Record<string, readonly [width: number, height: number]>> = {
  a4: [21, 29.7],
  letter: [21.59, 27.94],
};

/**
 * Playwright tells a browser that is driven by WebDriver BiDi the sizes of paper and margins in inches, and the
 * browser takes them for centimetres: so it is told as many inches as there are to be centimetres.
 */
export function onRealPaper(pdf: Page['pdf']): Page['pdf'] {
  return ({ format = 'Letter', margin = {}, ...rest } = {}) => {
    const [width, height] = PAPERS[format.toLowerCase()] ?? PAPERS.letter!;
    const margins = Object.entries(margin).map(([side, size]) => [side, `${centimetres(size)}in`]);
    const asked: Printing = {
      ...rest,
      width: `${width}in`,
      height: `${height}in`,
      margin: Object.fromEntries(margins),
    };
    return pdf(asked);
  };
}

const centimetres = (size: string | number): number =>
  String(size).endsWith('mm') ? Number.parseFloat(String(size)) / 10 : Number.parseFloat(String(size));
