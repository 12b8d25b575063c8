import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import { withWhatIsLacking } from './lacking-here.js';
import { HIT, POINT_OF } from './point-of.js';
import { byLabel, byRole, byText, filtered, within } from './selectors.js';

type Source = (...args: never[]) => unknown;

interface Waiting {
  readonly timeout?: number;
}

export interface Clicked {
  readonly button?: 'left' | 'right' | 'middle';
  readonly modifiers?: readonly string[];
  readonly clickCount?: number;
}

/** Where elements are found: a page, or a frame in one. */
export interface Home {
  readonly timeout: number;
  readonly keyboard: Page['keyboard'];
  /** In a frame, only a press gives the keyboard to a field. */
  readonly isFrame: boolean;
  page(): Page;
  call<T>(source: string, ...args: unknown[]): Promise<T>;
  clickAt(x: number, y: number, options?: Clicked): Promise<void>;
  hoverAt(x: number, y: number): Promise<void>;
}

interface Clicking extends Waiting, Clicked {
  readonly position?: { readonly x: number; readonly y: number };
  readonly force?: boolean;
}

interface FileGiven {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

/** As much of playwright’s `Locator` as the tests use: it waits until what is asked can be done. */
export class WebkitLocator {
  private constructor(
    private readonly home: Home,
    readonly selector: string,
  ) {}

  static of(page: Home, selector: string): Locator {
    return withWhatIsLacking('locator', new WebkitLocator(page, selector));
  }

  page = (): Page => this.home.page();

  private then_(inner: string): Locator {
    return WebkitLocator.of(this.home, within(this.selector, inner));
  }

  locator(inner: string | WebkitLocator, options?: Parameters<Locator['filter']>[0]): Locator {
    const selector = typeof inner === 'string' ? inner : inner.selector;
    return this.then_(selector).filter(options);
  }
  filter = (options?: Parameters<Locator['filter']>[0]): Locator =>
    WebkitLocator.of(this.home, filtered(this.selector, options));
  getByRole = (...[role, options]: Parameters<Locator['getByRole']>): Locator =>
    this.then_(byRole(role, options));
  getByText = (...[text, options]: Parameters<Locator['getByText']>): Locator =>
    this.then_(byText(text, options?.exact));
  getByLabel = (...[text, options]: Parameters<Locator['getByLabel']>): Locator =>
    this.then_(byLabel(text, options?.exact));
  nth = (at: number): Locator => this.then_(`nth=${at}`);
  first = (): Locator => this.nth(0);
  last = (): Locator => this.nth(-1);
  and = (other: WebkitLocator): Locator => this.then_(`internal:and=${JSON.stringify(other.selector)}`);
  or = (other: WebkitLocator): Locator => this.then_(`internal:or=${JSON.stringify(other.selector)}`);

  /**
   * Does something with the one element meant, once there is one. What `source` answers is an object; with
   * `not` in it, it is tried again until the time is over.
   */
  private async with<T>(source: string, args: unknown[] = [], { timeout }: Waiting = {}): Promise<T> {
    const until = Date.now() + (timeout ?? this.home.timeout);
    for (;;) {
      const { done, not } = await this.home.call<{ done?: { is: T }; not?: string }>(
        `async (finder, selector, args) => {
          const until = Date.now() + 1000;
          let not = '';
          do {
            const found = finder.querySelectorAll(finder.parseSelector(selector), document);
            if (found.length > 1) throw finder.strictModeViolationError(finder.parseSelector(selector), found);
            if (found.length === 1) {
              const is = await (${source})(finder, found[0], ...args);
              if (!is || typeof is !== 'object' || !('not' in is)) return { done: { is } };
              not = is.not;
            } else not = 'there is no such element';
            await new Promise((done) => setTimeout(done, 30));
          } while (Date.now() < until);
          return { not };
        }`,
        this.selector,
        args,
      );
      if (done) return done.is;
      if (Date.now() > until) throw new Error(`${this.selector}: ${not}`);
    }
  }

  private all_<T>(source: string, ...args: unknown[]): Promise<T> {
    return this.home.call(
      `(finder, selector, ...args) =>
        (${source})(finder.querySelectorAll(finder.parseSelector(selector), document), ...args)`,
      this.selector,
      ...args,
    );
  }

  evaluate = <T>(fn: Source, arg?: unknown): Promise<T> =>
    this.with(`async (finder, element, arg) => (${fn})(element, arg)`, [arg]);
  evaluateAll = <T>(fn: Source, arg?: unknown): Promise<T> => this.all_(String(fn), arg);
  count = (): Promise<number> => this.all_('(found) => found.length');
  allTextContents = (): Promise<string[]> => this.all_('(found) => found.map((each) => each.textContent)');
  async all(): Promise<Locator[]> {
    return Array.from({ length: await this.count() }, (_, at) => this.nth(at));
  }

