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
import { onRealPaper } from './paper.js';
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

type Wishes = Readonly<Record<string, number>>;

/** What a page may be taken for that only preferences can do: how a person who wants all pages so has set it. */
const WISHES = {
  colorScheme: { dark: { 'layout.css.prefers-color-scheme.content-override': 0 } },
  reducedMotion: { reduce: { 'ui.prefersReducedMotion': 1 } },
} as const;

function wishesOf({ colorScheme, reducedMotion }: BrowserContextOptions): Wishes {
  return {
    ...(colorScheme === 'dark' && WISHES.colorScheme.dark),
    ...(reducedMotion === 'reduce' && WISHES.reducedMotion.reduce),
  };
}

function start(more: Wishes): Promise<Browser> {
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
 * nothing was to be done; a test that needs one of them is skipped, with what it asked for. Dark pages, and those
 * where little moves, stand in a Firefox that prefers that. Each is started for the first page that asks for it,
 * so a file of tests has no more of them than it needs.
 */
export async function launchFirefox(): Promise<Browser> {
  const started = new Map<string, Promise<Browser>>();
  const browserFor = (wishes: Wishes): Promise<Browser> => {
    const key = JSON.stringify(wishes);
    const browser = started.get(key) ?? start(wishes).then(withoutMedia);
    started.set(key, browser);
    return browser;
  };
  const all: Pick<Browser, 'newContext' | 'close'> = {
    async newContext(options = {}) {
      refuse({ ...options, colorScheme: null, reducedMotion: null });
      const browser = await browserFor(wishesOf(options));
      const context = await browser.newContext(options);
      await context.addInitScript(fillAsTyped);
      return withWhatIsLacking(context);
    },
    async close(options) {
      // One that could not be started has told so already.
      for (const browser of started.values()) await (await browser.catch(() => null))?.close(options);
    },
  };
  // Tests open pages and end the browser; nothing else is asked of it.
  return all as Browser;
}

/** Leaves out what only newer releases know: for the sessions of all browsers, which share what they send by. */
function withoutMedia(browser: Browser): Browser {
  const { _browserSession } = behind(browser).toImpl(browser);
  const sessions = Object.getPrototypeOf(_browserSession) as Session;
  const { send } = sessions;
  sessions.send = async function (this: Session, method, params) {
    if (method === 'emulation.setMediaFeaturesOverride') return {};
    return send.call(this, method, params);
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
    page.pdf = onRealPaper(page.pdf.bind(page));
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
