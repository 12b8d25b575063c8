import { describe, expect, it } from 'vitest';
import { GridDriver } from './harness/grid-driver.js';
import { usePages } from './harness/pages.js';

const pages = usePages();

/** The order of all columns in the book. */
const order = (grid: GridDriver): Promise<string[]> =>
  grid.page.evaluate((sheet) => window.grid.live.columns(sheet).map(({ id }) => id), grid.sheet);

async function dragHeader(grid: GridDriver, title: string, onto: string): Promise<void> {
  await grid.header(title).click({ position: { x: 20, y: 40 } });
  const from = (await grid.header(title).boundingBox())!;
  const to = (await grid.header(onto).boundingBox())!;
  await grid.page.mouse.move(from.x + 20, from.y + 40);
  await grid.page.mouse.down();
  await grid.page.mouse.move(from.x + 30, from.y + 40, { steps: 3 });
  await grid.page.mouse.move(to.x + 12, to.y + 40, { steps: 8 });
  await grid.page.mouse.up();
}

describe('moving columns', () => {
  it('moves an own column by dragging its header, as a change of the book with undo', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await dragHeader(grid, 'Gamma', 'Alpha');
    expect(await order(grid)).toEqual(['cc', 'ca', 'cb']);
    expect(await grid.titles()).toEqual(['Gamma', 'Alpha', 'Beta']);
    await grid.press('Control+z');
    expect(await grid.titles()).toEqual(['Alpha', 'Beta', 'Gamma']);
  });

  it('moves a planning column, whose figures go with it', async () => {
    const grid = await GridDriver.open(pages);
    await dragHeader(grid, 'Left', 'Way kept');
    expect((await grid.titles()).slice(0, 3)).toEqual(['Food', 'Left', 'Way kept']);
    expect((await grid.shown('Left'))[0]).toBe('24 quart jars');
    await grid.click(0, 'Left');
    await grid.type('3');
    expect(await grid.said()).toContain('“Left” is worked out from the book');
    expect(await grid.value('lot1', 'way')).toBe('canned');
  });
});

describe('hiding columns', () => {
  it('hides and shows again, beside the place and all at once', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.chooseInHeader('Beta', 'Hide this column');
    expect(await grid.titles()).toEqual(['Alpha', 'Gamma']);
    await grid.click(0, 'Gamma');
    await grid.type('5');
    await grid.press('Enter');
    expect(await grid.value('row1', 'cc')).toBe(5);
    expect(await grid.value('row1', 'cb')).toBe(10);
    await grid.chooseInHeader('Gamma', 'Show the hidden column here');
    expect(await grid.titles()).toEqual(['Alpha', 'Beta', 'Gamma']);
    await grid.chooseInHeader('Beta', 'Hide this column');
    await grid.chooseInHeader('Alpha', 'Show all hidden columns');
    expect(await grid.titles()).toEqual(['Alpha', 'Beta', 'Gamma']);
  });

  it('shows a column that its sheet hides at first', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'foods' });
    expect(await grid.titles()).not.toContain('Use, low');
    await grid.chooseInHeader('Use a week', 'Show the hidden column');
    expect(await grid.titles()).toContain('Use, low');
  });

  it('hides planning columns, and does not offer to hide the last one', async () => {
    const grid = await GridDriver.open(pages);
    await grid.chooseInHeader('Left', 'Hide this column');
    expect(await grid.titles()).not.toContain('Left');
    const own = await GridDriver.open(pages, { sheet: 'own1' });
    await own.chooseInHeader('Alpha', 'Hide this column');
    await own.chooseInHeader('Beta', 'Hide this column');
    await own.openHeaderMenu('Gamma');
    expect(await own.menuItem('Hide this column').getAttribute('class')).toContain('htDisabled');
  });
});

