import { type Browser, chromium } from 'playwright-core';
import { findChromium, NO_CHROMIUM } from '../find-chromium.mjs';

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export async function launchChromium(): Promise<Browser> {
  const executablePath = findChromium();
  if (!executablePath) throw new Error(NO_CHROMIUM);
  return chromium.launch({ executablePath, args: FLAGS });
}
