import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import changes from '../../components/package/changes.json';
import { ELEMENT_ENTRIES } from '../../components/package/entries.mjs';
import { type ElementsManifest, elementsManifest } from '../../components/package/manifest.mjs';
import { KINDS_SHOWN, workingIn } from '../../demo/guide/build/columns-page.js';
import { elementsOf } from '../../demo/guide/build/elements-page.js';
import { pageOf } from '../../demo/guide/build/pages.js';
import { problemGroups } from '../../demo/guide/build/problems-page.js';
import { ENTRIES } from '../../demo/guide/build/site.js';
import { live, SNIPPETS } from '../../demo/guide/build/snippet.js';
import { KINDS, SETTINGS } from '../../src/book/index.js';
import { functions } from '../../src/formulas/index.js';
import { PROBLEM_CODES } from '../../src/problem-codes.js';
import { CONTAINERS, UNITS } from '../../src/units/index.js';

let manifest: ElementsManifest;
const pages = new Map<string, string>();
const page = (file: string): string => pages.get(file) ?? '';

beforeAll(async () => {
  manifest = await elementsManifest();
  for (const { file } of ENTRIES) pages.set(file, pageOf(file, manifest).body);
}, 120_000);

const SIGNS: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };
const unescaped = (html: string): string =>
  html.replace(/&(amp|lt|gt|quot|#39);/g, (_all, sign: string) => SIGNS[sign] ?? '');

/** What runs on a page, and the code that stands below it. */
function examples(html: string): (readonly [running: string, shown: string])[] {
  return html
    .split('<div class="example">')
    .slice(1)
    .map((part) => {
      const code = part.indexOf('<pre');
      const running = part.slice(part.indexOf('>') + 1, code);
      const inside = /<template>([\s\S]*)<\/template>/.exec(running)?.[1] ?? running;
      const shown = /<code>([\s\S]*?)<\/code>/.exec(part.slice(code))?.[1] ?? '';
      return [
        inside.replace(/<\/div>\s*(?:<details><summary>[^<]*<\/summary>)?<div class="code">\s*$/, ''),
        unescaped(shown),
      ];
    });
}

describe('the pages of the guide', () => {
  it('are those that the navigation leads to, and each is a file', () => {
    const files = readdirSync('demo/guide').filter((name) => name.endsWith('.html') && name !== 'embed.html');
    expect(files.sort()).toEqual(ENTRIES.map(({ file }) => file).sort());
    for (const { file } of ENTRIES) {
      expect(page(file).match(/aria-current="page"/g), file).toHaveLength(1);
      expect(page(file).match(/<h1>/g), file).toHaveLength(1);
    }
  });

  it('have no link that leads nowhere, and no id twice', () => {
    const ids = new Map(
      [...pages].map(([file, html]) => [file, [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id)]),
    );
    for (const [file, all] of ids)
      expect([file, all.filter((id, i) => all.indexOf(id) !== i)]).toEqual([file, []]);
    const wrong = [...pages].flatMap(([file, html]) =>
      [...html.matchAll(/<a [^>]*href="([^"]+)"/g)]
        .map(([, href = '']) => href)
        .filter((href) => {
          const [path = '', anchor] = href.split('#');
          if (path.startsWith('../')) return !readdirSync('demo').includes(path.slice(3));
          const to = path === '' ? file : path.replace('./', '');
          return (
            !ids.has(to) || (anchor !== undefined && !['content', ...(ids.get(to) ?? [])].includes(anchor))
          );
        })
        .map((href) => `${file}: ${href}`),
    );
    expect(wrong).toEqual([]);
  });

  it('run the very code that they show', () => {
    const all = [...pages.values()].flatMap(examples);
    expect(all.length).toBeGreaterThan(30);
    for (const [running, shown] of all) expect(running.trim()).toBe(live(shown).trim());
  });

  it('use every snippet', () => {
    const text = unescaped([...pages.values()].join('\n'));
    const unused = Object.entries(SNIPPETS).filter(
      ([, code]) => !text.includes(code) && !text.includes(live(code)),
    );
    expect(unused.map(([name]) => name)).toEqual([]);
  });
});

describe('the page of elements', () => {
  it('has a live example of every element that is offered', () => {
    const shown = examples(page('elements.html')).map(([running]) => running);
    for (const tag of Object.keys(ELEMENT_ENTRIES))
      expect(
        shown.some((html) => html.includes(`<${tag}`)),
        tag,
      ).toBe(true);
  });

  it('names every tag that the types of the package know', () => {
    const sources = readdirSync('components', { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => readFileSync(`components/${name}`, 'utf8'));
    const tags = sources.flatMap((source) =>
      [...source.matchAll(/interface HTMLElementTagNameMap \{([^}]*)\}/g)].flatMap(([, inside = '']) =>
        [...inside.matchAll(/'(croft-[\w-]+)'/g)].map(([, tag]) => tag),
      ),
    );
    expect(tags.length).toBeGreaterThan(40);
    const text = unescaped(page('elements.html'));
    expect(
      tags.filter((tag) => !text.includes(`<code>${tag}</code>`) && !text.includes(`<code><${tag}></code>`)),
    ).toEqual([]);
  });

  it('tells every attribute, event and part that a doc block names', () => {
    for (const { tagName, description, attributes = [], events = [], cssParts = [] } of elementsOf(
      manifest,
    )) {
      const text = page('elements.html').split(`id="${tagName}"`)[1]?.split('</section>')[0] ?? '';
      expect(description, tagName).toBeTruthy();
      for (const { name } of [...attributes, ...events, ...cssParts])
        expect(text, `${tagName} ${name}`).toContain(`<code>${name}</code>`);
    }
  });
});

describe('the references', () => {
  it('have every function with its arguments, its steps and what can go wrong', () => {
    for (const { name, arguments: args, example } of functions) {
      const text = unescaped(
        page('functions.html').split(`<h3 id="${name}">`)[1]?.split('</section>')[0] ?? '',
      );
      expect(text, name).toContain(example.formula);
      for (const arg of args) expect(text, `${name} ${arg.name}`).toContain(`<code>${arg.name}</code>`);
      expect(text.match(/<ol class="steps"><li>/), name).not.toBeNull();
      expect(text, name).toContain('What can go wrong');
    }
  });

  it('have every problem code once, under its heading', () => {
    const codes = problemGroups().flatMap(([, each]) => each);
    expect(codes.sort()).toEqual(Object.keys(PROBLEM_CODES).sort());
  });

  it('say of every planning column how it is worked out', () => {
    const silent = KINDS_SHOWN.flatMap((kind) =>
      KINDS[kind].columns
        .filter(({ role, id }) => role === 'planning' && !workingIn(kind, id)?.rule)
        .map(({ id }) => `${kind} ${id}`),
    );
    expect(silent).toEqual([]);
    for (const kind of KINDS_SHOWN)
      for (const { id } of KINDS[kind].columns)
        expect(page('columns.html'), `${kind} ${id}`).toContain(`<code>${id}</code>`);
    for (const { id } of SETTINGS) expect(page('columns.html')).toContain(`<code>${id}</code>`);
  });

  it('have every unit and every container', () => {
    for (const { id } of [...UNITS, ...CONTAINERS])
      expect(page('units.html')).toContain(`<th scope="row">${id}</th>`);
  });
});

describe('the list of changes', () => {
  it('begins with the version of the package, goes back from there, and gives ISO dates', () => {
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
    expect(changes[0]?.version).toBe(version);
    const dates = changes.map(({ date }) => date);
    for (const date of dates) expect(new Date(`${date}T00:00:00Z`).toISOString().slice(0, 10)).toBe(date);
    expect([...dates].sort().reverse()).toEqual(dates);
    for (const each of changes) expect(each.version).toMatch(/^\d+\.\d+\.\d+$/);
    expect(page('changes.html')).toContain(`id="v${version}"`);
  });
});
