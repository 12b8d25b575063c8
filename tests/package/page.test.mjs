// The built files on plain pages: no bundler, the strictest policy, hashes checked, in a frame that tells its height.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join } from 'node:path';
import { after, before, test } from 'node:test';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { findChromium } from '../browser/harness/find-chromium.mjs';
import { repository, unpack } from './unpacked.mjs';

const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; img-src 'self' data:; frame-src 'self'";
const TYPES = { '.js': 'text/javascript', '.html': 'text/html', '.json': 'application/json' };

let package_;
let browser;
let server;
let url;
const pages = new Map();

before(async () => {
  package_ = unpack();
  server = createServer((request, response) => {
    const { pathname } = new URL(request.url, 'http://localhost');
    let body = pages.get(pathname);
    try {
      // The same files stand under /copy/ once more, and under the name that the guide gives them.
      body ??= readFileSync(join(package_.inside, 'dist', pathname.replace(/^\/(?:copy|croftsheet)\//, '/')));
    } catch {
      response.writeHead(404).end();
      return;
    }
    const type = TYPES[extname(pathname)] ?? 'text/html';
    response.writeHead(200, { 'content-type': `${type}; charset=utf-8`, 'content-security-policy': POLICY });
    response.end(body);
  });
  await new Promise((done) => server.listen(0, '127.0.0.1', done));
  url = `http://127.0.0.1:${server.address().port}`;
  browser = await chromium.launch({
    executablePath: findChromium(),
    args: ['--no-sandbox', '--disable-gpu'],
  });
});

after(async () => {
  await browser?.close();
  server?.close();
  package_?.remove();
});

const EMBED = '<script type="module" src="croftsheet-embed.js"></script>';

const around = (title, body) =>
  `<!doctype html><html lang="en"><meta charset="utf-8"><title>${title}</title><link rel="icon" href="data:,">${body}`;

async function cellar(options = {}) {
  const { embedOf, openBook, parseBook } = await import(
    pathToFileURL(join(package_.inside, 'dist/core.js')).href
  );
  const parsed = parseBook(readFileSync(join(repository, 'demo/data/tamarack-bench.json'), 'utf8'));
  const live = openBook(parsed.book);
  const columns = ['food', 'count', 'left', 'weeks_of_supply'];
  return embedOf(live, 'shelf', {
    columns,
    open: ['count'],
    rows: live.rowIds('shelf').slice(0, 4),
    ...options,
  });
}

async function open(path, expected = /^$/, hear = () => {}, listen = () => {}) {
  const page = await browser.newPage();
  // A machine may have other work to do.
  page.setDefaultTimeout(120_000);
  const errors = [];
  const note = (text) => expected.test(text) || errors.push(text);
  page.on('pageerror', (error) => note(error.message));
  page.on('console', (message) => (message.type() === 'error' ? note(message.text()) : listen(message)));
  page.on('request', hear);
  await page.goto(url + path);
  return { page, errors };
}

const weeks = (within, element = 'croft-embed') =>
  within
    .locator(element)
    .evaluate((host) =>
      [...host.shadowRoot.querySelectorAll('tbody tr')].map((row) => row.cells[3].textContent),
    );

async function followsIn(within, keyboard, element) {
  const before = await weeks(within, element);
  assert.equal(before.length, 4);
  await within.getByLabel('Put up, Tomatoes').first().fill('90');
  await keyboard.press('Enter');
  for (let i = 0; i < 250; i++) {
    if ((await weeks(within, element))[0] !== before[0]) return;
    await new Promise((done) => setTimeout(done, 100));
  }
  assert.fail('the figures did not follow');
}

test('two lines pasted into a page work, with the script’s hash checked', async () => {
  const { html } = await cellar();
  const hashes = JSON.parse(readFileSync(join(package_.inside, 'dist/integrity.json'), 'utf8'));
  const hash = hashes['croftsheet-embed.js'];
  pages.set(
    '/blog',
    `<!doctype html><html lang="en"><meta charset="utf-8"><title>Blog</title><link rel="icon" href="data:,">
<script type="module" src="croftsheet-embed.js" integrity="${hash}"></script>\n${html}`,
  );
  const { page, errors } = await open('/blog');
  await followsIn(page, page.keyboard);
  assert.deepEqual(errors, []);
});

test('embed.html shows a file in a frame, and tells the page its height', async () => {
  const { json } = await cellar();
  pages.set('/cellar.json', json);
  pages.set(
    '/host.js',
    "addEventListener('message', ({ data }) => { if (data?.type === 'croftsheet-height') document.querySelector('iframe').height = data.height; });",
  );
  pages.set(
    '/host',
    '<!doctype html><html lang="en"><meta charset="utf-8"><title>Host</title><link rel="icon" href="data:,"><script src="host.js"></script><iframe width="700" height="50" title="Cellar" src="embed.html?src=cellar.json"></iframe>',
  );
  const { page, errors } = await open('/host');
  await page.waitForFunction(() => document.querySelector('iframe').clientHeight > 150);
  const frame = page.frames().find((each) => each.url().includes('embed.html'));
  const inside = await frame.evaluate(
    () => document.querySelector('croft-embed').getBoundingClientRect().height,
  );
  const outside = await page.evaluate(() => document.querySelector('iframe').clientHeight);
  assert.ok(Math.abs(inside - outside) <= 1, `${inside} in ${outside}`);
  await followsIn(frame, page.keyboard);
  assert.deepEqual(errors, []);
});

test('works where the page’s scripts have added to every object, as a grid and with formulas too', async () => {
  const { html } = await cellar({ gridLicenceKey: 'non-commercial-and-evaluation' });
  pages.set(
    '/additions.js',
    'for (const each of [Object, Array, Function]) each.prototype.each = each.prototype.extend = function () { return this; };',
  );
  pages.set('/added', around('Added', `<script src="additions.js"></script>${EMBED}\n${html}`));
  const { page, errors } = await open('/added', /Applying inline style violates/);
  await followsIn(page, page.keyboard);
  await page.getByLabel('Put up, Tomatoes').first().fill('=40+2');
  await page.keyboard.press('Enter');
  await page.waitForFunction(
    () => document.querySelector('croft-embed').shadowRoot.querySelector('td input').value === '42',
  );
  await page.getByRole('button', { name: 'Open as a grid' }).click();
  await page.locator('.ht_master tbody tr').nth(2).waitFor();
  // What the page added is as it was.
  assert.ok(await page.evaluate(() => Object.getOwnPropertyDescriptor(Object.prototype, 'each')?.enumerable));
  assert.deepEqual(errors, []);
});

test('five on one page load each part once', async () => {
  const { html } = await cellar();
  const five = Array.from({ length: 5 }, (_, i) => html.replace(/keep-as="[^"]*"/, `keep-as="cellar ${i}"`));
  pages.set('/five', around('Five', `${EMBED}\n${five.join('')}`));
  const asked = [];
  const { page, errors } = await open('/five', undefined, (request) => asked.push(request.url()));
  for (let i = 0; i < 5; i++) {
    await page
      .getByLabel('Put up, Tomatoes')
      .nth(i * 3)
      .fill('=45*2');
    await page.keyboard.press('Enter');
  }
  await page.waitForFunction(() =>
    [...document.querySelectorAll('croft-embed')].every(
      ({ shadowRoot }) => shadowRoot.querySelector('td input').value === '90',
    ),
  );
  const scripts = asked.filter((each) => each.endsWith('.js'));
  assert.ok(scripts.some((each) => each.includes('hyperformula')));
  assert.deepEqual(scripts, [...new Set(scripts)]);
  assert.deepEqual(errors, []);
  await page.close();
});

test('one file alone shows a book to read with its pictures and lists, its hash checked', async () => {
  const hashes = JSON.parse(readFileSync(join(package_.inside, 'dist/integrity.json'), 'utf8'));
  const name = 'one-file/croftsheet-reading.js';
  pages.set('/bench.json', readFileSync(join(repository, 'demo/data/tamarack-bench.json')));
  pages.set(
    '/one',
    around(
      'One',
      `<script type="module" src="${name}" integrity="${hashes[name]}"></script>
<croft-book src="bench.json"><croft-sheet sheet="shelf" view="read" read-only></croft-sheet>
<croft-runway></croft-runway><croft-season></croft-season><croft-room></croft-room><croft-lists></croft-lists></croft-book>
<croft-embed src="bench.json" sheet="foods" columns="food,weeks_of_supply"></croft-embed>`,
    ),
  );
  const asked = [];
  const { page, errors } = await open('/one', undefined, (request) => asked.push(request.url()));
  await page.waitForFunction(() =>
    document.querySelector('croft-embed').shadowRoot?.querySelector('tbody tr'),
  );
  const shown = () =>
    page.evaluate(() =>
      ['croft-sheet', 'croft-runway', 'croft-season', 'croft-room', 'croft-lists'].map((each) => {
        const { shadowRoot, offsetHeight } = document.querySelector(each);
        return shadowRoot !== null && offsetHeight > 200;
      }),
    );
  for (let i = 0; i < 100 && (await shown()).includes(false); i++)
    await new Promise((done) => setTimeout(done, 100));
  assert.deepEqual(await shown(), [true, true, true, true, true]);
  assert.deepEqual(
    // The engine is beside it, and asked for since this book has formulas of its own.
    asked.map((each) => new URL(each).pathname).filter((each) => /(?<!engine)\.js$/.test(each)),
    [`/${name}`],
  );
  assert.deepEqual(errors, []);
  await page.close();
});

test('classes define nothing until they are asked to', async () => {
  const { html } = await cellar();
  pages.set(
    '/own-names.js',
    `import { CroftBook, CroftEmbed, CroftSheet } from './classes.js';
     window.before = ['croft-embed', 'croft-sheet', 'croft-reading-view'].map((each) => customElements.get(each));
     customElements.define('our-cellar', class extends CroftEmbed {});
     customElements.define('our-sheet', class extends CroftSheet {});
     customElements.define('our-book', class extends CroftBook {});
     document.querySelector('our-cellar').getBoundingClientRect();
     window.after = customElements.get('croft-embed');
     document.body.insertAdjacentHTML('beforeend', '<our-book id="kitchen" src="bench.json"><our-sheet></our-sheet></our-book><our-sheet book="kitchen"></our-sheet>');
     window.inside = customElements.get('croft-reading-view') !== undefined;`,
  );
  pages.set('/bench.json', readFileSync(join(repository, 'demo/data/tamarack-bench.json')));
  const own = html.replaceAll('croft-embed', 'our-cellar');
  pages.set('/own-names', around('Own names', `<script type="module" src="own-names.js"></script>\n${own}`));
  const { page, errors } = await open('/own-names');
  await page.waitForFunction(() => 'inside' in window);
  assert.deepEqual(await page.evaluate(() => [...window.before, window.after, window.inside]), [
    undefined,
    undefined,
    undefined,
    undefined,
    true,
  ]);
  await followsIn(page, page.keyboard, 'our-cellar');
  // Inside a book under a name of the page’s own, and where that is named.
  for (const sheet of [0, 1])
    await page.locator('our-sheet').nth(sheet).getByText('Tomatoes').first().waitFor();
  // Another book is named, as when a framework draws anew.
  await page.evaluate(() => {
    document.body.insertAdjacentHTML('beforeend', '<our-book id="empty"></our-book>');
    document.querySelectorAll('our-sheet')[1].setAttribute('book', 'empty');
  });
  await page.locator('our-sheet').nth(1).getByText('Nothing on the shelf yet').waitFor();
  assert.deepEqual(errors, []);
});

test('where an older copy was first, this one stands back and says so', async () => {
  const { html } = await cellar();
  pages.set(
    '/older.js',
    "class Older extends HTMLElement { static version = '0.0.1' }; customElements.define('croft-embed', Older);",
  );
  pages.set('/older', around('Older', `<script src="older.js"></script>${EMBED}\n${html}`));
  const said = [];
  const { page, errors } = await open('/older', undefined, undefined, (message) => said.push(message.text()));
  await page.waitForFunction(() => document.readyState === 'complete');
  const { version } = JSON.parse(readFileSync(join(package_.inside, 'package.json'), 'utf8'));
  assert.deepEqual(said, [
    `Croftsheet ${version} stands back: the page has <croft-embed> from Croftsheet 0.0.1 already. Load one of them.`,
  ]);
  assert.ok(await page.getByRole('table').isVisible());
  assert.deepEqual(errors, []);
});

test('two copies of all scripts on one page do not quarrel', async () => {
  const { html } = await cellar();
  const all = ['', 'copy/'].flatMap((where) =>
    ['croftsheet-embed', 'croftsheet'].map(
      (name) => `<script type="module" src="/${where}${name}.js"></script>`,
    ),
  );
  pages.set(
    '/twice',
    `<!doctype html><html lang="en"><meta charset="utf-8"><title>Twice</title><link rel="icon" href="data:,">${all.join('')}\n${html}`,
  );
  const { page, errors } = await open('/twice');
  await page.waitForFunction(() => customElements.get('croft-working'));
  await followsIn(page, page.keyboard);
  assert.deepEqual(errors, []);
});

test('what the guide says to paste works as it stands there', async () => {
  const read = (path) => readFileSync(join(repository, 'demo', path), 'utf8');
  const names = ['blog-table.html', 'blog-json.html', 'blog-src.html', 'blog-frame.html'];
  pages.set('/our-cellar.json', read('data/our-cellar.json'));
  pages.set('/frame-height.js', read('guide/snippets/frame-height.js'));
  pages.set(
    '/pasted',
    `<!doctype html><html lang="en"><meta charset="utf-8"><title>Pasted</title><link rel="icon" href="data:,"><script src="frame-height.js"></script>${names.map((name) => read(`guide/snippets/${name}`)).join('')}`,
  );
  const { page, errors } = await open('/pasted');
  await page.waitForFunction(() => {
    const rows = [...document.querySelectorAll('croft-embed')].map(
      (host) => host.shadowRoot?.querySelectorAll('tbody tr').length ?? 0,
    );
    return rows.join() === '2,2,4' && document.querySelector('iframe').height !== '400';
  });
  const embed = page.locator('croft-embed').nth(1);
  await embed.getByLabel('Put up, tomatoes').fill('56');
  await page.keyboard.press('Enter');
  await embed.getByText('56 quart jars').waitFor();
  assert.deepEqual(errors, []);
});

test('who builds a page is told what an element waits for in vain', async () => {
  pages.set(
    '/waiting',
    around(
      'Waiting',
      `<croft-sheet></croft-sheet><croft-runway book="cellar"></croft-runway><croft-functions></croft-functions>
<croft-book><croft-lists></croft-lists></croft-book><script type="module" src="croftsheet.js"></script>`,
    ),
  );
  const page = await browser.newPage();
  const said = [];
  page.on('console', (message) => said.push(message.text()));
  await page.clock.install();
  await page.goto(`${url}/waiting`);
  await page.waitForFunction(() =>
    document.querySelector('croft-runway')?.shadowRoot?.querySelector('.opening'),
  );
  await page.clock.runFor(10_000);
  for (const told of [
    /^<croft-sheet> has no book\. Put it inside/,
    /^<croft-runway> has no book: there is no <croft-book id="cellar">/,
  ])
    assert.equal(said.filter((each) => told.test(each)).length, 1, `${told}: ${said.join('\n')}`);
  assert.equal(said.length, 2, said.join('\n'));
  await page.close();
});

test('elements write nothing onto themselves as they start, so that what a framework sent is what it finds', async () => {
  const { exports } = JSON.parse(readFileSync(join(package_.inside, 'package.json'), 'utf8'));
  const names = Object.keys(exports).flatMap((name) => /^\.\/(croft-.*)$/.exec(name)?.[1] ?? []);
  const ticked = { 'croft-runway': ' grouped="true"', 'croft-formulas': ' errors="true"' };
  const sent = names
    .filter((name) => name !== 'croft-book')
    .map((name) => `<${name}${ticked[name] ?? ''}></${name}>`);
  pages.set('/bench.json', readFileSync(join(repository, 'demo/data/tamarack-bench.json')));
  pages.set(
    '/bare',
    around(
      'Bare',
      `<script type="module" src="croftsheet.js"></script><croft-book src="bench.json">${sent.join('')}</croft-book>`,
    ),
  );
  const { page, errors } = await open('/bare');
  await page.locator('croft-sheet').getByText('Tomatoes').first().waitFor();
  const found = page.locator('croft-book');
  assert.equal(
    await found.evaluate((book) => book.outerHTML),
    `<croft-book src="bench.json">${sent.join('')}</croft-book>`,
  );
  // Libraries that find a property of an attribute's name set that, with the text that the attribute would have.
  const taken = await found.evaluate((book) => {
    const set = (name, values) => Object.assign(book.querySelector(name), values);
    set('croft-sheet', { columns: 'food, left' });
    const runway = set('croft-runway', { months: '9' });
    const lesson = set('croft-lesson', { topics: 'rates', level: '2', count: '3' });
    const labels = set('croft-labels', { lots: 's1, s2' });
    const { keep } = Object.assign(document.createElement('croft-book'), { keep: true });
    // Others write a tick as it is called.
    const written = document.createElement('div');
    written.innerHTML =
      '<croft-book keep="false"></croft-book><croft-sheet read-only="false" bare="true"></croft-sheet>';
    const [other, sheet] = written.children;
    return [
      runway.months,
      lesson.level,
      lesson.count,
      labels.lots,
      keep,
      other.keep,
      sheet.readOnly,
      sheet.bare,
    ];
  });
  assert.deepEqual(taken, [9, 2, 3, ['s1', 's2'], '', null, false, true]);
  const heads = page.locator('croft-sheet thead th');
  await heads.nth(2).waitFor({ state: 'detached' });
  assert.deepEqual(
    (await heads.allTextContents()).map((each) => each.trim()),
    ['Food', 'Left'],
  );
  assert.deepEqual(errors, []);
});
