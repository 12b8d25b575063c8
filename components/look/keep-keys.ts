/** What a field, a button, a link or something that scrolls does by itself. */
const USED = /^(?:Enter| |Arrow(?:Up|Down|Left|Right)|Home|End|Page(?:Up|Down))$/;
/** What is written besides, letter by letter or put together by an input method. */
const WRITTEN = /^(?:.|Backspace|Delete|Dead|Process|Unidentified)$/u;
const WRITES = 'input, textarea, select, [contenteditable], .croft-grid';

const TYPES = ['keydown', 'keypress', 'keyup'] as const;

/** Whether what has the keyboard does something with a key: writes it, scrolls by it, or is pressed by it. */
function isUsed(event: KeyboardEvent): boolean {
  const { key, altKey, ctrlKey, metaKey } = event;
  const [target] = event.composedPath();
  if (event.isComposing) return true;
  // By AltGr people write signs.
  if ((altKey || ctrlKey || metaKey) && !event.getModifierState('AltGraph')) return false;
  return (
    USED.test(key) || (WRITTEN.test(key) && target instanceof Element && target.closest(WRITES) !== null)
  );
}

/**
 * Keeps keys that are used within a shadow root from the page around it: there they seem to come from the element
 * itself, which is no field, so that a page with commands on single keys would take what is being written for those.
 * All others pass: with Ctrl or a command key, Tab, and Escape where nobody took it.
 */
export function keepKeys(root: ShadowRoot): void {
  keep(root, (event, isTaken) => {
    const isGrid = event
      .composedPath()
      .some((each) => each instanceof Element && each.matches('.croft-grid'));
    if (!isGrid && isTaken()) event.stopPropagation();
  });
}

/** The same for a grid, whose library hears keys at the root of the page: after that they go no further. */
export function keepKeysOfGrid(home: EventTarget, signal: AbortSignal): void {
  const page = document.documentElement;
  keep(
    home,
    (event, isTaken) => {
      // Added now, it comes after all that listen there.
      const last = (at: Event): void => {
        if (at === event && isTaken()) at.stopPropagation();
      };
      page.addEventListener(event.type, last, { once: true });
    },
    signal,
  );
}

function keep(
  home: EventTarget,
  heard: (event: KeyboardEvent, isTaken: () => boolean) => void,
  signal?: AbortSignal,
): void {
  /** Pressed and kept: when they come up that is kept, too. */
  const down = new Set<string>();
  const isTaken = (event: KeyboardEvent): boolean => {
    if (event.type === 'keyup') return down.delete(event.key);
    if (!event.defaultPrevented && !isUsed(event)) return false;
    down.add(event.key);
    return true;
  };
  for (const type of TYPES)
    home.addEventListener(
      type,
      (event) => heard(event as KeyboardEvent, () => isTaken(event as KeyboardEvent)),
      signal && { signal },
    );
}
