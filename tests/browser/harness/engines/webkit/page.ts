import { readFileSync } from 'node:fs';
import { setTimeout as rest } from 'node:timers/promises';
import type {
  BrowserContext,
  BrowserContextOptions,
  FrameLocator,
  Locator,
  Page,
  Request,
} from 'playwright-core';
import { skipForWantOf } from '../lacking.js';
import { frameLocator } from './frame.js';
import { held, pressed, released, typed } from './keys.js';
import { withWhatIsLacking } from './lacking-here.js';
import { type Clicked, type Home, WebkitLocator } from './locator.js';
import { askServer, responseOf } from './requests.js';
import type { Pattern, RouteHandler } from './route.js';
import { byAttribute, byLabel, byRole, byText } from './selectors.js';
import type { PointerAction, Session } from './session.js';
import { makeSize, type Size } from './viewport.js';

type Handler = (what: never) => void;
type Source = ((...args: never[]) => unknown) | string;

const BUTTONS = { left: 0, middle: 1, right: 2 } as const;

/** One window of WebKitGTK, with as much of playwright’s `Page` as the tests use. */
export class WebkitPage implements Home {
  constructor(
    private readonly session: Session,
    readonly handle: string,
    readonly context: () => BrowserContext,
    private readonly options: BrowserContextOptions,
  ) {}

  readonly isFrame = false;
  page = (): Page => withWhatIsLacking<Page>('page', this);
  timeout = 30_000;
  private isOver = false;
  private at = { x: 0, y: 0 };
  private readonly handlers: { readonly event: string; readonly handler: Handler }[] = [];

  call<T>(source: Source, ...args: unknown[]): Promise<T> {
    return this.session.call<T>(this.handle, String(source), ...args);
  }

  evaluate<T>(fn: Source, arg?: unknown): Promise<T> {
    if (typeof fn === 'string') return this.call(`() => (${fn.trim().replace(/;+$/, '')})`);
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
    await this.session.visit(this.handle, (driver) => driver.get(url));
  }

  async reload(): Promise<void> {
    await this.tellErrors();
    await this.session.visit(this.handle, (driver) => driver.navigate().refresh());
  }

  async goBack(): Promise<void> {
    await this.tellErrors();
    await this.session.visit(this.handle, (driver) => driver.navigate().back());
  }

  url = (): string => this.session.addressOf(this.handle);
  isClosed = (): boolean => this.isOver || this.session.isStuck;
  async close(): Promise<void> {
    await this.tellErrors();
    this.isOver = true;
    await this.session.in(this.handle, (driver) => driver.close());
  }

  async setContent(html: string): Promise<void> {
    await this.evaluate((text: string) => {
      document.open();
      document.write(text);
      document.close();
    }, html);
  }

  title = (): Promise<string> => this.evaluate('document.title');
  setDefaultTimeout(timeout: number): void {
    this.timeout = timeout;
  }
  waitForTimeout = (ms: number): Promise<void> => rest(ms);

  setViewportSize = (size: Size): Promise<void> => makeSize(this, this.session, size);

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

  async addStyleTag({ content }: { content?: string }): Promise<void> {
    if (content === undefined) skipForWantOf('page.addStyleTag without its content');
    await this.evaluate((text: string) => {
      document.head.append(Object.assign(document.createElement('style'), { textContent: text }));
    }, content);
  }

  /** A page prefers what its context was started with. */
  async emulateMedia(asked: Parameters<Page['emulateMedia']>[0] = {}): Promise<void> {
    const is = { media: 'screen', colorScheme: 'light', reducedMotion: 'no-preference', ...this.options };
    for (const [name, value] of Object.entries(asked))
      if (value !== (is as Record<string, unknown>)[name])
        skipForWantOf(`a page that goes over to ${name} ${String(value)}`);
  }

  // What is asked of servers is heard of for a context: its pages are not told apart.
  route = async (pattern: Pattern, handler: RouteHandler): Promise<void> =>
    this.session.network.route(pattern, handler);
  unroute = async (pattern: Pattern): Promise<void> => this.session.network.unroute(pattern);
  async addInitScript(script: Source | { content?: string }, arg?: unknown): Promise<void> {
    const source =
      typeof script === 'function'
        ? `(${script})(${JSON.stringify(arg)})`
        : typeof script === 'string'
          ? script
          : (script.content ?? skipForWantOf('page.addInitScript with a path'));
    this.session.network.addInitScript(source);
  }
  readonly request = withWhatIsLacking<Page['request']>('page.request', {
    get: async (url: string) =>
      responseOf(url, await askServer({ url, method: 'GET', headers: {}, body: Buffer.alloc(0) })),
  });

  async waitForLoadState(state: 'load' | 'domcontentloaded' | 'networkidle' = 'load'): Promise<void> {
    await this.waitForFunction(`document.readyState === 'complete'`);
    const until = Date.now() + this.timeout;
    while (state === 'networkidle' && !this.session.network.isIdle) {
      if (Date.now() > until) throw new Error('The page went on asking for files.');
      await rest(50);
    }
  }

  async waitForEvent(event: string, options: { timeout?: number } = {}): Promise<unknown> {
    if (event !== 'download') skipForWantOf(`page.waitForEvent('${event}')`);
    return this.session.downloads.next(options.timeout ?? this.timeout);
  }

  on(event: string, handler: Handler): void {
    if (event === 'request') this.session.network.onRequest(handler as (request: Request) => void);
    else if (event === 'pageerror' || event === 'console') this.handlers.push({ event, handler });
    else skipForWantOf(`page.on('${event}')`);
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

  async clickAt(x: number, y: number, options: Clicked = {}): Promise<void> {
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

  frameLocator = (css: string): FrameLocator => frameLocator(this, this.session, css);
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
