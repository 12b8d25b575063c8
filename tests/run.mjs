// `npm test`: every test, with the browser tests in Chromium, then the core paths in Firefox and WebKitGTK (not with
// CROFTSHEET_ENGINES=chromium). Browsers are found; a Chromium is installed where there is none, the others where
// nobody needs to be asked. That one of the others is missing fails nothing.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { BUILT_PAGES, buildPages } from './browser/harness/build-pages.mjs';
import { findChromium, isShell } from './browser/harness/find-chromium.mjs';
import { hasEngine } from './browser/harness/find-engines.mjs';
import { sayMissing, testIn } from './engines.mjs';
import { installEngine, mayInstallFreely } from './install-engines.mjs';

const OTHERS = ['firefox', 'webkit'];

const asked = process.argv.slice(2).filter((each) => !each.startsWith('-'));
const needsBrowser = asked.length === 0 || asked.some((each) => each.includes('browser'));

// The shell does a third less work for the same tests; any Chromium will do.
const wanted = needsBrowser && !process.env.CROFTSHEET_CHROMIUM && !isShell(findChromium());
if (wanted && (mayInstallFreely() || !findChromium())) installEngine('chromium');
if (!findChromium()) {
  console.error(
    'The browser tests need a Chromium, and none could be found or installed.\n' +
      'Install Chromium or Chrome, or say where one is: CROFTSHEET_CHROMIUM=/path/to/chromium npm test',
  );
  process.exit(1);
}

if (needsBrowser) {
  await buildPages();
  process.env.CROFTSHEET_PAGES = BUILT_PAGES;
}

const vitest = fileURLToPath(new URL('../node_modules/vitest/vitest.mjs', import.meta.url));
const all = spawnSync(process.execPath, [vitest, 'run', ...process.argv.slice(2)], { stdio: 'inherit' });
let passed = all.status === 0;

if (asked.length === 0 && process.env.CROFTSHEET_ENGINES !== 'chromium') {
  for (const engine of OTHERS) if (!hasEngine(engine) && mayInstallFreely()) installEngine(engine);
  const found = OTHERS.filter(hasEngine);
  const results = await Promise.all(found.map((engine) => testIn(engine, ['core-paths'])));
  for (const engine of OTHERS) if (!found.includes(engine)) sayMissing(engine);
  passed &&= results.every(Boolean);
}
process.exit(passed ? 0 : 1);
