import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { type ElementsManifest, elementsManifest } from '../../components/package/manifest.mjs';
import { elementsOf } from '../../demo/guide/build/elements-page.js';
import { bookOf, pasted } from '../../demo/guide/build/gallery-page.js';
import { SNIPPETS, snippet } from '../../demo/guide/build/snippet.js';
import { READY_SHEETS } from '../../demo/guide/gallery.js';
import { quarts, weeksLeft } from '../../demo/guide/snippets/node.js';
import { shelfHtml } from '../../demo/guide/snippets/server.js';
import { embedOf, openBook, parseBook } from '../../src/core.js';

const cellar = readFileSync('demo/data/our-cellar.json', 'utf8');

let manifest: ElementsManifest;
beforeAll(async () => {
  manifest = await elementsManifest();
});

/** Data inside a snippet, if there is any. */
const dataIn = (html: string): string | undefined =>
  /<script type="application\/json">([\s\S]*?)<\/script>/.exec(html)?.[1];

/** Attributes of the elements of ours in a snippet. */
const written = (
  html: string,
): (readonly [tag: string, attributes: readonly (readonly [string, string])[]])[] =>
  [...html.matchAll(/<(croft-[\w-]+)([^>]*)>/g)].map(([, tag = '', rest = '']) => [
    tag,
    [...rest.matchAll(/([\w-]+)(?:="([^"]*)")?/g)].map(([, name = '', value = '']) => [name, value] as const),
  ]);

describe('code for Node and servers', () => {
  it('does what the page says', () => {
    expect(weeksLeft(cellar)).toEqual(
      new Map([
        ['tomatoes', 8],
        ['applesauce', expect.closeTo(29.33, 2)],
        ['carrots', 18],
        ['potatoes', 25],
      ]),
    );
    expect(weeksLeft('{}')).toMatchObject([{ code: expect.any(String), mend: expect.any(String) }]);
    expect(quarts).toBeCloseTo(17 + 2 / 3, 6);
  });

  it('writes a table that needs no script', () => {
    const html = shelfHtml(cellar);
    expect(html).toContain('<table');
    expect(html).toContain('tomatoes');
    expect(() => shelfHtml('{}')).toThrow();
  });
});

describe('snippets of HTML', () => {
  const all = Object.entries(SNIPPETS).filter(([name]) => name.endsWith('.html'));

  it.each(all)('%s uses only attributes that there are', (_name, html) => {
    for (const [tag, attributes] of written(html)) {
      const known = elementsOf(manifest).find(({ tagName }) => tagName === tag)?.attributes ?? [];
      for (const [name] of attributes)
        if (name !== 'id')
          expect(
            known.map((each) => each.name),
            `${tag} ${name}`,
          ).toContain(name);
    }
  });

  it('bring books that can be read', () => {
    const parsed = parseBook(dataIn(snippet('blog-json.html')));
    expect(parsed.ok || parsed.problems).toBe(true);
  });
});

describe('the ready sheets', () => {
  it('are ten, each with a name of its own', () => {
    expect(READY_SHEETS).toHaveLength(10);
    expect(new Set(READY_SHEETS.map(({ id }) => id)).size).toBe(10);
  });

  it.each(READY_SHEETS.map((each) => [each.id, each] as const))(
    '%s is a book that shows figures',
    (id, ready) => {
      const parsed = parseBook(dataIn(pasted(ready)));
      if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
      expect(parsed.book).toEqual(JSON.parse(JSON.stringify(parseBook(bookOf(ready)).ok && parsed.book)));
      expect(JSON.parse(bookOf(ready))).toMatchObject({ id });
      const live = openBook(parsed.book);
      const { table } = embedOf(live, ready.sheet, { columns: ready.columns, open: ready.open });
      expect(table.columns.map((column) => column.id)).toEqual(ready.columns);
      expect(table.columns.filter(({ open }) => open).map((column) => column.id)).toEqual(ready.open);
      const texts = table.rows.flatMap(({ cells }) =>
        cells.map((cell) => (typeof cell === 'string' ? cell : cell.text)),
      );
      expect(texts.filter((text) => text.startsWith('#'))).toEqual([]);
      // Every column shows something somewhere.
      for (const [i, column] of ready.columns.entries())
        expect(
          table.rows.some(({ cells }) => cells[i] !== ''),
          column,
        ).toBe(true);
      live.close();
    },
  );

  it('bring the usual caution wherever jars, eggs or dried food show', () => {
    const cautionsOf = (id: string): string => {
      const ready = READY_SHEETS.find((each) => each.id === id)!;
      const parsed = parseBook(bookOf(ready));
      if (!parsed.ok) return '';
      const live = openBook(parsed.book);
      const { table } = embedOf(live, ready.sheet, { columns: ready.columns });
      live.close();
      return [...table.cautions, pasted(ready).split('</croft-embed>')[1]].join(' ');
    };
    expect(cautionsOf('canning-tally')).toMatch(/tested process.*pressure canner/s);
    expect(cautionsOf('jar-and-lid-count')).toMatch(/lids.*tested process/s);
    expect(cautionsOf('freezer-list')).toContain('not safe until');
    expect(cautionsOf('dry-store')).toContain('moisture');
    expect(cautionsOf('egg-and-feed')).toContain('raw egg');
    expect(cautionsOf('herb-drying')).toContain('moisture');
  });
});
