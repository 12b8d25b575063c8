import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { setTimeout as rest } from 'node:timers/promises';
import type { Home } from './home.js';

const STARTS_WITHIN = 30_000;

/** The display, in pixels: its lower half has room for the highest window. */
export const SCREEN = { width: 1600, height: 2800 } as const;

export async function ended(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const exit = once(child, 'exit');
  child.kill();
  await exit;
}

/** What a process has started, and what that has, as far as it still runs. */
function startedBy(pid: number): number[] {
  try {
    const children = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').trim().split(' ');
    return children
      .filter(Boolean)
      .map(Number)
      .flatMap((each) => [each, ...startedBy(each)]);
  } catch {
    return [];
  }
}

/** Ends a process that may not answer any more, with all that it has started. */
export async function broken(child: ChildProcess): Promise<void> {
  for (const each of child.pid === undefined ? [] : startedBy(child.pid))
    try {
      process.kill(each, 'SIGKILL');
    } catch {
      // It ended by itself.
    }
  child.kill('SIGKILL');
  await ended(child);
}

/** A display in memory, under a number that is free. */
export async function startDisplay(command: string): Promise<{ name: string; process: ChildProcess }> {
  const child = spawn(
    command,
    [
      '-displayfd',
      '3',
      '-screen',
      '0',
      `${SCREEN.width}x${SCREEN.height}x24`,
      '-nolisten',
      'tcp',
      '-noreset',
    ],
    { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] },
  );
  const [number] = await Promise.race([
    once(child.stdio[3]!, 'data'),
    once(child, 'exit').then(() => Promise.reject(new Error('No display could be started.'))),
  ]);
  return { name: `:${String(number).trim()}`, process: child };
}

const freePort = (): Promise<number> =>
  new Promise((done) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => done(typeof address === 'object' && address ? address.port : 0));
    });
  });

/** A driver: it holds one session, which is one browser with storage of its own. */
export async function startDriver(
  command: string,
  display: string,
  home: Home,
): Promise<{ url: string; process: ChildProcess }> {
  const port = await freePort();
  const child = spawn(command, [`--port=${port}`], {
    stdio: 'ignore',
    env: {
      ...process.env,
      ...home.env,
      DISPLAY: display,
      GDK_BACKEND: 'x11',
      NO_AT_BRIDGE: '1',
      WEBKIT_DISABLE_COMPOSITING_MODE: '1',
      WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1',
    },
  });
  const url = `http://127.0.0.1:${port}`;
  const until = Date.now() + STARTS_WITHIN;
  while (Date.now() < until) {
    const up = await fetch(`${url}/status`).catch(() => null);
    if (up?.ok) return { url, process: child };
    await rest(50);
  }
  await ended(child);
  throw new Error('WebKitWebDriver did not start.');
}
