import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { runInNewContext } from 'node:vm';

/** Where a page keeps what finds elements in it. */
export const IN_PAGE = '__croftsheetFinder';

/**
 * What playwright itself puts into pages to find elements and to look at their states, so that a locator means
 * the same in every engine. It stands as one string in playwright's bundle; the exact version is pinned.
 */
export function finderSource(): string {
  const bundle = readFileSync(
    createRequire(import.meta.url).resolve('playwright-core/lib/coreBundle'),
    'utf8',
  );
  const from = bundle.indexOf('src/generated/injectedScriptSource.ts');
  const literal = /= ('(?:[^'\\]|\\.)*')/s.exec(bundle.slice(from));
  if (from < 0 || !literal) throw new Error('This version of playwright-core keeps its finder elsewhere.');
  const source = runInNewContext(literal[1]!) as string;
  const options = {
    isUnderTest: false,
    sdkLanguage: 'javascript',
    testIdAttributeName: 'data-testid',
    stableRafCount: 1,
    browserName: 'webkit',
    shouldPrependErrorPrefix: false,
    isUtilityWorld: false,
    customEngines: [],
  };
  return `if (!window.${IN_PAGE}) {
    const module = {};
    ${source}
    const finder = new (module.exports.InjectedScript())(globalThis, ${JSON.stringify(options)});
    Object.defineProperty(window, '${IN_PAGE}', { value: finder });
  }`;
}
