/** What a button, a link or something that scrolls does by itself. */
const USED = /^(Enter| |Arrow.*|Home|End|Page.*)$/;
/** What nobody writes by, in a field. */
const OTHERS = /^(Escape|Tab|F\d|Shift|Cont|Alt|Meta)/;
const GRID = '.croft-grid';

/** Whether what has the keyboard does something with a key: writes it, scrolls by it, or is pressed by it. */
function isUsed(event: KeyboardEvent, target: Element | undefined): boolean {
  const { key, altKey, ctrlKey, metaKey } = event;
  // By AltGr people write signs.
  if ((altKey || ctrlKey || metaKey) && !event.getModifierState('AltGraph')) return false;
  return target?.closest(`input, textarea, select, ${GRID}`) ? !OTHERS.test(key) : USED.test(key);
}

/**
 * Keeps keys that are used within a shadow root, or a grid, from the page around it: there they seem to come from the
 * element itself, which is no field, so that a page with commands on single keys would take what is being written
 * for those. All others pass: with Ctrl or a command key, Tab, and Escape where nobody took it.
 *
 * @param grid ends it, where `home` is a grid or its menus.
 */
export function keepKeys(home: EventTarget, grid?: AbortSignal): void {
  /** Pressed and kept: when they come up that is kept, too. */
  const down = new Set<string>();
  const heard = (event: KeyboardEvent): void => {
    const { type, key } = event;
    const [target] = event.composedPath() as Element[];
    const keep = (at: Event): void => {
      if (at !== event) return;
      if (type === 'keyup' ? !down.delete(key) : !event.defaultPrevented && !isUsed(event, target)) return;
      if (type === 'keydown') down.add(key);
      event.stopPropagation();
    };
    // A grid's library hears keys at the root of the page: what is added there now comes after it.
    if (grid ?? target?.closest(GRID)) document.documentElement.addEventListener(type, keep, { once: true });
    else keep(event);
  };
  for (const type of ['keydown', 'keypress', 'keyup'])
    home.addEventListener(type, heard as EventListener, grid && { signal: grid });
}
