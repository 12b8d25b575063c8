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

async function cellar() {
  const { embedOf, openBook, parseBook } = await import(
    pathToFileURL(join(package_.inside, 'dist/core.js')).href
  );
  const parsed = parseBook(readFileSync(join(repository, 'demo/data/tamarack-bench.json'), 'utf8'));
  const live = openBook(parsed.book);
  const columns = ['food', 'count', 'left', 'weeks_of_supply'];
  return embedOf(live, 'shelf', { columns, open: ['count'], rows: live.rowIds('shelf').slice(0, 4) });
}

async function open(path) {
  const page = await browser.newPage();
  const errors = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
  await page.goto(url + path);
  return { page, errors };
}

const weeks = (within) =>
  within
    .locator('croft-embed')
    .evaluate((host) =>
      [...host.shadowRoot.querySelectorAll('tbody tr')].map((row) => row.cells[3].textContent),
    );

async function followsIn(within, keyboard) {
  const before = await weeks(within);
  assert.equal(before.length, 4);
  await within.getByLabel('Put up, Tomatoes').first().fill('90');
  await keyboard.press('Enter');
  for (let i = 0; i < 250; i++) {
    if ((await weeks(within))[0] !== before[0]) return;
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
