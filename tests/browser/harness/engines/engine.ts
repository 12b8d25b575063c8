import type { Browser } from 'playwright-core';
import { launchChromium } from './chromium.js';
import { launchFirefox } from './firefox.js';

export type Engine = 'chromium' | 'firefox' | 'webkit';

const asked = process.env.CROFTSHEET_ENGINE ?? 'chromium';
if (asked !== 'chromium' && asked !== 'firefox' && asked !== 'webkit')
  throw new Error(`CROFTSHEET_ENGINE is “${asked}”: chromium, firefox and webkit are known.`);

/** The engine that this run of the browser tests is about: Chromium where `CROFTSHEET_ENGINE` names no other. */
export const ENGINE: Engine = asked;

/** Starts a browser of that engine. WebKitGTK is driven otherwise, so what drives it is loaded only for it. */
export async function launchEngine(): Promise<Browser> {
  if (ENGINE === 'firefox') return launchFirefox();
  if (ENGINE === 'chromium') return launchChromium();
  const { launchWebkit } = await import('./webkit/browser.js');
  return launchWebkit();
}
