interface ClickOptions {
  readonly button?: 'left' | 'middle' | 'right';
  readonly clickCount?: number;
}

/** Playwright’s mouse of a page that is driven through WebDriver BiDi. */
export interface Mouse {
  click(progress: unknown, x: number, y: number, options?: ClickOptions): Promise<void>;
  move(progress: unknown, x: number, y: number, options?: object): Promise<void>;
  readonly _raw: { _performActions(progress: unknown, actions: readonly object[]): Promise<void> };
}

const BUTTONS = ['left', 'middle', 'right'] as const;

/**
 * Playwright sends each press and release by itself, and Firefox counts clicks only within what it is sent at
 * once: two clicks of a person are then never a double click. Sent at once they are.
 */
export function doubleClickAtOnce(mouse: Mouse): void {
  const { click } = mouse;
  mouse.click = async function (this: Mouse, progress, x, y, options = {}) {
    const { button = 'left', clickCount = 1 } = options;
    if (clickCount < 2) return click.call(this, progress, x, y, options);
    await this.move(progress, x, y, { forClick: true });
    const at = BUTTONS.indexOf(button);
    const once = [
      { type: 'pointerDown', button: at },
      { type: 'pointerUp', button: at },
    ];
    await this._raw._performActions(progress, Array.from({ length: clickCount }, () => once).flat());
  };
}
