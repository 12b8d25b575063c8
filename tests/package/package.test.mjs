// `npm run test:package`: the packed package, used as its users would use it.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { after, before, test } from 'node:test';
import { build } from 'vite';
import { staticParts, total } from './static-parts.mjs';
import { repository, unpack } from './unpacked.mjs';

/** Most bytes under gzip of what loads before anyone does anything. */
const BUDGETS = {
  'croftsheet-embed.js': 30_000,
  'one-file/croftsheet-reading.js': 560_000,
};

const TEXTS = ['LICENSE', 'NOTICE', 'README.md', 'dist/CHANGELOG.md'];

let package_;
before(() => {
  package_ = unpack();
});
after(() => package_?.remove());

const node = (script) =>
  execFileSync(process.execPath, ['--input-type=module', '-e', script], {
    cwd: package_.at,
    encoding: 'utf8',
  });

/** Names by which the package's scripts are imported. */
const scripts = () =>
  Object.entries(package_.exports)
    .filter(([, to]) => typeof to === 'object')
    .map(([name]) => name.replace('.', 'croftsheet'));

test('every file that the package names is in it, with its licence', () => {
  const named = Object.values(package_.exports).flatMap((to) =>
    typeof to === 'string' ? to : Object.values(to),
  );
  for (const file of [...named.filter((each) => !each.includes('*')), ...TEXTS])
    assert.ok(existsSync(join(package_.inside, file)), file);
});

test('every entry can be imported where there is no page', () => {
  const said = node(
    `for (const name of ${JSON.stringify(scripts())}) await import(name);
     const { evaluate } = await import('croftsheet/core');
     console.log(evaluate('=6*7'));`,
  );
  assert.equal(said.trim().split('\n').at(-1), '42');
});

test('every entry can be required, as the README says', () => {
  const said = execFileSync(
    process.execPath,
    [
      '-p',
      `${JSON.stringify(scripts())}.map((name) => require(name)).length, require('croftsheet/core').evaluate('=6*7')`,
    ],
    { cwd: package_.at, encoding: 'utf8' },
  );
  assert.equal(said.trim(), '42');
});

test('types hold for those who write in TypeScript, JSX and tag names included', () => {
  writeFileSync(
    join(package_.at, 'use.tsx'),
    `import { evaluate, openBook, parseBook, embedOf } from 'croftsheet/core';
     import { CroftEmbed, defineElements } from 'croftsheet/classes';
     import { CroftSheet } from 'croftsheet/croft-sheet';
     import 'croftsheet/embed';
     import 'croftsheet/jsx';
     declare const React: { createElement: unknown };
     const sheet: CroftSheet | null = document.querySelector('croft-sheet');
     const keepAs: string | null | undefined = document.querySelector('croft-embed')?.keepName;
     const parsed = parseBook('{}');
     if (parsed.ok) { const html: string = embedOf(openBook(parsed.book), 'shelf').html; console.log(html); }
     class OurShelf extends CroftEmbed { override get sheet(): string { return 'shelf'; } }
     customElements.define('our-shelf', OurShelf); defineElements();
     document.querySelector('croft-embed')?.addEventListener('croft-try', ({ detail }) => { const row: string = detail.row; console.log(row); });
     document.addEventListener('croft-ready', ({ detail }) => { const key: string | null = detail.key; console.log(key, detail.live.title); });
     addEventListener('croft-week', ({ detail }) => { const day: string = detail; console.log(day); });
     // @ts-expect-error there is no such thing in it
     addEventListener('croft-show', ({ detail }) => console.log(detail.nothing));
     console.log(evaluate('=1'), sheet?.columns, keepAs, <croft-sheet sheet="shelf" read-only />);
     console.log(<croft-book keep oncroft-change={({ detail }) => console.log(detail.label)} />, <croft-lesson level={2} />);
     console.log(<croft-embed role="group" on:croft-try={({ detail }) => console.log(detail.text)} dangerouslySetInnerHTML={{ __html: '' }} />);
     // @ts-expect-error there is no such attribute
     console.log(<croft-sheet shet="shelf" />);`,
  );
  // What the guide shows, word for word.
  const shown = (name) => readFileSync(join(repository, 'demo/guide/snippets', name), 'utf8');
  const files = ['component.tsx', 'entries.ts', 'events.ts', 'later.ts', 'node.ts', 'server.ts'];
  for (const name of files) {
    const react = name.endsWith('.tsx') ? '\ndeclare const React: { createElement: unknown };' : '';
    writeFileSync(join(package_.at, name), shown(react ? `${name}.txt` : name) + react);
  }
  execFileSync(
    process.execPath,
    [
      join(repository, 'node_modules/typescript/bin/tsc'),
      ...'--noEmit --strict --skipLibCheck --module nodenext --target es2022 --jsx react'.split(' '),
      ...['--lib', 'es2023,dom,dom.iterable', 'use.tsx', ...files],
    ],
    { cwd: package_.at, stdio: 'pipe' },
  );
});

test('the files that stand alone are one file each, within their budgets', () => {
  for (const [name, budget] of Object.entries(BUDGETS)) {
    const parts = staticParts(join(package_.inside, 'dist', name));
    assert.equal(parts.size, 1, name);
    assert.ok(total(parts) <= budget, `${name}: ${total(parts)} bytes`);
    console.log(`${name}: ${total(parts)} bytes under gzip before interaction`);
  }
});

