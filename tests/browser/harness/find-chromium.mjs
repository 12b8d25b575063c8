import { accessSync, constants } from 'node:fs';

// First the shell without windows: the same engine, and a third less work for the machine.
const USUAL = [
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

const runs = (path) => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

/** What to tell a person whose machine has no Chromium. */
export const NO_CHROMIUM =
  'The browser tests need a Chromium, and none was found. Install one (on Debian or Ubuntu: ' +
  '`sudo apt-get install chromium-headless-shell`, or `chromium`), or say where one is: CROFTSHEET_CHROMIUM=/path/to/chromium npm test';

/**
 * Path of a Chromium, or null. `CROFTSHEET_CHROMIUM` comes before the usual places. With `whole` the browser that
 * people use is preferred to the shell without windows.
 */
export function findChromium({ whole = false } = {}) {
  const asked = process.env.CROFTSHEET_CHROMIUM;
  if (asked) return runs(asked) ? asked : null;
  return (whole && USUAL.find((path) => !isShell(path) && runs(path))) || (USUAL.find(runs) ?? null);
}

/** Whether it is the shell, which has no windows and so does less work for the same tests. */
export const isShell = (path) => Boolean(path?.endsWith('headless-shell'));
