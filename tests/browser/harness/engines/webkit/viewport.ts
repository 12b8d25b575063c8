import { setTimeout as rest } from 'node:timers/promises';
import { skipForWantOf } from '../lacking.js';
import type { WebkitPage } from './page.js';
import type { Session } from './session.js';
import { SCREEN } from './started.js';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** So often, and so long apart in milliseconds, a window is asked whether it has its size. */
const LOOKS = 12;
const APART = 30;
/** A window that a display without a window manager does not give its size is asked again. */
const TRIES = 4;

/**
 * Where a display has no window manager, the window under its mouse has the keyboard. The mouse is in its middle:
 * there a window begins, narrow or not, with its frame under the mouse rather than its page.
 */
const POINTED = { x: SCREEN.width / 2, y: SCREEN.height / 2 - 2 };

/** Makes a page as large as asked. A window has a frame around its page, whose size is found by trying. */
export async function makeSize(page: WebkitPage, session: Session, wanted: Size): Promise<void> {
  const inner = (): Promise<Size> => page.evaluate('({ width: innerWidth, height: innerHeight })');
  const is = (a: Size, b: Size): boolean => a.width === b.width && a.height === b.height;
  let outer = wanted;
  let now = await inner();
  for (let tries = 0; tries === 0 || (tries < TRIES && !is(now, wanted)); tries += 1) {
    const before = now;
    await session.in(page.handle, (driver) =>
      driver
        .manage()
        .window()
        .setRect({
          x: Math.round(POINTED.x - outer.width / 2),
          y: POINTED.y,
          width: outer.width,
          height: outer.height,
        }),
    );
    for (let looks = 0; looks < LOOKS && !is(now, wanted); looks += 1) {
      await rest(APART);
      const next = await inner();
      // It has changed and rests there.
      if (looks > 2 && is(next, now) && !is(next, before)) break;
      now = next;
    }
    outer = {
      width: outer.width + wanted.width - now.width,
      height: outer.height + wanted.height - now.height,
    };
  }
  if (!is(now, wanted)) skipForWantOf(`a page of ${wanted.width} × ${wanted.height}`);
}
