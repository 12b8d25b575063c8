/** A rectangle of an element, from its corner: where it is to be clicked. */
interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

interface Handle {
  evaluateInUtility<T>(inPage: (asked: [unknown, Element, Rect | undefined]) => T, rect?: Rect): Promise<T>;
}

/** What playwright does with a page through WebDriver BiDi. */
export interface PageDelegate {
  scrollRectIntoViewIfNeeded(handle: Handle, rect?: Rect): Promise<string>;
}

/**
 * Through WebDriver BiDi playwright puts what it clicks in the middle of all that scrolls, also where it can be
 * seen already. A person clicks what they see, and a grid that scrolled draws other cells in the same places: so
 * a page is to scroll only where it has to, as playwright does it in Chromium.
 */
export function scrollOnlyIfNeeded(page: PageDelegate): void {
  const scroll = page.scrollRectIntoViewIfNeeded;
  page.scrollRectIntoViewIfNeeded = async function (this: PageDelegate, handle, rect) {
    const isSeen = await handle.evaluateInUtility(isInView, rect).catch(() => false);
    return isSeen ? 'done' : scroll.call(this, handle, rect);
  };
}

/** Whether an element, or a place in it, is within all that could scroll it away. Runs in the page. */
function isInView([, element, rect]: [unknown, Element, Rect | undefined]): boolean {
  // What stands in a frame may be scrolled away with the frame, which cannot be known from within.
  if (element.nodeType !== Node.ELEMENT_NODE || window !== window.top) return false;
  const box = element.getBoundingClientRect();
  if (box.width === 0 || box.height === 0) return false;
  const left = rect ? box.left + element.clientLeft + rect.x : box.left;
  const top = rect ? box.top + element.clientTop + rect.y : box.top;
  const right = left + (rect?.width ?? box.width);
  const bottom = top + (rect?.height ?? box.height);
  const isWithin = (x: number, y: number, width: number, height: number): boolean =>
    left >= x && top >= y && right <= x + width && bottom <= y + height;
  if (!isWithin(0, 0, document.documentElement.clientWidth, document.documentElement.clientHeight))
    return false;
  const around = (each: Element): Element | null => {
    const { parentNode } = each.assignedSlot ?? each;
    return each.assignedSlot ?? (parentNode instanceof ShadowRoot ? parentNode.host : each.parentElement);
  };
  for (let each = around(element); each && each !== document.documentElement; each = around(each)) {
    const { overflowX, overflowY } = getComputedStyle(each);
    if (each === document.body || (overflowX === 'visible' && overflowY === 'visible')) continue;
    const { left: x, top: y } = each.getBoundingClientRect();
    if (!isWithin(x + each.clientLeft, y + each.clientTop, each.clientWidth, each.clientHeight)) return false;
  }
  return true;
}
