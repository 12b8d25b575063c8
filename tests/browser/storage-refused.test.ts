import { describe, expect, it, vi } from 'vitest';
import { usePages } from './harness/pages.js';
import {
  codeOf,
  copyOf,
  note,
  noteOf,
  openKept,
  PAGE,
  saidOfKeeping,
  saved,
  stateOf,
} from './storage-make.js';

vi.setConfig({ testTimeout: 120_000 });
const pages = usePages();

/** How browsers refuse: in their own words, run before the page's own scripts. */
const REFUSALS = {
  'there is no storage at all': 'Object.defineProperty(window, "indexedDB", { value: undefined });',
  'looking for it throws':
    'Object.defineProperty(window, "indexedDB", { get() { throw new DOMException("denied", "SecurityError"); } });',
  'opening it throws':
    'IDBFactory.prototype.open = () => { throw new DOMException("denied", "SecurityError"); };',
  'opening it throws for want of access':
    'IDBFactory.prototype.open = () => { throw new DOMException("denied", "InvalidAccessError"); };',
};

describe('a browser that keeps nothing', () => {
  it.each(Object.entries(REFUSALS))(
    'because %s: the book opens, says that it is not kept, and can be saved as a file',
    async (_why, script) => {
      const page = await pages.open('tests/browser/harness/pages/week.html');
      await page.addInitScript(script);
      await page.reload();
      await openKept(page);
      expect(await stateOf(page)).toBe('not kept');
      expect(await codeOf(page)).toBe('storage-refused');
      const words = await saidOfKeeping(page);
      expect(words).toContain('Not kept');
      expect(words).toContain('keeps nothing for this page');
      expect(words).toContain('Save a copy');
      await note(page, 'l-bean', 'typed all the same');
      expect(await noteOf(page, 'l-bean')).toBe('typed all the same');
      // Nothing claims later that it was saved.
      expect(await stateOf(page)).toBe('not kept');
      expect(await copyOf(page)).toContain('typed all the same');
    },
  );

  it('because opening it fails later: the book opens, and a stored one is not written over', async () => {
    const page = await pages.open(PAGE);
    await openKept(page);
    await note(page, 'l-bean', 'kept before');
    await saved(page);
    // The first answer to each request of the page is an error, as when the disk cannot be read.
    await page.addInitScript(`
      if (!sessionStorage.whole) {
        const open = IDBFactory.prototype.open;
        IDBFactory.prototype.open = function (...asked) {
          const request = open.apply(this, asked);
          Object.defineProperty(request, 'error', { get: () => new DOMException('broken', 'UnknownError') });
          const add = request.addEventListener.bind(request);
          request.addEventListener = (type, heard, ...rest) => {
            if (type === 'error') queueMicrotask(() => heard.call(request, new Event('error')));
            if (type === 'error') add(type, heard, ...rest);
          };
          return request;
        };
      }
    `);
    await page.reload();
    await openKept(page);
    expect(await stateOf(page)).toBe('not kept');
    expect(await codeOf(page)).toBe('storage-failed');
    await note(page, 'l-pea', 'typed meanwhile');
    expect(await copyOf(page)).toContain('typed meanwhile');
    await page.evaluate(() => sessionStorage.setItem('whole', 'yes'));
    await page.reload();
    await openKept(page);
    expect(await noteOf(page, 'l-bean')).toBe('kept before');
  });
});

describe('a private window', () => {
  it('keeps the book as long as it is open, and leaves nothing behind', async () => {
    // Each context of the harness is a private one.
    const page = await pages.open(PAGE);
    await openKept(page);
    await note(page, 'l-bean', 'typed in private');
    await saved(page);
    await page.reload();
    await openKept(page);
    expect(await noteOf(page, 'l-bean')).toBe('typed in private');
    await page.context().close();
    const later = await pages.open(PAGE);
    await openKept(later);
    expect(await noteOf(later, 'l-bean')).toBeNull();
  });
});
