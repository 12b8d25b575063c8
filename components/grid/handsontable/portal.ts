import { sheetsOf } from './sheets.js';

/** Tokens that menus outside the element need as well; they do not inherit across the page. */
const TOKENS = [
  '--paper',
  '--ink',
  '--quiet',
  '--line',
  '--accent',
  '--plan',
  '--plan-line',
  '--problem',
  '--font',
  '--font-figures',
];

/** Least distance of a menu from the window's edge, in pixels. */
const EDGE = 4;

/** Least height of a menu that scrolls below its heading, in pixels. */
const LEAST_SEEN = 260;

/**
 * A home for the grid's menus at the level of the document, where no ancestor clips or shifts them, with
 * the grid's styles and nothing of the page's.
 */
export class Portal {
  readonly host: HTMLElement;
  readonly #root: ShadowRoot;
  #tokensTaken = false;

  constructor(
    readonly document: Document,
    /** Whose tokens the menus take over. */
    readonly source: HTMLElement,
  ) {
    this.host = document.createElement('croft-grid-menus');
    const { style } = this.host;
    style.setProperty('all', 'initial');
    style.setProperty('position', 'absolute');
    style.setProperty('top', '0');
    style.setProperty('left', '0');
    style.setProperty('z-index', '2147483000');
    this.#root = this.host.attachShadow({ mode: 'open' });
    this.#root.adoptedStyleSheets = sheetsOf(document);
    // To the document a press here would be one outside the grid, which closes the menu it is meant for.
    for (const type of ['mousedown', 'touchstart', 'contextmenu'])
      this.#root.addEventListener(type, (event) => event.stopPropagation());
    document.documentElement.append(this.host);
  }

  /** Moves the library's own container of menus in here. */
  adopt(container: HTMLElement): void {
    this.#root.append(container);
  }

  setScheme(scheme: 'light' | 'dark'): void {
    this.host.style.setProperty('color-scheme', scheme);
    if (this.#tokensTaken) this.takeOver();
  }

  /** Takes the tokens over as they are now: before something is shown here, not before it is needed. */
  takeOver(): void {
    this.#tokensTaken = true;
    const computed = getComputedStyle(this.source);
    for (const token of TOKENS) {
      const value = computed.getPropertyValue(token).trim();
      if (value === '') this.host.style.removeProperty(token);
      else this.host.style.setProperty(token, value);
    }
  }

  /**
   * Moves a menu that has just opened into the window, and lets it scroll where it is taller than that.
   *
   * @param header the heading whose menu it is: the menu goes below it, else beside it
   */
  fit(menu: HTMLElement | undefined, header?: Element | null): void {
    if (!menu) return;
    const { innerWidth, innerHeight } = this.document.defaultView ?? window;
    const from = header?.getBoundingClientRect();
    const below = from ? innerHeight - EDGE - from.bottom : 0;
    const width = menu.offsetWidth;
    const sides = from ? [from.right + 1, from.left - width - 1] : [];
    const side = sides.find((x) => x >= EDGE && x + width <= innerWidth - EDGE);
    const fitsBelow = menu.scrollHeight <= below;
    // Neither below nor beside: below, scrolling, where that leaves enough to see.
    const squeezed = from !== undefined && !fitsBelow && side === undefined && below >= LEAST_SEEN;
    const room = squeezed ? below : innerHeight - 2 * EDGE;
    const tall = menu.scrollHeight > room;
    menu.classList.toggle('croft-tall', tall);
    if (tall) menu.style.setProperty('max-height', `${room}px`);
    else menu.style.removeProperty('max-height');
    if (!fitsBelow && side !== undefined) this.#shift(menu, 'left', side - menu.getBoundingClientRect().left);
    const { left, right, top, bottom } = menu.getBoundingClientRect();
    const shift = (start: number, end: number, size: number): number =>
      start < EDGE ? EDGE - start : end > size - EDGE ? Math.max(EDGE - start, size - EDGE - end) : 0;
    const by = { left: shift(left, right, innerWidth), top: shift(top, bottom, innerHeight) };
    this.#shift(menu, 'left', by.left);
    this.#shift(menu, 'top', by.top);
  }

  #shift(menu: HTMLElement, side: 'left' | 'top', by: number): void {
    if (by === 0) return;
    const at = Number.parseFloat(getComputedStyle(menu)[side]) || 0;
    menu.style.setProperty(side, `${at + by}px`);
  }

  remove(): void {
    this.host.remove();
  }
}