test('grid and engine are in files of their own, and in no others that a page reads with', () => {
  const made = (name) => {
    const { sources } = JSON.parse(readFileSync(join(package_.inside, 'dist', `${name}.map`), 'utf8'));
    return sources.filter((each) => /node_modules\/(?:handsontable|hyperformula|chevrotain)\//.test(each));
  };
  for (const name of ['croftsheet-embed.js', 'one-file/croftsheet-reading.js'])
    assert.deepEqual(made(name), [], name);
  assert.ok(made('one-file/grid.js').every((each) => each.includes('/handsontable/')));
  assert.ok(made('one-file/grid.js').length > 0);
  assert.ok(made('one-file/engine.js').length > 0);
  assert.deepEqual(made('one-file/german.js'), []);
  const atOnce = [...staticParts(join(package_.inside, 'dist/croftsheet.js')).keys()];
  for (const file of atOnce.filter((each) => existsSync(`${each}.map`)))
    assert.deepEqual(made(relative(join(package_.inside, 'dist'), file)), [], file);
});

test('what a grid is first drawn with brings no book along', () => {
  const parts = join(package_.inside, 'dist/parts');
  const [first] = readdirSync(parts).filter((each) => /^grid-first-.*\.js$/.test(each));
  const brought = [...staticParts(join(parts, first)).keys()].map((each) => relative(parts, each));
  assert.deepEqual(
    brought.filter((each) => /^(book|look|croft)-/.test(each)),
    [],
  );
});

test('every script that holds something has its source map, with the sources in it', () => {
  const dist = join(package_.inside, 'dist');
  const scripts = readdirSync(dist, { recursive: true }).filter((each) => each.endsWith('.js'));
  const without = scripts.filter((each) => !existsSync(join(dist, `${each}.map`)));
  // Those name what others hold; helpers that the build puts in have no source.
  for (const each of without.filter((name) => !/(?:rolldown-runtime|decorate|loops)-[^/]*$/.test(name)))
    assert.match(
      readFileSync(join(dist, each), 'utf8'),
      /^(?:(?:import|export)[^;]*;|var [^;]*;|[\w$]+\(\);|export\{[^}]*\};|\s)*$/,
      each,
    );
  const map = JSON.parse(readFileSync(join(dist, 'croftsheet-embed.js.map'), 'utf8'));
  assert.ok(map.sourcesContent.some((each) => each?.includes('class CroftEmbed')));
});

test('the guide’s command answers the hash of the embedded sheet', () => {
  const command = join(repository, 'demo/guide/snippets/integrity.sh');
  const said = execFileSync('sh', [command], { cwd: package_.at, encoding: 'utf8' });
  const hashes = JSON.parse(readFileSync(join(package_.inside, 'dist/integrity.json'), 'utf8'));
  assert.equal(said.trim(), hashes['croftsheet-embed.js']);
});

test('the package brings its list of changes', () => {
  const { version } = JSON.parse(readFileSync(join(package_.inside, 'package.json'), 'utf8'));
  assert.match(
    readFileSync(join(package_.inside, 'dist/CHANGELOG.md'), 'utf8'),
    new RegExp(`^## ${version} \\(`, 'm'),
  );
});

test('integrity.json names everything that a page may load, with its own hash', () => {
  const hashes = JSON.parse(readFileSync(join(package_.inside, 'dist/integrity.json'), 'utf8'));
  const loaded = readdirSync(join(package_.inside, 'dist'), { recursive: true }).filter(
    (each) => /\.(?:js|css|html)$/.test(each) && !/^(?:server|types)\//.test(each),
  );
  assert.ok(loaded.length > 20);
  assert.deepEqual(
    loaded.filter((each) => !hashes[each]),
    [],
  );
  for (const [name, hash] of Object.entries(hashes)) {
    const found = createHash('sha384')
      .update(readFileSync(join(package_.inside, 'dist', name)))
      .digest('base64');
    assert.equal(hash, `sha384-${found}`, name);
  }
});

test('the manifest describes every element, where the package has it', () => {
  const manifest = JSON.parse(readFileSync(join(package_.inside, 'dist/custom-elements.json'), 'utf8'));
  const described = manifest.modules.flatMap(({ path, declarations }) =>
    declarations.map(({ tagName }) => [tagName, path]),
  );
  const entries = Object.entries(package_.exports).filter(([name]) => name.startsWith('./croft-'));
  for (const [name, { default: file }] of entries)
    assert.deepEqual(
      described.filter(([tag]) => tag === name.slice(2)),
      [[name.slice(2), file.slice(2)]],
    );
});

test('what an attribute means stands in the types with its property, and each event has its type', () => {
  const manifest = JSON.parse(readFileSync(join(package_.inside, 'dist/custom-elements.json'), 'utf8'));
  const elements = manifest.modules.flatMap(({ declarations }) => declarations);
  for (const { tagName, events = [], attributes = [] } of elements) {
    for (const { name, type } of events)
      assert.match(type?.text ?? '', /^CustomEvent</, `${tagName} ${name}`);
    const { types } = package_.exports[`./${tagName}`];
    const files = [types, types.replace('croft-embed.d.ts', 'embed-attributes.d.ts')];
    const text = files.map((each) => readFileSync(join(package_.inside, each), 'utf8')).join('');
    for (const { fieldName } of attributes.filter((each) => each.fieldName))
      assert.match(
        text,
        new RegExp(`\\*/\\n +(?:get )?${fieldName}(?:\\(\\))?: `),
        `${tagName} ${fieldName}`,
      );
  }
});

test('a bundler makes a page of it', async () => {
  writeFileSync(join(package_.at, 'index.html'), '<script type="module" src="./app.js"></script>');
  writeFileSync(join(package_.at, 'app.js'), "import 'croftsheet/embed'; import 'croftsheet/croft-book';");
  await build({ root: package_.at, configFile: false, logLevel: 'error', build: { minify: false } });
  assert.ok(existsSync(join(package_.at, 'dist/index.html')));
});
