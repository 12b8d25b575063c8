import { type Browser, firefox } from 'playwright-core';
import { findFirefox } from '../find-engines.mjs';

/** What playwright keeps behind a browser: the session through which it speaks WebDriver BiDi. */
interface Behind {
  readonly _connection: {
    toImpl(browser: unknown): { readonly _browserSession: Session };
  };
}

interface Session {
  send(method: string, params?: object): Promise<unknown>;
}

/**
 * Firefox as it is released, through WebDriver BiDi. Long-term releases do not know every command that playwright
 * sends as a matter of course: setting how a page prefers its colours is one. For these the answer is that
 * nothing was to be done; tests that need them are named in `lacking.ts`.
 */
export async function launchFirefox(): Promise<Browser> {
  const executablePath = findFirefox();
  if (!executablePath)
    throw new Error('No Firefox was found. CROFTSHEET_FIREFOX=/path/to/firefox says where one is.');
  const browser = await firefox.launch({
    channel: 'moz-firefox',
    executablePath,
    firefoxUserPrefs: {
      // Without this a page may read the clipboard only after a person has chosen ‘Paste’ in a menu.
      'dom.events.testing.asyncClipboard': true,
      // The tests’ own machine speaks the language that they expect.
      'intl.accept_languages': 'en-US',
    },
  });
  const { _browserSession } = (browser as unknown as Behind)._connection.toImpl(browser);
  const sessions = Object.getPrototypeOf(_browserSession) as Session;
  const { send } = sessions;
  sessions.send = async function (this: Session, method, params) {
    if (method === 'emulation.setMediaFeaturesOverride') return {};
    return send.call(this, method, params);
  };
  const { newContext } = browser;
  browser.newContext = async (options) => {
    const context = await newContext.call(browser, options);
    await context.addInitScript(fillAsTyped);
    return context;
  };
  return browser;
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
