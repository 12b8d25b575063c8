import type { ChildProcess } from 'node:child_process';
import { Builder, type WebDriver } from 'selenium-webdriver';
import { Command, Name } from 'selenium-webdriver/lib/command.js';
import type { Installed } from './browser.js';
import { finderSource, IN_PAGE } from './injected.js';
import type { KeyAction } from './keys.js';
import { passing } from './passing.js';
import { ended, startDriver } from './started.js';

const { encode, decode } = passing();

export interface PointerAction {
  readonly type: 'pointerMove' | 'pointerDown' | 'pointerUp' | 'pause';
  readonly duration?: number;
  readonly x?: number;
  readonly y?: number;
  readonly button?: number;
  readonly origin?: 'viewport';
}

type Answer = { readonly ok: unknown } | { readonly failed: string };

/** One browser with storage of its own, and its windows: what playwright calls a context. */
export class Session {
  private constructor(
    readonly driver: WebDriver,
    private readonly process: ChildProcess,
  ) {}

  /** The driver speaks of one window at a time, so what is asked is done one after the other. */
  private turn: Promise<unknown> = Promise.resolve();
  private current = '';
  private source = '';

  static async start(installed: Installed, display: string): Promise<Session> {
    const { url, process } = await startDriver(installed.driver, display);
    const builder = new Builder().usingServer(url).withCapabilities({
      browserName: 'MiniBrowser',
      'webkitgtk:browserOptions': { binary: installed.browser, args: ['--automation'] },
    });
    const driver = await builder.build();
    await driver.manage().setTimeouts({ script: 120_000, pageLoad: 120_000, implicit: 0 });
    return new Session(driver, process);
  }

  /** Does something in a window, when it is its turn. */
  in<T>(window: string, what: (driver: WebDriver) => Promise<T>): Promise<T> {
    const done = this.turn.then(async () => {
      if (this.current !== window && window !== '') await this.driver.switchTo().window(window);
      this.current = window;
      return what(this.driver);
    });
    this.turn = done.catch(() => undefined);
    return done;
  }

  /** Calls a function in a window's page. Its first argument finds elements, the others are what is passed. */
  async call<T>(window: string, source: string, ...args: unknown[]): Promise<T> {
    const script = `const done = arguments[arguments.length - 1];
      if (!window.${IN_PAGE}) return done(null);
      const { encode, decode } = (${passing})();
      (async () => (${source})(window.${IN_PAGE}, ...decode(JSON.parse(arguments[0]))))().then(
        (value) => done(JSON.stringify({ ok: encode(value) })),
        (error) => done(JSON.stringify({ failed: String(error && error.message || error) + '\\n' + (error && error.stack || '') })),
      );`;
    const answer = await this.in(window, async (driver) => {
      const call = () => driver.executeAsyncScript<string | null>(script, JSON.stringify(encode(args)));
      let answer = await call();
      if (answer === null) {
        this.source ||= finderSource();
        await driver.executeScript(this.source);
        answer = await call();
      }
      return answer ?? '{"failed":"The page went away."}';
    });
    const said = JSON.parse(answer) as Answer;
    if ('failed' in said) throw new Error(said.failed);
    return decode(said.ok) as T;
  }

  /** Keys and a mouse, used step by step. */
  act(window: string, keys: readonly KeyAction[], pointer: readonly PointerAction[] = []): Promise<void> {
    const actions = [
      ...(pointer.length > 0
        ? [{ type: 'pointer', id: 'mouse', parameters: { pointerType: 'mouse' }, actions: pointer }]
        : []),
      ...(keys.length > 0 ? [{ type: 'key', id: 'keys', actions: keys }] : []),
    ];
    return this.in(window, async (driver) => {
      await driver.execute(new Command(Name.ACTIONS).setParameter('actions', actions));
    });
  }

  async close(): Promise<void> {
    await this.turn;
    await this.driver.quit().catch(() => undefined);
    await ended(this.process);
  }
}
