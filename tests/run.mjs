// `npm test`: finds a Chromium for the browser tests, or installs Debian's, then runs every test.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { BUILT_PAGES, buildPages } from './browser/harness/build-pages.mjs';
import { findChromium } from './browser/harness/find-chromium.mjs';

const run = (command, args) => spawnSync(command, args, { stdio: 'inherit' });
const has = (command) => spawnSync('sh', ['-c', `command -v ${command}`]).status === 0;

/** Debian's chromium, where this user may install packages. */
function installChromium() {
  if (process.platform !== 'linux' || !has('apt-get')) return false;
  const asRoot = process.getuid?.() === 0 ? [] : has('sudo') ? ['sudo', '-n'] : null;
  if (asRoot === null) return false;
  const apt = (...args) => {
    const [command, ...rest] = [...asRoot, 'apt-get', ...args];
    return run(command, rest).status === 0;
  };
  console.log('No Chromium found: installing Debian’s package “chromium”.');
  return (
    apt('update', '-q') &&
    apt('install', '-q', '-y', '--no-install-recommends', 'chromium', 'fonts-dejavu-core')
  );
}

if (!findChromium() && !(installChromium() && findChromium())) {
  console.error(
    'The browser tests need a Chromium, and none could be found or installed.\n' +
      'Install Chromium or Chrome, or say where one is: CROFTSHEET_CHROMIUM=/path/to/chromium npm test',
  );
  process.exit(1);
}

const asked = process.argv.slice(2).filter((each) => !each.startsWith('-'));
if (asked.length === 0 || asked.some((each) => each.includes('browser'))) {
  await buildPages();
  process.env.CROFTSHEET_PAGES = BUILT_PAGES;
}

const vitest = fileURLToPath(new URL('../node_modules/vitest/vitest.mjs', import.meta.url));
const result = run(process.execPath, [vitest, 'run', ...process.argv.slice(2)]);
process.exit(result.status ?? 1);