  private of<T>(expression: string, ...args: unknown[]): Promise<T> {
    return this.with(`(finder, element, ...args) => ${expression}`, args);
  }
  textContent = (): Promise<string | null> => this.of('element.textContent');
  innerText = (): Promise<string> => this.of('element.innerText');
  getAttribute = (name: string): Promise<string | null> => this.of('element.getAttribute(args[0])', name);
  inputValue = (): Promise<string> => this.of("finder.retarget(element, 'follow-label').value");
  isChecked = (): Promise<boolean> => this.of("finder.elementState(element, 'checked', true).matches");
  isDisabled = (): Promise<boolean> => this.of("finder.elementState(element, 'disabled', true).matches");
  isEnabled = (): Promise<boolean> => this.of("finder.elementState(element, 'enabled', true).matches");
  isVisible = (): Promise<boolean> =>
    this.home.call(
      `(finder, selector) => {
        const [found] = finder.querySelectorAll(finder.parseSelector(selector), document);
        return !!found && finder.elementState(found, 'visible', true).matches;
      }`,
      this.selector,
    );
  boundingBox = (): Promise<{ x: number; y: number; width: number; height: number } | null> =>
    this.of('(({ x, y, width, height }) => ({ x, y, width, height }))(element.getBoundingClientRect())');
  scrollIntoViewIfNeeded = (): Promise<void> => this.of("element.scrollIntoView({ block: 'nearest' })");

  async waitFor({ state = 'visible', timeout }: { state?: string; timeout?: number } = {}): Promise<void> {
    if (state === 'visible' || state === 'attached') {
      const wanted = `(finder, element) =>
        ${state === 'attached'} || finder.elementState(element, 'visible', true).matches ? null : { not: 'not visible' }`;
      await this.with(wanted, [], { ...(timeout === undefined ? {} : { timeout }) });
      return;
    }
    const until = Date.now() + (timeout ?? this.home.timeout);
    while (state === 'hidden' ? await this.isVisible() : (await this.count()) > 0)
      if (Date.now() > until) throw new Error(`${this.selector}: still there`);
  }

  private async point({ position, force, ...waiting }: Clicking): Promise<{ x: number; y: number }> {
    const { point } = await this.with<{ point: { x: number; y: number } }>(
      POINT_OF,
      [position, force ?? false],
      waiting,
    );
    return point;
  }

  async click(options: Clicking = {}): Promise<void> {
    const until = Date.now() + (options.timeout ?? this.home.timeout);
    for (;;) {
      const { x, y } = await this.point(options);
      await this.home.clickAt(x, y, options);
      // A press may have gone on to another page, or have closed this one.
      const hit = await this.home.call<string>(HIT).catch(() => 'done');
      if (hit === 'done') return;
      if (Date.now() > until) throw new Error(`${this.selector}: ${hit}`);
    }
  }
  dblclick = (options: Clicking = {}): Promise<void> => this.click({ ...options, clickCount: 2 });
  async hover(options: Clicking = {}): Promise<void> {
    const { x, y } = await this.point(options);
    await this.home.hoverAt(x, y);
  }
  async focus(): Promise<void> {
    if (this.home.isFrame) await this.click();
    else await this.with('(finder, element) => void finder.focusNode(element)');
  }
  async press(chord: string): Promise<void> {
    await this.focus();
    await this.home.keyboard.press(chord);
  }
  check = (): Promise<void> => this.setChecked(true);
  uncheck = (): Promise<void> => this.setChecked(false);
  async setChecked(wanted: boolean): Promise<void> {
    if ((await this.isChecked()) === wanted) return;
    await this.click();
    if ((await this.isChecked()) !== wanted) throw new Error(`${this.selector}: the tick did not change`);
  }

  async fill(text: string): Promise<void> {
    if (this.home.isFrame) await this.click();
    await this.with(
      `async (finder, element, text) => {
        const states = await finder.checkElementStates(element, ['visible', 'enabled', 'editable'], true);
        if (states) return { not: JSON.stringify(states) };
        if (finder.fill(element, text) === 'needsinput')
          document.execCommand(text ? 'insertText' : 'delete', false, text);
      }`,
      [text],
    );
  }

  selectOption = (asked: string | { label?: string; index?: number; value?: string }): Promise<string[]> =>
    this.with(
      `async (finder, element, wanted) => {
        const states = await finder.checkElementStates(element, ['visible', 'enabled'], true);
        if (states) return { not: JSON.stringify(states) };
        const chosen = finder.selectOptions(element, [wanted]);
        return typeof chosen === 'string' ? { not: chosen } : chosen;
      }`,
      [typeof asked === 'string' ? { valueOrLabel: asked } : asked],
    );

  async setInputFiles(given: string | FileGiven | readonly (string | FileGiven)[]): Promise<void> {
    const payloads = [given].flat().map((each) => {
      const file =
        typeof each === 'string'
          ? { name: each.split('/').at(-1)!, mimeType: '', buffer: readFileSync(each) }
          : (each as FileGiven);
      return { ...file, buffer: file.buffer.toString('base64') };
    });
    await this.with('(finder, element, payloads) => void finder.setInputFiles(element, payloads)', [
      payloads,
    ]);
  }
}
