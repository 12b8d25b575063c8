import { describe, expect, it } from 'vitest';
import { GridDriver } from './harness/grid-driver.js';
import { usePages } from './harness/pages.js';

const pages = usePages();

/** The small square at the corner of the selection. */
async function corner(grid: GridDriver): Promise<{ x: number; y: number }> {
  const box = await grid.page.locator('.ht_master .wtBorder.corner:visible').first().boundingBox();
  return { x: box!.x + box!.width / 2, y: box!.y + box!.height / 2 };
}

async function drag(grid: GridDriver, line: number, title: string): Promise<void> {
  const from = await corner(grid);
  const box = await (await grid.cell(line, title)).boundingBox();
  await grid.page.mouse.move(from.x, from.y);
  await grid.page.mouse.down();
  await grid.page.mouse.move(box!.x + box!.width / 2, box!.y + box!.height / 2 - 4, { steps: 6 });
  await grid.page.mouse.move(box!.x + box!.width / 2, box!.y + box!.height / 2, { steps: 2 });
  await grid.page.mouse.up();
}

describe('the fill handle', () => {
  it('repeats one number, goes on with evenly spaced ones', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.click(0, 'Alpha');
    await drag(grid, 2, 'Alpha');
    expect((await grid.shown('Alpha')).slice(0, 4)).toEqual(['1', '1', '1', '4']);
    await grid.press('Control+z');
    expect((await grid.shown('Alpha')).slice(0, 4)).toEqual(['1', '2', '3', '4']);
    await grid.select([0, 'Beta'], [1, 'Beta']);
    await grid.press('Control+c');
    await grid.click(0, 'Gamma');
    await grid.press('Control+v');
    await drag(grid, 3, 'Gamma');
    expect((await grid.shown('Gamma')).slice(0, 4)).toEqual(['10', '20', '30', '40']);
  });

  it('goes on with dates by days and by months, also upward', async () => {
    const grid = await GridDriver.open(pages);
    await grid.click(0, 'Put up on');
    await drag(grid, 2, 'Put up on');
    expect((await grid.shown('Put up on')).slice(0, 3)).toEqual([
      'Aug 30, 2025',
      'Aug 31, 2025',
      'Sep 1, 2025',
    ]);
    await grid.otherProgramCopies('2025-03-15\n2025-04-15');
    await grid.click(3, 'Put up on');
    await grid.press('Control+v');
    await drag(grid, 1, 'Put up on');
    expect((await grid.shown('Put up on')).slice(1, 5)).toEqual([
      'Jan 15, 2025',
      'Feb 15, 2025',
      'Mar 15, 2025',
      'Apr 15, 2025',
    ]);
  });

  it('shifts formulas, and a double click fills down beside what is there', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.click(0, 'Gamma');
    await grid.type('=A1+B1');
    await grid.press('Enter');
    await expect.poll(async () => (await grid.shown('Gamma'))[0]).toBe('11');
    await grid.press('ArrowUp');
    const { x, y } = await corner(grid);
    await grid.page.mouse.dblclick(x, y);
    expect(await grid.typed('row4', 'cc')).toBe('=A4+B4');
    await expect.poll(() => grid.shown('Gamma')).toEqual(['11', '22', '33', '44', '']);
    expect(await grid.rowIds()).toHaveLength(4);
    await grid.press('Control+z');
    expect(await grid.typed('row2', 'cc')).toBe(null);
    expect(await grid.typed('row1', 'cc')).toBe('=A1+B1');
  });

  it('leaves planning cells and says why', async () => {
    const grid = await GridDriver.open(pages);
    await grid.click(0, 'Kept where');
    await drag(grid, 0, 'Left');
    expect(await grid.said()).toContain('“Left” is worked out from the book');
    expect(await grid.value('lot1', 'left')).toBe(24);
  });

  it('makes a row when it is drawn onto the blank line', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.select([2, 'Alpha'], [3, 'Alpha']);
    await drag(grid, 4, 'Alpha');
    expect(await grid.shown('Alpha')).toEqual(['1', '2', '3', '4', '5', '']);
  });
});
