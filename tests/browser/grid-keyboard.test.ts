import { describe, expect, it } from 'vitest';
import { GridDriver } from './harness/grid-driver.js';
import { usePages } from './harness/pages.js';

const pages = usePages();

/** Where the keyboard is: the id of an element of the page, or the role of one inside the grid. */
const focus = (grid: GridDriver): Promise<string> =>
  grid.page.evaluate(() => {
    const { activeElement } = document;
    if (activeElement?.id !== 'home') return activeElement?.id || 'page';
    return activeElement.shadowRoot?.activeElement?.getAttribute('role') ?? 'grid';
  });

describe('the keyboard', () => {
  it('comes in by one Tab and goes out by the next, both ways, also after a click', async () => {
    const grid = await GridDriver.open(pages);
    await grid.page.locator('#before').focus();
    await grid.press('Tab');
    expect(await focus(grid)).toMatch(/gridcell|columnheader|rowheader/);
    await grid.press('Tab');
    expect(await focus(grid)).toBe('after');
    await grid.press('Shift+Tab');
    expect(await focus(grid)).toMatch(/gridcell|columnheader|rowheader/);
    await grid.press('Shift+Tab');
    expect(await focus(grid)).toBe('before');
    await grid.click(1, 'Food');
    await grid.press('Tab');
    expect(await focus(grid)).toBe('after');
    await grid.press('Shift+Tab');
    expect(await grid.selection()).toEqual({ row: 'lot2', column: 'food' });
  });

  it('types into the field that has it, not into the grid', async () => {
    const grid = await GridDriver.open(pages);
    await grid.click(0, 'Food');
    await grid.page.locator('#before').focus();
    await grid.type('x');
    await grid.press('Delete');
    expect(await grid.value('lot1', 'food')).toBe('Tomatoes');
  });

  it('goes over cells by arrows, Home and End, and reaches the headers', async () => {
    const grid = await GridDriver.open(pages);
    await grid.click(1, 'Way kept');
    await grid.press('ArrowRight', 'ArrowDown');
    expect(await grid.selection()).toEqual({ row: 'lot3', column: 'container' });
    await grid.press('Home');
    expect((await grid.selection())?.column).toBe('food');
    await grid.press('End');
    const last = await grid.page.evaluate(
      () =>
        window.grid.live
          .columns('shelf')
          .filter(({ hidden }) => !hidden)
          .at(-1)!.id,
    );
    expect((await grid.selection())?.column).toBe(last);
    await grid.press('Control+Home');
    expect(await grid.selection()).toEqual({ row: 'lot1', column: 'food' });
    await grid.press('ArrowRight', 'Shift+Home', 'Delete');
    expect(await grid.value('lot1', 'food')).toBeNull();
    expect(await grid.value('lot1', 'way')).toBeNull();
    await grid.press('Home', 'Control+ArrowUp', 'ArrowUp');
    expect(await focus(grid)).toBe('columnheader');
  });

  it('undoes and does again, and says what', async () => {
    const grid = await GridDriver.open(pages);
    await grid.click(0, 'Put up');
    await grid.type('5');
    await grid.press('Enter', 'Control+z');
    expect(await grid.value('lot1', 'count')).toBe(24);
    expect(await grid.said()).toMatch(/^Undone: change of a cell/);
    await grid.press('Control+y');
    expect(await grid.value('lot1', 'count')).toBe(5);
    expect(await grid.said()).toMatch(/^Done again: change of a cell/);
    await grid.press('Control+z', 'Control+Shift+z');
    expect(await grid.value('lot1', 'count')).toBe(5);
    expect((await grid.shown('Put up'))[0]).toBe('5');
  });

  it('undoes inside an open editor only what was typed there', async () => {
    const grid = await GridDriver.open(pages);
    await grid.click(0, 'Put up');
    await grid.type('5');
    await grid.press('Enter');
    await grid.click(0, 'Food');
    await grid.press('F2');
    await grid.type('!');
    await grid.press('Control+z', 'Escape', 'Escape');
    expect(await grid.value('lot1', 'count')).toBe(5);
  });

  it('fills down and fills a selection', async () => {
    const grid = await GridDriver.open(pages);
    await grid.select([0, 'Kept where'], [2, 'Kept where']);
    await grid.press('Control+d');
    expect(await grid.value('lot3', 'place')).toBe('Top shelf');
    await grid.press('Control+z');
    expect(await grid.value('lot3', 'place')).toBe('Middle shelf');
    await grid.click(3, 'Put up on');
    await grid.press('Control+d');
    expect(await grid.value('lot4', 'put_up_on')).toBe('2025-07-20');
    await grid.select([0, 'Kept where'], [1, 'Kept where']);
    await grid.type('Porch');
    await grid.press('Control+Enter');
    expect(await grid.value('lot1', 'place')).toBe('Porch');
    expect(await grid.value('lot2', 'place')).toBe('Porch');
  });

  it('opens the menu of a cell and, from a header, that of its column', async () => {
    const grid = await GridDriver.open(pages);
    await grid.click(0, 'Food');
    await grid.press('Shift+F10');
    expect(await grid.menu()).toContain('Insert a row above');
    await grid.press('Escape');
    expect(await grid.page.locator('.htMenu:visible').count()).toBe(0);
    await grid.type('Plums');
    await grid.press('Enter');
    expect(await grid.value('lot1', 'food')).toBe('Plums');
    await grid.press('ArrowUp', 'ArrowUp', 'Shift+Alt+ArrowDown');
    await expect.poll(() => grid.menu()).toContain('Sort smallest or earliest first');
    await grid.press('Escape', 'ArrowDown');
    expect(await grid.selection()).toEqual({ row: 'lot1', column: 'food' });
  });

  it('takes the grid’s place back after a deed of the menu', async () => {
    const grid = await GridDriver.open(pages);
    await grid.choose(1, 'Food', 'Insert a row above');
    await grid.type('Plums');
    await grid.press('Enter');
    const [, made] = await grid.rowIds();
    expect(await grid.value(made!, 'food')).toBe('Plums');
  });
});
