import { painted } from './first-paint.js';

/** Least and most room above and below the text of a row, in pixels. */
const [LEAST, MOST] = [2, 22];
const MOST_GAP = 48;

/**
 * Height in pixels of an element while the page's own table stands in it; 0 where nobody has seen it yet, so that
 * it need not be laid out just to be measured.
 */
export const heightSeen = (host: HTMLElement): number =>
  painted() ? host.getBoundingClientRect().height : 0;

/**
 * Gives the table the height that the page's own table had, by the room in its rows, so that nothing below it
 * moves. Only where readers would see it move: after a first paint, and where what follows is in sight.
 *
 * @param before what {@link heightSeen} said while the page's own table stood there.
 */
export function settleHeight(host: HTMLElement, root: HTMLElement, before: number): void {
  if (before === 0) return;
  const { top, height } = host.getBoundingClientRect();
  if (top + Math.min(before, height) >= innerHeight) return;
  const rows = root.querySelectorAll('tr').length;
  if (rows === 0) return;
  // Twice, since borders and fractions of pixels round.
  for (let i = 0; i < 2; i++) {
    const off = before - host.getBoundingClientRect().height;
    if (Math.abs(off) < 0.5) break;
    const cell = root.querySelector('tbody :is(th, td)');
    const now = cell ? Number.parseFloat(getComputedStyle(cell).getPropertyValue('--pad')) : 0;
    const pad = Math.min(MOST, Math.max(LEAST, (now || 6) + off / rows / 2));
    root.style.setProperty('--pad', `${pad}px`);
  }
  const rest = before - host.getBoundingClientRect().height;
  // A wide gap would be worse than what it saves.
  if (rest < 0.1 || rest > MOST_GAP) return;
  root.style.setProperty('min-height', `${root.getBoundingClientRect().height + rest}px`);
  const width = innerWidth;
  addEventListener('resize', function again() {
    if (innerWidth === width) return;
    removeEventListener('resize', again);
    root.style.removeProperty('min-height');
  });
}
