import { describe, expect, it } from 'vitest';
import { GridDriver } from './harness/grid-driver.js';
import { usePages } from './harness/pages.js';

const pages = usePages();

describe('sorting', () => {
  it('is a view: the book keeps its order, and blanks and the blank line come last both ways', async () => {
    const grid = await GridDriver.open(pages);
    await grid.page.evaluate(() => window.grid.live.set('shelf', 'lot3', 'count', null));
    await grid.chooseInHeader('Put up', 'Sort smallest');
    expect(await grid.shown('Put up')).toEqual(['12', '18', '24', '40', '', '']);
    expect((await grid.shown('Food')).slice(-2)).toEqual(['Green beans', '']);
    await grid.chooseInHeader('Put up', 'Sort largest');
    expect(await grid.shown('Put up')).toEqual(['40', '24', '18', '12', '', '']);
    expect((await grid.shown('Food')).slice(-2)).toEqual(['Green beans', '']);
    expect(await grid.rowIds()).toEqual(['lot1', 'lot2', 'lot3', 'lot4', 'lot5']);
    expect(await grid.page.evaluate(() => window.grid.view.look.sort)).toEqual({
      column: 'count',
      ascending: false,
    });
    await grid.chooseInHeader('Food', 'As entered');
    expect(await grid.shown('Put up')).toEqual(['24', '12', '', '18', '40', '']);
    expect(await grid.page.evaluate(() => window.grid.view.look.sort)).toBe(null);
  });

  it('puts dates in order of time and numbers in order of size, text without case', async () => {
    const grid = await GridDriver.open(pages);
    await grid.chooseInHeader('Put up on', 'Sort smallest');
    expect((await grid.shown('Put up on'))[0]).toBe('Sep 2, 2024');
    const own = await GridDriver.open(pages, { sheet: 'own1' });
    await own.otherProgramCopies('b\nA\n10\n9');
    await own.click(0, 'Gamma');
    await own.press('Control+v');
    await own.chooseInHeader('Gamma', 'Sort smallest');
    expect(await own.shown('Gamma')).toEqual(['9', '10', 'A', 'b', '']);
  });

  it('sorts by a planning column, and edits go to the row that is seen', async () => {
    const grid = await GridDriver.open(pages);
    await grid.chooseInHeader('Left', 'Sort smallest');
    expect((await grid.shown('Food'))[0]).toBe('Tomatoes');
    expect((await grid.shown('Put up'))[0]).toBe('12');
    await grid.click(0, 'Kept where');
    await grid.type('Attic');
    await grid.press('Enter');
    expect(await grid.value('lot2', 'place')).toBe('Attic');
    expect(await grid.value('lot1', 'place')).toBe('Top shelf');
  });

  it('does not jump while rows are edited, and undo goes to the right row', async () => {
    const grid = await GridDriver.open(pages);
    await grid.chooseInHeader('Put up', 'Sort smallest');
    await grid.click(0, 'Put up');
    await grid.type('99');
    await grid.press('Enter');
    expect(await grid.value('lot2', 'count')).toBe(99);
    expect((await grid.shown('Put up'))[0]).toBe('99');
    await grid.press('Control+z');
    expect(await grid.value('lot2', 'count')).toBe(12);
    expect((await grid.shown('Put up'))[0]).toBe('12');
  });

  it('inserts and removes rows beside the row that is seen', async () => {
    const grid = await GridDriver.open(pages);
    await grid.chooseInHeader('Put up', 'Sort smallest');
    await grid.choose(0, 'Food', 'Insert a row below');
    const ids = await grid.rowIds();
    expect(ids[1]).toBe('lot2');
    expect(ids[3]).toBe('lot3');
    expect((await grid.shown('Put up')).slice(0, 3)).toEqual(['12', '', '18']);
    expect((await grid.selection())?.row).toBe(ids[2]);
    await grid.choose(2, 'Food', 'Remove this row');
    expect(await grid.rowIds()).not.toContain('lot4');
    await grid.press('Control+z');
    expect(await grid.rowIds()).toContain('lot4');
    expect(await grid.page.evaluate(() => window.grid.view.look.sort?.column)).toBe('count');
  });

  it('survives a move, a removal and an undo of columns', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.chooseInHeader('Beta', 'Sort largest');
    await grid.page.evaluate(() => window.grid.live.moveColumns('own1', ['cb'], 'ca'));
    expect(await grid.shown('Beta')).toEqual(['40', '30', '20', '10', '']);
    expect(await grid.page.evaluate(() => window.grid.view.look.sort)).toEqual({
      column: 'cb',
      ascending: false,
    });
    await grid.page.evaluate(() => window.grid.live.removeColumns('own1', ['cb']));
    expect(await grid.titles()).toEqual(['Alpha', 'Gamma']);
    await grid.page.evaluate(() => window.grid.live.undo());
    expect([...(await grid.shown('Alpha'))].sort()).toEqual(['', '1', '2', '3', '4']);
    await grid.click(1, 'Alpha');
    const { row } = (await grid.selection())!;
    await grid.type('77');
    await grid.press('Enter');
    expect(await grid.value(row, 'ca')).toBe(77);
  });
});

