import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  firefox,
  type Page,
} from 'playwright-core';
import { findFirefox } from '../find-engines.mjs';
import { doubleClickAtOnce, type Mouse } from './double-click.js';
import { skipForWantOf } from './lacking.js';
import { type PageDelegate, scrollOnlyIfNeeded } from './scroll-if-needed.js';

/** What playwright keeps behind a browser and its pages: what speaks WebDriver BiDi for them. */
interface Behind {
  readonly _connection: {
    toImpl(of: Browser): { readonly _browserSession: Session };
    toImpl(of: Page): { readonly delegate: PageDelegate; readonly mouse: Mouse };
  };
}

const behind = (of: Browser | Page) => (of as unknown as Behind)._connection;

interface Session {
  send(method: string, params?: object): Promise<unknown>;
}

const PREFERENCES = {
  // Without this a page may read the clipboard only after a person has chosen ‘Paste’ in a menu.
  'dom.events.testing.asyncClipboard': true,
  // The tests’ own machine speaks the language that they expect.
  'intl.accept_languages': 'en-US',
  // Playwright finds elements in a world of its own, beside that of the page, and asks `ariaLabelledByElements` of
  // them to know their names. Firefox 153 ends the page's process when both worlds have asked that of one element:
  // without it, playwright and axe-core go by the attribute.
  'accessibility.ARIAElementReflection.enabled': false,
};

/** How a person who wants all pages dark has set it. */
const DARK = { 'layout.css.prefers-color-scheme.content-override': 0 };

function start(more: Readonly<Record<string, number>> = {}): Promise<Browser> {
  const executablePath = findFirefox();
  if (!executablePath)
    throw new Error('No Firefox was found. CROFTSHEET_FIREFOX=/path/to/firefox says where one is.');
  return firefox.launch({
    channel: 'moz-firefox',
    executablePath,
    firefoxUserPrefs: { ...PREFERENCES, ...more },
  });
}

/**
 * Firefox as it is released, through WebDriver BiDi. Long-term releases do not know every command that playwright
 * sends as a matter of course: setting how a page prefers its colours is one. For these the answer is that
 * nothing was to be done; a test that needs one of them is skipped, with what it asked for. Dark pages stand in a
 * second Firefox that prefers them.
 */
export async function launchFirefox(): Promise<Browser> {
  const browser = await start();
  let dark: Promise<Browser> | null = null;
  const { _browserSession } = behind(browser).toImpl(browser);
  const sessions = Object.getPrototypeOf(_browserSession) as Session;
  const { send } = sessions;
  sessions.send = async function (this: Session, method, params) {
    if (method === 'emulation.setMediaFeaturesOverride') return {};
    return send.call(this, method, params);
  };
  const { newContext, close } = browser;
  browser.newContext = async (options) => {
    refuse({ ...options, colorScheme: null });
    if (options?.colorScheme === 'dark') dark ??= start(DARK);
    const context = await (options?.colorScheme === 'dark'
      ? (await dark!).newContext(options)
      : newContext.call(browser, options));
    await context.addInitScript(fillAsTyped);
    return withWhatIsLacking(context);
  };
  browser.close = async (options) => {
    await (await dark)?.close(options);
    await close.call(browser, options);
  };
  return browser;
}

type Media = Pick<BrowserContextOptions, 'colorScheme' | 'reducedMotion' | 'forcedColors' | 'contrast'>;

/** What a page is taken for, unless a test asks for something else. */
const AS_IT_IS: readonly unknown[] = [undefined, null, false, 'light', 'no-preference', 'none', 'screen'];

interface Asked {
  readonly hasTouch?: boolean;
  readonly media?: unknown;
  readonly javaScriptEnabled?: boolean;
}

function refuse(asked: (Media & Asked) | undefined): void {
  for (const name of [
    'colorScheme',
    'reducedMotion',
    'forcedColors',
    'contrast',
    'hasTouch',
    'media',
  ] as const)
    if (!AS_IT_IS.includes(asked?.[name])) skipForWantOf(`a page with ${name} ${String(asked?.[name])}`);
  if (asked?.javaScriptEnabled === false) skipForWantOf('a page without scripts');
}

/** What is asked of a context or its pages and cannot be had skips the test, instead of waiting in vain. */
function withWhatIsLacking(context: BrowserContext): BrowserContext {
  const { newPage } = context;
  context.newCDPSession = () => skipForWantOf('Chromium’s own protocol');
  context.newPage = async () => {
    const page = await newPage.call(context);
    const { delegate, mouse } = behind(page).toImpl(page);
    scrollOnlyIfNeeded(delegate);
    doubleClickAtOnce(mouse);
    const { emulateMedia, waitForEvent } = page;
    page.pdf = () => skipForWantOf('printing');
    page.emulateMedia = (media) => {
      refuse(media as Media);
      return emulateMedia.call(page, media);
    };
    page.waitForEvent = ((event: string, options?: object) =>
      event === 'download'
        ? skipForWantOf('hearing of downloads')
        : waitForEvent.call(page, event as never, options as never)) as typeof waitForEvent;
    return page;
  };
  return context;
}

/**
 * What playwright fills into a field it writes as a script would, and Firefox tells of no change that a script
 * made. Filled as if typed, the field is one that a person changed.
 */
function fillAsTyped(): void {
  Object.defineProperty(window, '__pw_bidiInsertText', {
    get: () => (text: string) => {
      document.execCommand('insertText', false, text);
      const at = document.activeElement;
      return at instanceof HTMLIFrameElement ? at : null;
    },
    set: () => undefined,
  });
}
