import { describe, expect, it } from 'vitest';
import { GridDriver } from './harness/grid-driver.js';
import { usePages } from './harness/pages.js';

const pages = usePages();

const field = (grid: GridDriver) => grid.page.locator('textarea.handsontableInput');
const hint = (grid: GridDriver) => grid.page.locator('.croft-hint');

describe('function names while typing', () => {
  it('are listed, gone through by arrows and taken by Tab; Escape closes the list only', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.click(0, 'Gamma');
    await grid.type('=jars');
    expect(await grid.suggestions().first().textContent()).toContain('JARS_PER_BUSHEL');
    await grid.press('Tab');
    expect(await field(grid).inputValue()).toBe('=JARS_PER_BUSHEL(');
    await field(grid).fill('=su');
    const names = await grid.page.locator('.croft-option-label').allTextContents();
    expect(names.slice(0, 2)).toEqual(['SUM', 'SUMIF']);
    await grid.press('ArrowDown', 'Enter');
    expect(await field(grid).inputValue()).toBe('=SUMIF(');
    await field(grid).fill('=su');
    await grid.press('Escape');
    expect(await grid.suggestions().count()).toBe(0);
    expect(await field(grid).inputValue()).toBe('=su');
    await grid.press('Escape');
    expect(await grid.typed('row1', 'cc')).toBe(null);
  });

  it('come with the columns of the sheet, and a click takes one', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.click(1, 'Gamma');
    await grid.type('=Al');
    await grid.suggestions().filter({ hasText: 'column “Alpha”' }).click();
    expect(await field(grid).inputValue()).toBe('=Alpha');
    await grid.type('*3');
    await grid.press('Enter');
    await expect.poll(() => grid.value('row2', 'cc')).toBe(6);
  });

  it('are told to screen readers: a list box, the line chosen, how many', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.click(0, 'Gamma');
    await grid.type('=BUSH');
    const list = grid.page.getByRole('listbox', { name: 'Suggestions' });
    expect(await list.isVisible()).toBe(true);
    expect(await field(grid).getAttribute('aria-controls')).toBe(await list.getAttribute('id'));
    const active = await field(grid).getAttribute('aria-activedescendant');
    expect(await grid.page.locator(`#${active}`).textContent()).toContain('BUSHEL');
    expect(await grid.page.locator('.croft-grid > [role=status]').textContent()).toMatch(/suggestion/);
    expect(await field(grid).getAttribute('aria-label')).toBe('Gamma, row 1');
  });

  it('do not take the place of a whole column name', async () => {
    const grid = await GridDriver.open(pages);
    await grid.click(0, 'Put up');
    await grid.type('=Left');
    await grid.press('Enter');
    expect(await grid.typed('lot1', 'count')).toBe('=Left');
  });
});

describe('the hint of arguments', () => {
  it('shows the signature with the current argument in bold, and its help', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.click(0, 'Gamma');
    await grid.type('=WEEKS_OF_SUPPLY(');
    expect(await hint(grid).locator('b').textContent()).toBe('on_hand');
    expect(await hint(grid).textContent()).toContain('WEEKS_OF_SUPPLY(on_hand, use_per_week)');
    await grid.type('24,');
    expect(await hint(grid).locator('b').textContent()).toBe('use_per_week');
    await grid.press('Home');
    expect(await hint(grid).isVisible()).toBe(false);
    await grid.press('End');
    expect(await hint(grid).locator('b').textContent()).toBe('use_per_week');
  });

  it('works for functions of the standard and within one another', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.click(0, 'Gamma');
    await grid.type('=IF(SUM(1,2');
    expect(await hint(grid).textContent()).toContain('SUM(');
    await grid.type('),"a,b",');
    expect(await hint(grid).locator('b').textContent()).toBe('[otherwise]');
    expect(await hint(grid).textContent()).toContain('One value where a condition holds');
  });

  it('offers the known values of an argument in quotes', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.click(0, 'Gamma');
    await grid.type('=JARS_PER_BUSHEL("tomato","pi');
    await grid.press('Tab');
    expect(await field(grid).inputValue()).toBe('=JARS_PER_BUSHEL("tomato","pint jar"');
    await grid.press('Enter');
    expect(await grid.typed('row1', 'cc')).toBe('=JARS_PER_BUSHEL("tomato","pint jar")');
  });
});

describe('formulas in cells', () => {
  it('are edited as formulas and shown as values; brackets left open are closed', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.click(0, 'Gamma');
    await grid.type('=SUM(A1:A4');
    await grid.press('Enter');
    await expect.poll(async () => (await grid.shown('Gamma'))[0]).toBe('10');
    await grid.press('ArrowUp', 'F2');
    expect(await field(grid).inputValue()).toBe('=SUM(A1:A4)');
  });

  it('follow what they refer to', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.click(0, 'Gamma');
    await grid.type('=A1*2');
    await grid.press('Enter');
    await expect.poll(async () => (await grid.shown('Gamma'))[0]).toBe('2');
    await grid.click(0, 'Alpha');
    await grid.type('21');
    await grid.press('Enter');
    expect((await grid.shown('Gamma'))[0]).toBe('42');
  });

  it('show that they are being worked out while the engine loads', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1', slowEngine: true });
    await grid.click(0, 'Gamma');
    await grid.type('=A1*2');
    await grid.press('Enter');
    expect((await grid.shown('Gamma'))[0]).toBe('…');
    await expect.poll(async () => (await grid.shown('Gamma'))[0]).toBe('2');
  });

  it('say what is wrong, at the cell', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.click(0, 'Gamma');
    await grid.type('=JARS_PER_BUSHEL("tomatos","quart"');
    await grid.press('Enter');
    const cell = await grid.cell(0, 'Gamma');
    await expect.poll(() => cell.textContent()).toMatch(/^#/);
    expect(await cell.getAttribute('title')).toContain('tomato');
    expect(await cell.getAttribute('aria-invalid')).toBe('true');
    await grid.click(1, 'Gamma');
    await grid.type('=1+1');
    await grid.press('Enter');
    await expect.poll(async () => (await grid.shown('Gamma'))[1]).toBe('2');
  });
});