describe('filtering', () => {
  const byValue = async (grid: GridDriver, title: string, value: string): Promise<void> => {
    await grid.openHeaderMenu(title);
    const menu = grid.page.locator('.htFiltersMenuValue');
    await menu.getByText('Untick all').click();
    await menu.locator('td', { hasText: value }).locator('input').click();
    await grid.page.getByText('Show these').click();
  };

  it('shows rows of a value, keeps the blank line, and tells how many are left out', async () => {
    const grid = await GridDriver.open(pages);
    await byValue(grid, 'Food', 'Tomatoes');
    expect(await grid.shown('Food')).toEqual(['Tomatoes', 'Tomatoes', '']);
    expect(await grid.page.evaluate(() => window.grid.view.look.filteredOut)).toBe(3);
    expect(await grid.page.evaluate(() => window.grid.looks)).toBeGreaterThan(0);
    await grid.click(1, 'Kept where');
    await grid.type('Attic');
    await grid.press('Enter');
    expect(await grid.value('lot2', 'place')).toBe('Attic');
    await grid.click(2, 'Food');
    await grid.type('Leeks');
    await grid.press('Enter');
    expect(await grid.shown('Food')).toEqual(['Tomatoes', 'Tomatoes', 'Leeks', '']);
    await grid.chooseInHeader('Food', 'Show all rows again');
    expect(await grid.shown('Food')).toHaveLength(7);
  });

  it('shows rows by a condition on numbers, in our words', async () => {
    const grid = await GridDriver.open(pages);
    await grid.openHeaderMenu('Put up');
    await grid.page.locator('.htFiltersMenuCondition .htUISelect').first().click();
    await grid.page.locator('.htFiltersConditionsMenu:visible td', { hasText: 'More than' }).click();
    await grid.page.locator('.htFiltersMenuCondition input:visible').first().fill('20');
    await grid.page.getByText('Show these').click();
    expect(await grid.shown('Put up')).toEqual(['24', '30', '40', '']);
    await grid.page.evaluate(() => window.grid.view.clearFilters());
    expect(await grid.shown('Put up')).toHaveLength(6);
  });

  it('holds while rows come, go and are undone', async () => {
    const grid = await GridDriver.open(pages);
    await byValue(grid, 'Food', 'Tomatoes');
    await grid.page.evaluate(() => {
      const { live } = window.grid;
      live.insertRows('shelf', [{ food: 'Okra' }], 'lot1');
      live.removeRows('shelf', ['lot4']);
    });
    expect(await grid.shown('Food')).toEqual(['Okra', 'Tomatoes', 'Tomatoes', '']);
    await grid.click(1, 'Put up');
    await grid.type('8');
    await grid.press('Enter');
    expect(await grid.value('lot1', 'count')).toBe(8);
    await grid.press('Control+z', 'Control+z', 'Control+z');
    expect((await grid.shown('Food')).slice(0, 2)).toEqual(['Tomatoes', 'Tomatoes']);
    expect(await grid.rowIds()).toEqual(['lot1', 'lot2', 'lot3', 'lot4', 'lot5']);
  });
});

describe('moving rows', () => {
  const dragRow = async (grid: GridDriver, from: number, to: number): Promise<void> => {
    const headers = grid.page.locator('.ht_clone_inline_start tbody th');
    await headers.nth(from).click();
    const a = (await headers.nth(from).boundingBox())!;
    const b = (await headers.nth(to).boundingBox())!;
    await grid.page.mouse.move(a.x + 20, a.y + 16);
    await grid.page.mouse.down();
    await grid.page.mouse.move(a.x + 20, a.y + 22, { steps: 2 });
    await grid.page.mouse.move(b.x + 20, b.y + 4, { steps: 6 });
    await grid.page.mouse.up();
  };

  it('moves a row of the book by its header', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await dragRow(grid, 3, 1);
    expect(await grid.rowIds()).toEqual(['row1', 'row4', 'row2', 'row3']);
    expect(await grid.shown('Alpha')).toEqual(['1', '4', '2', '3', '']);
    await grid.press('Control+z');
    expect(await grid.rowIds()).toEqual(['row1', 'row2', 'row3', 'row4']);
  });

  it('refuses while the rows are sorted, and says why', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.chooseInHeader('Alpha', 'Sort largest');
    await dragRow(grid, 3, 1);
    expect(await grid.rowIds()).toEqual(['row1', 'row2', 'row3', 'row4']);
    expect(await grid.said()).toContain('cannot be moved while they are sorted');
  });
});
