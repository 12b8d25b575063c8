import type { ChildProcess } from 'node:child_process';
import { setTimeout as rest } from 'node:timers/promises';
import type { BrowserContextOptions } from 'playwright-core';
import { Builder, By, type WebDriver } from 'selenium-webdriver';
import { Command, Name } from 'selenium-webdriver/lib/command.js';
import type { Installed } from './browser.js';
import { Downloads } from './downloads.js';
import { type Home, makeHome } from './home.js';
import { finderSource } from './injected.js';
import type { KeyAction } from './keys.js';
import { Network } from './network.js';
import { passing } from './passing.js';
import { GO_ON, GONE, startScript, WAITING } from './script.js';
import { broken, startDriver } from './started.js';

const { encode, decode } = passing();

export interface PointerAction {
  readonly type: 'pointerMove' | 'pointerDown' | 'pointerUp' | 'pause';
  readonly duration?: number;
  readonly x?: number;
  readonly y?: number;
  readonly button?: number;
  readonly origin?: 'viewport';
}

type Answer = ({ readonly ok: unknown } | { readonly failed: string }) & { readonly at?: string };

/** Beyond this a page does not answer any more, in milliseconds. */
const ANSWERS_WITHIN = 120_000;
/** So long a browser may take to end before it is ended. */
const ENDS_WITHIN = 5_000;

/** As in the other engines, a page may read the clipboard unasked. */
const argumentsFor = ({ javaScriptEnabled }: BrowserContextOptions): string[] => [
  '--automation',
  '--javascript-can-access-clipboard=true',
  ...(javaScriptEnabled === false ? ['--enable-javascript-markup=false'] : []),
];

/** One browser with storage of its own, and its windows: what playwright calls a context. */
export class Session {
  readonly downloads: Downloads;
  private constructor(
    readonly driver: WebDriver,
    private readonly process: ChildProcess,
    readonly network: Network,
    private readonly home: Home,
  ) {
    this.downloads = new Downloads(home.downloads);
    this.gone = new Promise((_, failed) => {
      process.once('exit', () => {
        // Where it was ended, nobody waits any more for what was asked before.
        if (!this.isOver) failed(new Error('The browser is gone.'));
        this.isOver = true;
      });
    });
    this.gone.catch(() => undefined);
  }

  /** The driver speaks of one window at a time, so what is asked is done one after the other. */
  private turn: Promise<unknown> = Promise.resolve();
  private waiting = 0;
  private current = '';
  private source = '';
  private asked = 0;
  private isOver = false;
  private readonly addresses = new Map<string, string>();
  private readonly gone: Promise<never>;

  static async start(
    installed: Installed,
    display: string,
    options: BrowserContextOptions,
  ): Promise<Session> {
    const home = makeHome(options);
    const network = await Network.start();
    const { url, process } = await startDriver(installed.driver, display, home);
    const builder = new Builder().usingServer(url).withCapabilities({
      browserName: 'MiniBrowser',
      proxy: { proxyType: 'manual', httpProxy: network.address, sslProxy: network.address },
      'webkitgtk:browserOptions': { binary: installed.browser, args: argumentsFor(options) },
    });
    const driver = await builder.build();
    await driver.manage().setTimeouts({ script: ANSWERS_WITHIN, pageLoad: ANSWERS_WITHIN, implicit: 0 });
    return new Session(driver, process, network, home);
  }

  /** Whether it has ended, or still waits for an answer: at a time when nothing is asked, it hangs. */
  get isStuck(): boolean {
    return this.isOver || this.waiting > 0;
  }

  /** Where a window was when it was last asked something. */
  addressOf = (window: string): string => this.addresses.get(window) ?? 'about:blank';

  /** Does something in a window, when it is its turn. */
  in<T>(window: string, what: (driver: WebDriver) => Promise<T>): Promise<T> {
    this.waiting += 1;
    const done = this.turn.then(async () => {
      if (this.isOver) throw new Error('The browser is gone.');
      if (this.current !== window && window !== '') await this.driver.switchTo().window(window);
      this.current = window;
      return Promise.race([what(this.driver), this.gone]);
    });
    this.turn = done
      .catch(() => undefined)
      .finally(() => {
        this.waiting -= 1;
      });
    return done;
  }

  visit(window: string, go: (driver: WebDriver) => Promise<void>): Promise<void> {
    return this.in(window, async (driver) => {
      await go(driver);
      this.addresses.set(window, await driver.getCurrentUrl());
    });
  }

  call<T>(window: string, source: string, ...args: unknown[]): Promise<T> {
    return this.callIn({ window }, source, ...args);
  }

  /**
   * Calls a function in a window's page, or in a frame there that a CSS selector means. Its first argument finds
   * elements, the others are what is passed.
   */
  async callIn<T>(
    { window, frame }: { window: string; frame?: string },
    source: string,
    ...args: unknown[]
  ): Promise<T> {
    const id = String(++this.asked);
    let answer = await this.ask(window, frame, startScript(source), id, JSON.stringify(encode(args)));
    while (answer === WAITING) answer = await this.ask(window, frame, GO_ON, id);
    const said = JSON.parse(answer) as Answer;
    if (said.at !== undefined && frame === undefined) this.addresses.set(window, said.at);
    if ('failed' in said) throw new Error(said.failed);
    return decode(said.ok) as T;
  }

  /** Runs a script in a page, or in a frame there; where the page cannot find elements yet, once more. */
  private ask(
    window: string,
    frame: string | undefined,
    script: string,
    ...args: readonly string[]
  ): Promise<string> {
    const inPlace = async (driver: WebDriver): Promise<string> => {
      const run = () => driver.executeAsyncScript<string | null>(script, ...args);
      let answer = await run();
      if (answer === null) {
        this.source ||= finderSource();
        await driver.executeScript(this.source);
        answer = await run();
      }
      return answer ?? GONE;
    };
    return this.in(window, async (driver) => {
      if (frame === undefined) return inPlace(driver);
      await driver.switchTo().frame(await driver.findElement(By.css(frame)));
      return inPlace(driver).finally(() => driver.switchTo().defaultContent());
    });
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

  /** Ends the browser. One that does not answer any more is broken off, so that it holds up nothing that follows. */
  async close(): Promise<void> {
    const quit = this.turn.then(() => this.driver.quit()).catch(() => undefined);
    await Promise.race([quit, this.gone.catch(() => undefined), rest(ENDS_WITHIN)]);
    this.isOver = true;
    await broken(this.process);
    await this.network.close();
    this.home.remove();
  }
}
