/** What a field, a button, a link or something that scrolls does by itself. */
const USED = /^(Enter| |Arrow.*|Home|End|Page.*)$/;
/** What is written besides, letter by letter or put together by an input method. */
const WRITTEN = /^(.|Backspace|Delete|Dead|Process|Unidentified)$/u;
const WRITES = 'input, textarea, select, [contenteditable], .croft-grid';
const GRID = '.croft-grid, croft-grid-menus';

/** Whether what has the keyboard does something with a key: writes it, scrolls by it, or is pressed by it. */
function isUsed(event: KeyboardEvent): boolean {
  const { key, altKey, ctrlKey, metaKey } = event;
  const [target] = event.composedPath() as Element[];
  // By AltGr people write signs.
  if ((altKey || ctrlKey || metaKey) && !event.getModifierState('AltGraph')) return false;
  return event.isComposing || USED.test(key) || (WRITTEN.test(key) && target?.closest(WRITES) != null);
}

/**
 * Keeps keys that are used within a shadow root, or a grid, from the page around it: there they seem to come from the
 * element itself, which is no field, so that a page with commands on single keys would take what is being written
 * for those. All others pass: with Ctrl or a command key, Tab, and Escape where nobody took it.
 */
export function keepKeys(home: EventTarget, signal?: AbortSignal): void {
  /** Pressed and kept: when they come up that is kept, too. */
  const down = new Set<string>();
  const keep = (event: KeyboardEvent): void => {
    const { type, key } = event;
    const isTaken = type === 'keyup' ? down.delete(key) : event.defaultPrevented || isUsed(event);
    if (!isTaken) return;
    if (type === 'keydown') down.add(key);
    event.stopPropagation();
  };
  const heard = (event: Event): void => {
    const now = event as KeyboardEvent;
    const isGrid = now.composedPath().some((each) => each instanceof Element && each.matches(GRID));
    if (!isGrid) {
      keep(now);
      return;
    }
    // The grid's library hears keys at the root of the page: what is added there now comes after it.
    const last = (at: Event): void => {
      if (at === now) keep(now);
    };
    document.documentElement.addEventListener(now.type, last, { once: true });
  };
  for (const type of ['keydown', 'keypress', 'keyup'])
    home.addEventListener(type, heard, signal && { signal });
}
