import { readFileSync } from 'node:fs';
import { setTimeout as rest } from 'node:timers/promises';
import type { BrowserContext, Locator, Page } from 'playwright-core';
import { skipForWantOf } from '../lacking.js';
import { held, pressed, released, typed } from './keys.js';
import { withWhatIsLacking } from './lacking-here.js';
import { WebkitLocator } from './locator.js';
import { byAttribute, byLabel, byRole, byText } from './selectors.js';
import type { PointerAction, Session } from './session.js';

type Handler = (what: never) => void;
type Source = ((...args: never[]) => unknown) | string;

const BUTTONS = { left: 0, middle: 1, right: 2 } as const;

/** One window of WebKitGTK, with as much of playwright’s `Page` as the tests use. */
export class WebkitPage {
  constructor(
    private readonly session: Session,
    readonly handle: string,
    readonly context: () => BrowserContext,
  ) {}

  timeout = 30_000;
  private at = { x: 0, y: 0 };
  private readonly handlers: { readonly event: string; readonly handler: Handler }[] = [];

  call<T>(source: Source, ...args: unknown[]): Promise<T> {
    return this.session.call<T>(this.handle, String(source), ...args);
  }

  evaluate<T>(fn: Source, arg?: unknown): Promise<T> {
    if (typeof fn === 'string') return this.call(`() => (${fn})`);
    return this.call(`(finder, arg) => (${fn})(arg)`, arg);
  }

  async waitForFunction(fn: Source, arg?: unknown, options: { timeout?: number } = {}): Promise<void> {
    const asked = typeof fn === 'string' ? `() => (${fn})` : String(fn);
    const until = Date.now() + (options.timeout ?? this.timeout);
    for (;;) {
      const found = await this.call<boolean>(
        `async (finder, arg) => {
          const until = Date.now() + 1000;
          while (Date.now() < until) {
            if (await (${asked})(arg)) return true;
            await new Promise((done) => setTimeout(done, 20));
          }
          return false;
        }`,
        arg,
      );
      if (found) return;
      if (Date.now() > until) throw new Error(`Did not come to be: ${asked}`);
    }
  }

  async goto(url: string): Promise<void> {
    await this.tellErrors();
    await this.session.in(this.handle, (driver) => driver.get(url));
  }

  async reload(): Promise<void> {
    await this.tellErrors();
    await this.session.in(this.handle, (driver) => driver.navigate().refresh());
  }

  async goBack(): Promise<void> {
    await this.session.in(this.handle, (driver) => driver.navigate().back());
  }

  title = (): Promise<string> => this.evaluate('document.title');
  setDefaultTimeout(timeout: number): void {
    this.timeout = timeout;
  }
  waitForTimeout = (ms: number): Promise<void> => rest(ms);

  /** A window has a frame around its page, whose size is found by trying. */
  async setViewportSize({ width, height }: { width: number; height: number }): Promise<void> {
    const inner = (): Promise<{ width: number; height: number }> =>
      this.evaluate('({ width: innerWidth, height: innerHeight })');
    const set = (size: { width: number; height: number }) =>
      this.session.in(this.handle, (driver) =>
        driver
          .manage()
          .window()
          .setRect({ x: 0, y: 0, ...size }),
      );
    let outer = { width, height };
    for (let tries = 0; tries < 20; tries += 1) {
      await set(outer);
      await rest(50 * tries);
      const now = await inner();
      if (now.width === width && now.height === height) return;
      if (tries % 4 === 3)
        outer = { width: outer.width + width - now.width, height: outer.height + height - now.height };
    }
    skipForWantOf(`a page of ${width} × ${height}`);
  }

  async screenshot(options: { path?: string } = {}): Promise<Buffer> {
    const base64 = await this.session.in(this.handle, (driver) => driver.takeScreenshot());
    const bytes = Buffer.from(base64, 'base64');
    if (options.path) {
      const { writeFile } = await import('node:fs/promises');
      await writeFile(options.path, bytes);
    }
    return bytes;
  }

  async addScriptTag({ path }: { path?: string }): Promise<void> {
    if (!path) skipForWantOf('page.addScriptTag without a path');
    const source = readFileSync(path, 'utf8');
    await this.session.in(this.handle, (driver) => driver.executeScript(`(0, eval)(arguments[0])`, source));
  }

  on(event: string, handler: Handler): void {
    if (event !== 'pageerror' && event !== 'console') skipForWantOf(`page.on('${event}')`);
    this.handlers.push({ event, handler });
  }

  /** What went wrong on the page since it was last asked, told to those who listen. */
  async tellErrors(): Promise<void> {
    const errors = await this.evaluate<string[]>('(window.__croftsheetErrors || []).splice(0)').catch(
      () => [],
    );
    for (const text of errors)
      for (const { event, handler } of this.handlers)
        if (event === 'pageerror') handler(new Error(text) as never);
  }

  readonly keyboard = withWhatIsLacking<Page['keyboard']>('keyboard', {
    press: (chord: string) => this.session.act(this.handle, pressed(chord)),
    type: (text: string) => this.session.act(this.handle, typed(text)),
    down: (key: string) => this.session.act(this.handle, held([key])),
    up: (key: string) => this.session.act(this.handle, released([key])),
  });

  readonly mouse = withWhatIsLacking<Page['mouse']>('mouse', {
    move: (x: number, y: number) => this.point(x, y, []),
    down: () => this.point(this.at.x, this.at.y, [{ type: 'pointerDown', button: 0 }]),
    up: () => this.point(this.at.x, this.at.y, [{ type: 'pointerUp', button: 0 }]),
    click: (x: number, y: number) => this.clickAt(x, y),
    dblclick: (x: number, y: number) => this.clickAt(x, y, { clickCount: 2 }),
  });

  private async point(x: number, y: number, then: PointerAction[]): Promise<void> {
    this.at = { x, y };
    const move: PointerAction = {
      type: 'pointerMove',
      x: Math.round(x),
      y: Math.round(y),
      origin: 'viewport',
      duration: 0,
    };
    await this.session.act(this.handle, [], [move, ...then]);
  }

  hoverAt = (x: number, y: number): Promise<void> => this.point(x, y, []);

  async clickAt(
    x: number,
    y: number,
    options: {
      button?: 'left' | 'right' | 'middle';
      modifiers?: readonly string[];
      clickCount?: number;
    } = {},
  ): Promise<void> {
    const { modifiers = [], clickCount = 1 } = options;
    const button = BUTTONS[options.button ?? 'left'];
    const once: PointerAction[] = [
      { type: 'pointerDown', button },
      { type: 'pointerUp', button },
    ];
    if (modifiers.length > 0) await this.session.act(this.handle, held(modifiers));
    await this.point(x, y, Array.from({ length: clickCount }, () => once).flat());
    if (modifiers.length > 0) await this.session.act(this.handle, released(modifiers));
  }

  locator(selector: string, options?: Parameters<Page['locator']>[1]): Locator {
    return WebkitLocator.of(this, selector).filter(options);
  }
  getByRole: Page['getByRole'] = (role, options) => WebkitLocator.of(this, byRole(role, options));
  getByText: Page['getByText'] = (text, options) => WebkitLocator.of(this, byText(text, options?.exact));
  getByLabel: Page['getByLabel'] = (text, options) => WebkitLocator.of(this, byLabel(text, options?.exact));
  getByPlaceholder: Page['getByPlaceholder'] = (text, options) =>
    WebkitLocator.of(this, byAttribute('placeholder', text, options?.exact));
  getByTitle: Page['getByTitle'] = (text, options) =>
    WebkitLocator.of(this, byAttribute('title', text, options?.exact));
}
