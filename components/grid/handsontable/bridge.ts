import { keepKeys } from '../../look/keep-keys.js';
import type { Hot } from './registry.js';

const inside = (target: EventTarget | null, ...homes: readonly Node[]): boolean =>
  target instanceof Node && homes.some((home) => home === target || home.contains(target));

/**
 * What the grid library misses inside a shadow root, because it listens at the window, where events from
 * within seem to come from the host: keyboard focus coming in by Tab, focus going out, and touches.
 * Answers how to stop.
 */
export function bridge(hot: Hot, wrapper: HTMLElement, portal: { host: HTMLElement }): () => void {
  const root = wrapper.getRootNode() as ShadowRoot | Document;
  const stop = new AbortController();
  const { signal } = stop;
  const scopes = () => hot.getFocusScopeManager();

  // After the library's own listeners there, which took the focus or the press for one outside the grid.
  const enter = (event: Event): void => {
    const target = event.composedPath()[0];
    // By its path: what was pressed may be gone by now, as a line of a list is.
    if (!(target instanceof HTMLElement) || !event.composedPath().includes(wrapper)) return;
    // WebKitGTK ends the press that opened a menu with a click: the keyboard stays with the menu.
    if (event.type === 'click' && wrapper.ownerDocument.activeElement === portal.host) return;
    // An open editor has keys of its own, which the library would take for the grid's from here on.
    const keys = hot.getShortcutManager();
    const context = keys.getActiveContextName();
    hot.listen();
    const fallback = event.type === 'click' ? 'click' : 'unknown';
    scopes().activateScope('grid', target.dataset.htFocusSource ?? fallback);
    if (hot.getActiveEditor()?.isOpened()) keys.setActiveContextName(context);
  };
  const page = wrapper.ownerDocument.documentElement;
  for (const type of ['focusin', 'click']) page.addEventListener(type, enter, { signal });

  // From another part of an element around the grid, a toolbar say, focus moves within that element: the
  // event ends there and the page never hears of it.
  root.addEventListener(
    'focusin',
    (event) => {
      const within = inside((event as FocusEvent).relatedTarget, wrapper);
      if (!within && !event.composedPath().includes(page)) enter(event);
    },
    { signal },
  );

  root.addEventListener(
    'focusout',
    (event) => {
      const { relatedTarget } = event as FocusEvent;
      if (!inside(event.composedPath()[0] ?? null, wrapper)) return;
      if (relatedTarget === null || inside(relatedTarget, wrapper, portal.host)) return;
      scopes().deactivateScope('grid');
      hot.unlisten();
    },
    { signal },
  );

  // In WebKit the library makes the cell that has the keyboard editable while the mouse is elsewhere, over a menu
  // too, so that the browser's own menu can copy; and then takes it for a field outside the grid.
  const keep = (): void => {
    if (inside(root.activeElement, wrapper) && !hot.getActiveEditor()?.isOpened()) hot.listen();
  };
  page.addEventListener('mouseup', keep, { signal });

  // A dialog that a line of a menu opened has the keyboard, though the library took it back as the menu closed.
  const leave = (event: KeyboardEvent): void => {
    const path = event.composedPath();
    if (!hot.isListening() || path.includes(wrapper) || path.includes(portal.host)) return;
    if (path[0] === wrapper.ownerDocument.body || path[0] === page) return;
    scopes().deactivateScope('grid');
    hot.unlisten();
  };
  window.addEventListener('keydown', leave, { signal, capture: true });

  // WebKitGTK knows no name for Tab with Shift: all that listen for Tab get to hear of it.
  const named = (event: KeyboardEvent): void => {
    if (event.code === 'Tab' && event.key !== 'Tab')
      Object.defineProperty(event, 'key', { value: 'Tab', configurable: true });
  };
  window.addEventListener('keydown', named, { signal, capture: true });

  // WebKit goes from a cell to the field of its closed editor, which is not in the order of Tab: out of the grid
  // it is to go. Only where Tab is the browser's own, so nobody types there at this moment.
  const out = (event: KeyboardEvent): void => {
    if (event.key !== 'Tab' || event.defaultPrevented || hot.getActiveEditor()?.isOpened()) return;
    const [from] = event.composedPath();
    if (!inside(from ?? null, wrapper)) return;
    for (const field of wrapper.querySelectorAll('textarea')) {
      if (field === from) continue;
      field.disabled = true;
      setTimeout(() => {
        field.disabled = false;
      });
    }
  };
  window.addEventListener('keydown', out, { signal });

  // Read by the library after dispatch, when `target` has become the host: pinned to where it began.
  const pin = (event: Event) => {
    const target = event.composedPath()[0];
    if (target) Object.defineProperty(event, 'target', { value: target, configurable: true });
  };
  for (const home of [wrapper, portal.host.shadowRoot!])
    home.addEventListener('touchstart', pin, { signal, capture: true, passive: true });

  for (const home of [wrapper, portal.host.shadowRoot!]) keepKeys(home, signal);

  return () => stop.abort();
}
