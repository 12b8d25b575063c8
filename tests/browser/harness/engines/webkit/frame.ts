import type { FrameLocator, Locator, Page } from 'playwright-core';
import { withWhatIsLacking } from './lacking-here.js';
import { type Clicked, type Home, WebkitLocator } from './locator.js';
import type { WebkitPage } from './page.js';
import { byLabel, byRole, byText } from './selectors.js';
import type { Session } from './session.js';

/** A page inside of a page, of any origin: what is asked there is asked inside of the frame. */
class WebkitFrame implements Home {
  readonly isFrame = true;
  constructor(
    private readonly around: WebkitPage,
    private readonly session: Session,
    private readonly css: string,
  ) {}

  page = (): Page => this.around.page();
  get timeout(): number {
    return this.around.timeout;
  }
  get keyboard(): Page['keyboard'] {
    return this.around.keyboard;
  }
  call<T>(source: string, ...args: unknown[]): Promise<T> {
    return this.session.callIn({ window: this.around.handle, frame: this.css }, source, ...args);
  }
  private async at(x: number, y: number): Promise<[number, number]> {
    const box = await this.around.locator(this.css).boundingBox();
    return [x + (box?.x ?? 0), y + (box?.y ?? 0)];
  }
  async clickAt(x: number, y: number, options?: Clicked): Promise<void> {
    await this.around.clickAt(...(await this.at(x, y)), options);
  }
  async hoverAt(x: number, y: number): Promise<void> {
    await this.around.hoverAt(...(await this.at(x, y)));
  }
}

export function frameLocator(page: WebkitPage, session: Session, css: string): FrameLocator {
  const frame = new WebkitFrame(page, session, css);
  const of = (selector: string): Locator => WebkitLocator.of(frame, selector);
  return withWhatIsLacking<FrameLocator>('frameLocator', {
    locator: of,
    getByRole: (...[role, options]: Parameters<FrameLocator['getByRole']>) => of(byRole(role, options)),
    getByText: (...[text, options]: Parameters<FrameLocator['getByText']>) =>
      of(byText(text, options?.exact)),
    getByLabel: (...[text, options]: Parameters<FrameLocator['getByLabel']>) =>
      of(byLabel(text, options?.exact)),
  });
}