describe('adding, renaming and removing columns', () => {
  it('asks the element for what only it shows', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.chooseInHeader('Beta', 'Add a column before');
    expect(await grid.asked()).toEqual({ ask: 'add column', before: 'cb' });
    await grid.chooseInHeader('Beta', 'Add a column after');
    expect(await grid.asked()).toEqual({ ask: 'add column', before: 'cc' });
    await grid.chooseInHeader('Gamma', 'Add a column after');
    expect(await grid.asked()).toEqual({ ask: 'add column', before: null });
    await grid.chooseInHeader('Beta', 'Rename this column');
    expect(await grid.asked()).toEqual({ ask: 'rename column', column: 'cb' });
    await grid.chooseInHeader('Beta', 'Formula for the whole column');
    expect(await grid.asked()).toEqual({ ask: 'column formula', column: 'cb' });
  });

  it('shows a new column and a new title at once', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.page.evaluate(() => {
      const { live } = window.grid;
      live.addColumn('own1', 'Twice', { before: 'cb', formula: '=Alpha*2' });
      live.apply({ do: 'describe column', sheet: 'own1', column: 'ca', as: { title: 'First' } });
    });
    expect(await grid.titles()).toEqual(['First', 'Twice', 'Beta', 'Gamma']);
  });

  it('removes an own column, with undo, and offers that for no other', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.chooseInHeader('Beta', 'Remove this column');
    expect(await grid.titles()).toEqual(['Alpha', 'Gamma']);
    await grid.press('Control+z');
    expect(await grid.titles()).toEqual(['Alpha', 'Beta', 'Gamma']);
    expect((await grid.shown('Beta'))[1]).toBe('20');
    const shelf = await GridDriver.open(pages);
    await shelf.openHeaderMenu('Left');
    expect((await shelf.menu()).join()).not.toContain('Remove');
    await shelf.press('Escape');
    await shelf.openHeaderMenu('Food');
    expect((await shelf.menu()).join()).not.toContain('Remove');
  });

  it('offers nothing that is not in its list', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.click(0, 'Alpha', { button: 'right' });
    expect(await grid.menu()).toEqual([
      'Copy',
      'Cut',
      'Paste…',
      'Blank these cells',
      'Fill down',
      'Colour…',
      'Note…',
      'Insert a row above',
      'Insert a row below',
      'Remove this row',
      'Add a column after',
      'Remove this column',
      expect.stringMatching(/^Undo/),
      'Do again',
    ]);
  });

  it('asks for the working of a planning figure', async () => {
    const grid = await GridDriver.open(pages);
    await grid.choose(1, 'Left', 'Show the working');
    expect(await grid.asked()).toEqual({ ask: 'working', cell: { row: 'lot2', column: 'left' } });
    await grid.click(1, 'Food', { button: 'right' });
    expect(await grid.menu()).not.toContain('Show the working');
  });
});

describe('how columns look', () => {
  it('keeps a width that was drawn in the book', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    const box = (await grid.header('Alpha').boundingBox())!;
    await grid.page.mouse.move(box.x + box.width - 2, box.y + 40);
    await grid.page.mouse.down();
    await grid.page.mouse.move(box.x + box.width + 58, box.y + 40, { steps: 5 });
    await grid.page.mouse.up();
    const width = await grid.page.evaluate(() => window.grid.live.column('own1', 'ca')?.width);
    expect(width).toBeGreaterThan(150);
    await expect
      .poll(async () => Math.abs((await grid.header('Alpha').boundingBox())!.width - width!))
      .toBeLessThan(2);
    await grid.click(0, 'Beta');
    await grid.press('Control+z');
    await expect.poll(async () => (await grid.header('Alpha').boundingBox())!.width).toBeLessThan(120);
  });

  it('keeps columns in sight while the others scroll', async () => {
    const grid = await GridDriver.open(pages);
    await grid.chooseInHeader('Food', 'Keep columns up to here in sight');
    await grid.click(0, 'Way kept');
    await grid.press('End');
    const frozen = grid.page.locator('.ht_clone_inline_start tbody tr').first().locator('td').first();
    expect(await frozen.textContent()).toBe('Tomatoes');
    expect(await frozen.isVisible()).toBe(true);
    expect(await grid.page.evaluate(() => window.grid.live.column('shelf', 'food')?.pinned)).toBe(true);
  });

  it('keeps headings over their columns when something brings a heading into sight', async () => {
    const grid = await GridDriver.open(pages, { width: 700 });
    const left = (part: string): Promise<number> =>
      grid.page.locator(`${part} .wtHolder`).evaluate((holder) => holder.scrollLeft);
    await grid.page.locator('.ht_master .wtHolder').evaluate((holder) => {
      holder.scrollLeft = 150;
    });
    await expect.poll(() => left('.ht_clone_top')).toBe(150);
    await grid.page.locator('.ht_clone_top .wtHolder').evaluate(async (holder) => {
      holder.scrollLeft = 0;
      await new Promise((resolve) => setTimeout(resolve, 100));
    });
    await expect.poll(() => left('.ht_clone_top')).toBe(await left('.ht_master'));
  });

  it('shows the letter that formulas call a column by, hidden ones counted', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.chooseInHeader('Beta', 'Hide this column');
    expect(await grid.header('Gamma').locator('.croft-letter').textContent()).toBe('C');
  });

  it('writes a title as text, whatever it looks like', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.page.evaluate(() =>
      window.grid.live.apply({
        do: 'describe column',
        sheet: 'own1',
        column: 'ca',
        as: { title: '<img src=x onerror="document.title=1">' },
      }),
    );
    expect((await grid.titles())[0]).toBe('<img src=x onerror="document.title=1">');
    expect(await grid.page.locator('.croft-grid img').count()).toBe(0);
    expect(await grid.page.title()).not.toBe('1');
  });
});
