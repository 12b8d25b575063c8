import { describe, expect, it } from 'vitest';
import { GridDriver } from './harness/grid-driver.js';
import { usePages } from './harness/pages.js';

const pages = usePages();

describe('copying', () => {
  it('gives other programs what is shown: numbers without unit, dates by ISO', async () => {
    const grid = await GridDriver.open(pages);
    await grid.select([0, 'Put up'], [1, 'Left']);
    await grid.press('Control+c');
    expect(await grid.clipboard()).toBe('24\t2025-08-30\tTop shelf\t24\n12\t2024-09-02\tTop shelf\t12');
  });

  it('quotes what would be misread', async () => {
    const grid = await GridDriver.open(pages);
    await grid.page.evaluate(() => window.grid.live.set('shelf', 'lot1', 'food', 'Two\nlines "here"'));
    await grid.select([0, 'Food'], [0, 'Way kept']);
    await grid.press('Control+c');
    expect(await grid.clipboard()).toBe('"Two\nlines ""here"""\tcanned');
    await grid.click(2, 'Food');
    await grid.press('Control+v');
    expect(await grid.value('lot3', 'food')).toBe('Two\nlines "here"');
  });

  it('cuts: the cells are blank afterwards, and one undo brings them back', async () => {
    const grid = await GridDriver.open(pages);
    await grid.select([0, 'Food'], [0, 'Container']);
    await grid.press('Control+x');
    expect(await grid.clipboard()).toBe('Tomatoes\tcanned\tquart jar');
    expect(await grid.value('lot1', 'food')).toBe(null);
    await grid.press('Control+z');
    expect(await grid.value('lot1', 'food')).toBe('Tomatoes');
    expect(await grid.value('lot1', 'container')).toBe('quart jar');
  });

  it('works from the menu', async () => {
    const grid = await GridDriver.open(pages);
    await grid.choose(2, 'Food', 'Copy');
    await expect.poll(() => grid.clipboard()).toBe('Green beans');
    await grid.choose(2, 'Food', 'Cut');
    await expect.poll(() => grid.value('lot3', 'food')).toBe(null);
    await grid.choose(2, 'Food', 'Paste');
    expect(await grid.said()).toContain('Ctrl');
  });
});

