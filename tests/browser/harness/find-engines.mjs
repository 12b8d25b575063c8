// Where the engines of the browser tests are on this machine, and what Debian calls their packages.
import { spawnSync } from 'node:child_process';
import { accessSync, constants, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { findChromium } from './find-chromium.mjs';

export const ENGINES = ['chromium', 'firefox', 'webkit'];

/** What a person installs to have an engine. The first that can be installed is enough. */
export const PACKAGES = {
  chromium: [['chromium-headless-shell'], ['chromium']],
  firefox: [['firefox-esr']],
  webkit: [['webkit2gtk-driver', 'xvfb', 'xauth']],
};

const FIREFOX = [
  '/usr/bin/firefox-esr',
  '/usr/bin/firefox',
  '/snap/bin/firefox',
  '/Applications/Firefox.app/Contents/MacOS/firefox',
  'C:\\Program Files\\Mozilla Firefox\\firefox.exe',
];

const runs = (path) => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

const inPath = (name) => {
  const found = spawnSync('sh', ['-c', `command -v ${name}`], { encoding: 'utf8' });
  return found.status === 0 ? found.stdout.trim() : null;
};

/** Path of a Firefox, or null. `CROFTSHEET_FIREFOX` comes before the usual places. */
export function findFirefox() {
  const asked = process.env.CROFTSHEET_FIREFOX;
  if (asked) return runs(asked) ? asked : null;
  return FIREFOX.find(runs) ?? null;
}

/** Below the libraries of this machine's kind: /usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser. */
function miniBrowser() {
  for (const folder of ['/usr/lib', '/usr/libexec', '/usr/lib64'])
    for (const inner of ['', ...namesIn(folder).filter((name) => name.endsWith('-linux-gnu'))])
      for (const version of namesIn(join(folder, inner)).filter((name) => name.startsWith('webkit')))
        if (runs(join(folder, inner, version, 'MiniBrowser')))
          return join(folder, inner, version, 'MiniBrowser');
  return null;
}

function namesIn(folder) {
  try {
    return readdirSync(folder).sort().reverse();
  } catch {
    return [];
  }
}

/** WebKitGTK: its driver, its small browser, and a display or what makes one; or null. */
export function findWebkit() {
  if (process.platform !== 'linux') return null;
  const driver = inPath('WebKitWebDriver');
  const browser = miniBrowser();
  const display = inPath('Xvfb');
  return driver && browser && display ? { driver, browser, display } : null;
}

/** Whether an engine can be driven here. */
export const hasEngine = (engine) =>
  ({ chromium: findChromium, firefox: findFirefox, webkit: findWebkit })[engine]() !== null;
