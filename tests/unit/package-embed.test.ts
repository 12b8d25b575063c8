import { describe, expect, test } from 'vitest';
import { blankBook, parseBook } from '../../src/book/index.js';
import { embedOf, shownTable } from '../../src/live/embed/index.js';
import { openBook } from '../../src/live/live-book.js';
import { demoBook } from '../browser/embed-make.js';

const dataIn = (html: string): string =>
  /<script type="application\/json">([\s\S]*?)<\/script>/.exec(html)?.[1] ?? '';

describe('A sheet for a web page', () => {
  test('shows the same figures from the part of the book that goes along as from all of it', () => {
    const live = demoBook();
    for (const { id, kind } of live.sheets()) {
      const { html, table } = embedOf(live, id, { open: live.columns(id).map((column) => column.id) });
      if (dataIn(html) === '') continue;
      const parsed = parseBook(dataIn(html));
      if (!parsed.ok) throw new Error(parsed.problems[0]!.message);
      const again = openBook(parsed.book);
      const rows = shownTable(again, id, { columns: table.columns.map((column) => column.id) }).rows;
      expect(rows, kind).toEqual(table.rows);
      // And as the book is tried: the same edit comes to the same figures.
      if (kind !== 'shelf') continue;
      const [row] = live.rowIds('shelf');
      const [one, two] = [demoBook(), again];
      for (const each of [one, two]) each.set('shelf', row!, 'count', 90);
      expect(shownTable(two, 'shelf').rows).toEqual(
        shownTable(one, 'shelf', { columns: shownTable(two, 'shelf').columns.map((c) => c.id) }).rows,
      );
    }
  });

  test('leaves at home what no figure needs: names, notes, places, sheets of one’s own', () => {
    const live = demoBook();
    live.apply({ do: 'add sheet', sheet: 'private', title: 'Letters' });
    const secret = 'nobody else’s business';
    const [lot] = live.rowIds('shelf');
    live.set('shelf', lot!, 'note', secret);
    const people = live.rowIds('household').map((row) => String(live.value('household', row, 'name')));
    const { html, goesAlong } = embedOf(live, 'shelf', {
      columns: ['food', 'count', 'left'],
      open: ['count'],
    });
    expect(goesAlong).toContain('Draws');
    expect(html).not.toContain(secret);
    expect(html).not.toContain('Letters');
    expect(people.length).toBeGreaterThan(3);
    for (const name of people) expect(dataIn(html)).not.toContain(`"${name}"`);
  });

  test('takes no book along where nothing is open to readers', () => {
    const { html, goesAlong } = embedOf(demoBook(), 'shelf', { columns: ['food', 'left'] });
    expect(dataIn(html)).toBe('');
    expect(goesAlong).toEqual([]);
  });

  test('planning columns are never opened', () => {
    const { table } = embedOf(demoBook(), 'shelf', { open: ['count', 'left', 'best_by'] });
    expect(table.columns.filter(({ open }) => open).map(({ id }) => id)).toEqual(['count']);
  });

  test('what people wrote cannot leave its place in the HTML', () => {
    const nasty = '</script><!--<script>alert(1)</script> "quoted" & \'single\' <b>';
    const live = openBook(blankBook(nasty));
    const { rows } = live.insertRows('shelf', [{ food: nasty, count: 3 }]);
    const { html } = embedOf(live, 'shelf', { title: nasty, keepAs: nasty, open: ['count', 'food'] });
    expect(html.match(/<script|<\/script/g)).toHaveLength(2);
    expect(html).not.toContain('<!--');
    expect(html).not.toContain('<b>');
    const parsed = parseBook(dataIn(html));
    expect(parsed.ok && parsed.book.sheets.shelf!.rows[rows[0]!]!.cells.food).toBe(nasty.trim());
  });

  test('the figures stay those of the day', () => {
    const live = openBook(blankBook(), { today: () => 20_000 });
    live.insertRows('shelf', [{ food: 'carrots', count: 3 }]);
    const { table, book } = embedOf(live, 'shelf', { open: ['count'] });
    expect(book.settings.as_of).toBe(table.day);
    expect(table.day).toBe(new Date(20_000 * 86_400_000).toISOString().slice(0, 10));
  });
});
