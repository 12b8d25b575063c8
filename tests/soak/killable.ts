import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as rest } from 'node:timers/promises';
import { type Browser, chromium, type Page } from 'playwright-core';
import { findChromium, NO_CHROMIUM } from '../browser/harness/find-chromium.mjs';

/** A browser of its own, with a profile that outlives it, so that it can be killed as a power cut would. */
export interface Running {
  readonly page: Page;
  readonly browser: Browser;
  readonly process: ChildProcess;
}

const STARTS_WITHIN = 60_000;
const ENDS_WITHIN = 30_000;

export async function startBrowser(profile: string): Promise<Running> {
  // The whole browser, as people use it: what is proved here is how its storage takes a kill.
  const executable = findChromium({ whole: true });
  if (!executable) throw new Error(NO_CHROMIUM);
  const portFile = join(profile, 'DevToolsActivePort');
  rmSync(portFile, { force: true });
  const flags = [
    '--headless=new',
    '--no-sandbox',
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--remote-debugging-port=0',
    `--user-data-dir=${profile}`,
    'about:blank',
  ];
  // Of a group of its own: the browser is many processes, and all must end at once.
  const process = spawn(executable, flags, { stdio: 'ignore', detached: true });
  const until = Date.now() + STARTS_WITHIN;
  while (!(existsSync(portFile) && readFileSync(portFile, 'utf8').includes('\n'))) {
    if (Date.now() > until) throw new Error('The browser did not start.');
    await rest(25);
  }
  const [port] = readFileSync(portFile, 'utf8').split('\n');
  const browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
  const page = await browser.contexts()[0]!.newPage();
  return { page, browser, process };
}

/** False when no process of a group is left. */
function isAlive(group: number): boolean {
  try {
    return process.kill(-group, 0);
  } catch {
    return false;
  }
}

/**
 * Ends all of a browser at once: the process that was started here, with the group that it leads. Resolves when
 * none of them is left: what was started may be a script, gone before the browser that still holds the profile.
 */
export async function kill({ process: child, browser }: Running): Promise<void> {
  const ended = child.exitCode === null ? new Promise((done) => child.once('exit', done)) : undefined;
  if (child.pid !== undefined && child.exitCode === null) process.kill(-child.pid, 'SIGKILL');
  await ended;
  const until = Date.now() + ENDS_WITHIN;
  while (child.pid !== undefined && isAlive(child.pid) && Date.now() < until) await rest(10);
  await browser.close().catch(() => {});
}