describe('pasting from another program', () => {
  it('reads tabs, quoted fields, line breaks in cells and dates in words', async () => {
    const grid = await GridDriver.open(pages);
    await grid.otherProgramCopies(
      '"Pickled ""hot"" beans\nfrom Ada"\tcanned\tpint jar\t1,200\tAug 9, 2025\r\n6" squash\tcellared\tpound\t3\t2025-10-01\r\n',
    );
    await grid.click(0, 'Food');
    await grid.press('Control+v');
    expect(await grid.value('lot1', 'food')).toBe('Pickled "hot" beans\nfrom Ada');
    expect(await grid.value('lot1', 'count')).toBe(1200);
    expect(await grid.value('lot1', 'put_up_on')).toBe('2025-08-09');
    expect(await grid.value('lot2', 'food')).toBe('6" squash');
    expect(await grid.value('lot2', 'put_up_on')).toBe('2025-10-01');
    expect(await grid.value('lot3', 'food')).toBe('Green beans');
    await grid.press('Control+z');
    expect(await grid.value('lot1', 'food')).toBe('Tomatoes');
    expect(await grid.value('lot2', 'food')).toBe('Tomatoes');
  });

  it('makes rows past the last, in one step of undo', async () => {
    const grid = await GridDriver.open(pages);
    await grid.otherProgramCopies('Leeks\tcellared\nKale\tfrozen\nChard\tfrozen');
    await grid.click(4, 'Food');
    await grid.press('Control+v');
    expect(await grid.shown('Food')).toEqual([
      'Tomatoes',
      'Tomatoes',
      'Green beans',
      'Peaches',
      'Leeks',
      'Kale',
      'Chard',
      '',
    ]);
    await grid.press('Control+z');
    expect(await grid.rowIds()).toHaveLength(5);
    expect(await grid.value('lot5', 'food')).toBe('Corn');
  });

  it('says so when it is wider than the sheet, and pastes what fits', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.otherProgramCopies('7\t8\t9');
    await grid.click(0, 'Beta');
    await grid.press('Control+v');
    expect(await grid.value('row1', 'cb')).toBe(7);
    expect(await grid.value('row1', 'cc')).toBe(8);
    expect(await grid.said()).toContain('One column of what was pasted did not fit');
  });

  it('leaves planning cells, says why, and writes the others', async () => {
    const grid = await GridDriver.open(pages);
    await grid.otherProgramCopies('Attic\t99\nPorch\t98');
    await grid.click(0, 'Kept where');
    await grid.press('Control+v');
    expect(await grid.value('lot1', 'place')).toBe('Attic');
    expect(await grid.value('lot2', 'place')).toBe('Porch');
    expect(await grid.value('lot1', 'left')).toBe(24);
    expect(await grid.said()).toContain('“Left” is worked out from the book');
  });

  it('refuses a paste of planning cells alone', async () => {
    const grid = await GridDriver.open(pages);
    const before = await grid.page.evaluate(() => window.grid.live.undoLabel);
    await grid.otherProgramCopies('99');
    await grid.click(0, 'Left');
    await grid.press('Control+v');
    expect(await grid.said()).toContain('“Left” is worked out from the book');
    expect(await grid.page.evaluate(() => window.grid.live.undoLabel)).toBe(before);
  });

  it('never uses HTML from the clipboard', async () => {
    const grid = await GridDriver.open(pages);
    await grid.page.evaluate(() =>
      navigator.clipboard.write([
        new ClipboardItem({
          'text/plain': new Blob(['plain <b>text</b>'], { type: 'text/plain' }),
          'text/html': new Blob(['<table><tr><td>from html</td></tr></table>'], { type: 'text/html' }),
        }),
      ]),
    );
    await grid.click(0, 'Food');
    await grid.press('Control+v');
    expect(await grid.value('lot1', 'food')).toBe('plain <b>text</b>');
    const cell = await grid.cell(0, 'Food');
    expect(await cell.textContent()).toBe('plain <b>text</b>');
    expect(await cell.locator('b').count()).toBe(0);
  });

  it('fills a selection that holds it several times over', async () => {
    const grid = await GridDriver.open(pages);
    await grid.otherProgramCopies('Attic');
    await grid.select([0, 'Kept where'], [3, 'Kept where']);
    await grid.press('Control+v');
    expect((await grid.shown('Kept where')).slice(0, 4)).toEqual(['Attic', 'Attic', 'Attic', 'Attic']);
  });
});

describe('pasting a copy of this grid', () => {
  const withFormula = async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.click(0, 'Gamma');
    await grid.type('=B1*2+$B$1');
    await grid.press('Enter');
    await expect.poll(() => grid.shown('Gamma')).toEqual(['30', '', '', '', '']);
    return grid;
  };

  it('keeps formulas, shifted, with what `$` holds left in place', async () => {
    const grid = await withFormula();
    await grid.press('ArrowUp', 'Control+c');
    await grid.click(2, 'Gamma');
    await grid.press('Control+v');
    expect(await grid.typed('row3', 'cc')).toBe('=B3*2+$B$1');
    expect((await grid.shown('Gamma'))[2]).toBe('70');
  });

  it('moves formulas that were cut as they are', async () => {
    const grid = await withFormula();
    await grid.press('ArrowUp', 'Control+x');
    await grid.click(2, 'Gamma');
    await grid.press('Control+v');
    expect(await grid.typed('row3', 'cc')).toBe('=B1*2+$B$1');
    expect(await grid.typed('row1', 'cc')).toBe(null);
  });

  it('shifts into rows that the paste makes', async () => {
    const grid = await withFormula();
    await grid.select([0, 'Alpha'], [0, 'Gamma']);
    await grid.press('Control+c');
    await grid.click(4, 'Alpha');
    await grid.press('Control+v');
    const row = (await grid.rowIds())[4]!;
    expect(await grid.typed(row, 'cc')).toBe('=B5*2+$B$1');
    expect((await grid.shown('Gamma'))[4]).toBe('30');
  });

  it('shifts by rows of the book while sorted', async () => {
    const grid = await withFormula();
    await grid.chooseInHeader('Alpha', 'Sort largest');
    expect((await grid.shown('Alpha')).slice(0, 4)).toEqual(['4', '3', '2', '1']);
    await grid.click(3, 'Gamma');
    await grid.press('Control+c');
    await grid.click(0, 'Gamma');
    await grid.press('Control+v');
    expect(await grid.typed('row4', 'cc')).toBe('=B4*2+$B$1');
  });
});
