import { describe, expect, it } from 'vitest';
import { GridDriver } from './harness/grid-driver.js';
import { usePages } from './harness/pages.js';

const pages = usePages();

describe('changes that come from elsewhere', () => {
  it('are painted, and the selection stays on its cell when rows and columns come and go', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.click(2, 'Beta');
    await grid.page.evaluate(() => {
      const { live } = window.grid;
      live.insertRows('own1', [{ ca: 'new' }, {}], 'row1');
      live.addColumn('own1', 'Fresh', { before: 'ca' });
      live.removeRows('own1', ['row2']);
    });
    expect(await grid.selection()).toEqual({ row: 'row3', column: 'cb' });
    expect(await grid.shown('Alpha')).toEqual(['new', '', '1', '3', '4', '']);
    await grid.type('5');
    await grid.press('Enter');
    expect(await grid.value('row3', 'cb')).toBe(5);
  });

  it('do not disturb a cell that is being edited', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.click(2, 'Beta');
    await grid.type('12');
    await grid.page.evaluate(() => window.grid.live.insertRows('own1', [{ ca: 'new' }], 'row1'));
    await grid.type('3');
    await grid.press('Enter');
    expect(await grid.value('row3', 'cb')).toBe(123);
    expect(await grid.shown('Beta')).toEqual(['', '10', '20', '123', '40', '']);
    expect(await grid.value('row2', 'cb')).toBe(20);
  });

  it('drop what is typed into a row that is gone, and change no other', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    await grid.click(2, 'Beta');
    await grid.type('12');
    await grid.page.evaluate(() => window.grid.live.removeRows('own1', ['row3']));
    await grid.press('Enter');
    expect(await grid.shown('Beta')).toEqual(['10', '20', '40', '']);
    expect(await grid.rowIds()).toEqual(['row1', 'row2', 'row4']);
  });

  it('paint once for a change, and not at all for a change of another sheet', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'own1' });
    const paints = (change: string) =>
      grid.page.evaluate((each) => {
        const { live } = window.grid;
        const cell = document.querySelector('#home')!.shadowRoot!.querySelector('.ht_master td')!;
        let count = 0;
        const watcher = new MutationObserver(() => {});
        watcher.observe(cell, { childList: true, characterData: true, attributes: true, subtree: true });
        if (each === 'here') live.set('own1', 'row1', 'ca', 55);
        else live.set('shelf', 'lot1', 'note', 'hello');
        count = watcher.takeRecords().filter(({ type }) => type === 'childList').length;
        watcher.disconnect();
        return count;
      }, change);
    expect(await paints('elsewhere')).toBe(0);
    expect(await paints('here')).toBe(1);
  });
});

describe('a sheet with no row', () => {
  it('shows the blank line, and the first row is typed there', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'household' });
    expect(await grid.shown('Name')).toEqual(['']);
    await grid.click(0, 'Name');
    await grid.type('Ada');
    await grid.press('Tab');
    await grid.type('1');
    await grid.press('Enter');
    expect(await grid.shown('Name')).toEqual(['Ada', '']);
    expect(await grid.shown('Part of the table')).toEqual(['100', '']);
  });

  it('goes back to it by undo', async () => {
    const grid = await GridDriver.open(pages, { sheet: 'household' });
    await grid.click(0, 'Name');
    await grid.type('Ada');
    await grid.press('Enter', 'Control+z');
    expect(await grid.shown('Name')).toEqual(['']);
    await grid.press('Control+y');
    expect(await grid.shown('Name')).toEqual(['Ada', '']);
  });
});

describe('what the element does with a grid', () => {
  it('puts the selection on a cell and types into it', async () => {
    const grid = await GridDriver.open(pages);
    await grid.page.evaluate(() => {
      window.grid.view.focus({ row: 'lot4', column: 'count' });
      window.grid.view.type('6');
    });
    await grid.type('5');
    await grid.press('Enter');
    expect(await grid.value('lot4', 'count')).toBe(65);
    expect(await grid.page.evaluate(() => window.grid.selected)).toEqual({ row: 'lot5', column: 'count' });
  });

  it('takes it away without leaving anything in the page', async () => {
    const grid = await GridDriver.open(pages);
    await grid.click(0, 'Food', { button: 'right' });
    await grid.press('Escape');
    const left = await grid.page.evaluate(async () => {
      const { view } = window.grid;
      view.destroy();
      const found = {
        portals: document.querySelectorAll('croft-grid-menus, .ht-portal').length,
        inside: document.querySelector('#home')!.shadowRoot!.querySelectorAll('.croft-grid').length,
        rules:
          document.querySelector<HTMLStyleElement>('#handsontable-core-styles')?.sheet?.cssRules.length ?? 0,
      };
      await window.grid.start({});
      return found;
    });
    expect(left).toEqual({ portals: 0, inside: 0, rules: 0 });
  });

  it('shows many rows, and the last ones when scrolled to', async () => {
    const grid = await GridDriver.open(pages, { many: 2000 });
    await grid.click(0, 'Food');
    await grid.press('Control+ArrowDown', 'Control+ArrowDown');
    await grid.type('At the end');
    await grid.press('Enter');
    const ids = await grid.rowIds();
    expect(await grid.value(ids.at(-1)!, 'food')).toBe('At the end');
    expect(ids).toHaveLength(2006);
  });
});
