/** What one can count on of a page, A4 or Letter, within margins of 12 mm: CSS pixels, of which 96 are an inch. */
const PAGE = { width: 702, height: 940 } as const;

export const PAPER_FONTS = "'Avenir Next', 'Segoe UI', Ubuntu, 'Noto Sans', 'Liberation Sans', sans-serif";

interface Filled {
  readonly frame: HTMLIFrameElement;
  readonly view: Window;
}

/**
 * Prints something alone, by rules of its own. It goes into a frame, since the page around it is not ours to
 * hide; the rules are a constructed sheet, which strict security policies allow. `fill` puts it into the body.
 */
export function printInFrame(title: string, rules: string, fill: (body: HTMLElement) => void): void {
  const before = withKeyboard();
  const filled = fillFrame(title, rules, fill);
  if (!filled) return;
  const { frame, view } = filled;
  view.addEventListener('afterprint', () => {
    frame.remove();
    before?.focus({ preventScroll: true });
  });
  view.focus();
  view.print();
}

/** What has the keyboard, within shadow roots too. */
function withKeyboard(): HTMLElement | null {
  let at = document.activeElement;
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
  return at instanceof HTMLElement ? at : null;
}

/** Lays something out as `printInFrame` would, and answers what `measure` finds of it there. */
export function measureInFrame<T>(rules: string, measure: (body: HTMLElement) => T): T | null {
  let found: T | null = null;
  fillFrame('', rules, (body) => {
    found = measure(body);
  })?.frame.remove();
  return found;
}

function fillFrame(title: string, rules: string, fill: (body: HTMLElement) => void): Filled | null {
  const frame = document.createElement('iframe');
  frame.title = title;
  frame.setAttribute('aria-hidden', 'true');
  frame.tabIndex = -1;
  frame.className = 'croft-print';
  Object.assign(frame.style, {
    position: 'fixed',
    left: '-10000px',
    top: '0',
    width: `${PAGE.width}px`,
    height: '100px',
    border: '0',
  });
  document.body.append(frame);
  const { contentDocument: page, contentWindow: view } = frame;
  if (!page || !view) {
    frame.remove();
    return null;
  }
  page.title = title;
  // Read from the same side as the page.
  page.documentElement.dir = document.documentElement.dir;
  page.documentElement.lang = document.documentElement.lang;
  const { CSSStyleSheet: Sheet } = view as Window & typeof globalThis;
  const sheet = new Sheet();
  sheet.replaceSync(rules);
  page.adoptedStyleSheets = [sheet];
  fill(page.body);
  return { frame, view };
}

/** Makes the print smaller, between these sizes in points, until all of it stands on one page. */
export function fitOnPage(body: HTMLElement, largest: number, least: number): void {
  for (let size = largest; size >= least; size -= 0.25) {
    body.style.fontSize = `${size}pt`;
    if (body.scrollHeight <= PAGE.height) return;
  }
}
