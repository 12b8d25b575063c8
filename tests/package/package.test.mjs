// `npm run test:package`: the packed package, used as its users would use it.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { build } from 'vite';
import { staticParts, total } from './static-parts.mjs';
import { repository, unpack } from './unpacked.mjs';

/** Bytes under gzip before a reader does anything. */
const EMBED_BUDGET = 30_000;

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
  for (const file of [...named, 'LICENSE', 'NOTICE', 'README.md'])
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

test('types hold for those who write in TypeScript, JSX and tag names included', () => {
  writeFileSync(
    join(package_.at, 'use.tsx'),
    `import { evaluate, openBook, parseBook, embedOf } from 'croftsheet/core';
     import { CroftSheet } from 'croftsheet/croft-sheet';
     import 'croftsheet/embed';
     import 'croftsheet/jsx';
     declare const React: { createElement: unknown };
     const sheet: CroftSheet | null = document.querySelector('croft-sheet');
     const keepAs: string | null | undefined = document.querySelector('croft-embed')?.keepName;
     const parsed = parseBook('{}');
     if (parsed.ok) { const html: string = embedOf(openBook(parsed.book), 'shelf').html; console.log(html); }
     console.log(evaluate('=1'), sheet?.columns, keepAs, <croft-sheet sheet="shelf" read-only />);
     // @ts-expect-error there is no such attribute
     console.log(<croft-sheet shet="shelf" />);`,
  );
  execFileSync(
    process.execPath,
    [
      join(repository, 'node_modules/typescript/bin/tsc'),
      ...'--noEmit --strict --skipLibCheck --module nodenext --target es2022 --jsx react'.split(' '),
      ...['--lib', 'es2023,dom,dom.iterable', 'use.tsx'],
    ],
    { cwd: package_.at, stdio: 'pipe' },
  );
});

test('the embedded sheet stays within its budget before a reader does anything, in one file', () => {
  const parts = staticParts(join(package_.inside, 'dist/croftsheet-embed.js'));
  assert.equal(parts.size, 1);
  assert.ok(total(parts) <= EMBED_BUDGET, `${total(parts)} bytes`);
  console.log(`croftsheet-embed.js: ${total(parts)} bytes under gzip before interaction`);
});

test('integrity.json names every script with its own hash', () => {
  const hashes = JSON.parse(readFileSync(join(package_.inside, 'dist/integrity.json'), 'utf8'));
  assert.ok(Object.keys(hashes).length > 20);
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

test('a bundler makes a page of it', async () => {
  writeFileSync(join(package_.at, 'index.html'), '<script type="module" src="./app.js"></script>');
  writeFileSync(join(package_.at, 'app.js'), "import 'croftsheet/embed'; import 'croftsheet/croft-book';");
  await build({ root: package_.at, configFile: false, logLevel: 'error', build: { minify: false } });
  assert.ok(existsSync(join(package_.at, 'dist/index.html')));
});
