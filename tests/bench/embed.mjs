// The embedded sheet, from the built files (`npm run build`): what it costs a page before a reader does
// anything, against the same table without it; and how soon it can be edited, against a bare grid loaded alike.
import { existsSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, resolve } from 'node:path';
import { generateNKeysBetween } from 'fractional-indexing';
import { build } from 'vite';
import { staticParts, total } from '../package/static-parts.mjs';

const repository = resolve(import.meta.dirname, '../..');
const dist = join(repository, 'dist');
const RUNS = 25;
const GRID_RUNS = 11;
const TYPES = {
  '.js': 'text/javascript',
  '.html': 'text/html',
  '.css': 'text/css',
  '.json': 'application/json',
};

const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
const line = (name, value) => console.log(`  ${name.padEnd(58)}${value}`);

/** Serves pages made here and files of the given folders; answers its address and what ends it. */
async function serve(pages, folders) {
  const server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url, 'http://localhost').pathname);
    const found = folders
      .map((folder) => join(folder, path))
      .find((file) => existsSync(file) && extname(file));
    const body = pages.get(path) ?? (found && readFileSync(found));
    if (body === undefined) return response.writeHead(404).end();
    response.writeHead(200, { 'content-type': `${TYPES[extname(path)] ?? 'text/html'}; charset=utf-8` });
    response.end(body);
  });
  await new Promise((done) => server.listen(0, '127.0.0.1', done));
  return { url: `http://127.0.0.1:${server.address().port}`, close: () => server.close() };
}

/** A snippet of 200 lots, as the package itself makes it. */
async function snippets() {
  const { embedOf, openBook, parseBook } = await import(join(dist, 'core.js'));
  const demo = JSON.parse(readFileSync(join(repository, 'demo/data/tamarack-bench.json'), 'utf8'));
  const lots = Object.values(demo.sheets.shelf.rows);
  const orders = generateNKeysBetween(null, null, 200);
  const rows = Object.fromEntries(
    Array.from({ length: 200 }, (_, i) => [
      `n${i}`,
      { order: orders[i], cells: lots[i % lots.length].cells },
    ]),
  );
  demo.sheets.shelf.rows = rows;
  const parsed = parseBook(demo);
  if (!parsed.ok) throw new Error(parsed.problems[0].message);
  const live = openBook(parsed.book);
  const columns = ['food', 'way', 'container', 'count', 'put_up_on', 'left', 'weeks_of_supply', 'best_by'];
  const key = 'non-commercial-and-evaluation';
  const make = (open, grid) =>
    embedOf(live, 'shelf', { columns, open, ...(grid && { gridLicenceKey: key }) }).html;
  const made = { read: make([], false), open: make(['count'], false), grid: make(['count'], true) };
  const data = JSON.stringify(live.toJSON());
  const few = embedOf(live, 'shelf', {
    columns,
    open: ['count'],
    rows: live.rowIds('shelf').slice(0, 8),
  }).html;
  const { column: own } = live.addColumn('shelf', 'Twice', { formula: '=[Put up]*2' });
  const formulas = embedOf(live, 'shelf', {
    columns: [...columns, own],
    open: ['count'],
    gridLicenceKey: key,
  });
  live.close();
  return { ...made, few, data, formulas: formulas.html };
}

/** The same snippet with its data at an address, in place of inside. */
const bySource = (html) =>
  html
    .replace(/<script type="application\/json">.*?<\/script>/s, '')
    .replace('<croft-embed', '<croft-embed src="/book.json"');

const page = (body, script = '/croftsheet-embed.js') =>
  `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Bench</title><link rel="icon" href="data:,">${
    script ? `<script type="module" src="${script}"></script>` : ''
  }</head><body><h1>Bench</h1>${body}<p id="after">After</p></body></html>`;

async function withPage(browser, visit) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const tab = await context.newPage();
  await tab.addInitScript(() => {
    window.shifts = 0;
    new PerformanceObserver((list) => {
      for (const each of list.getEntries()) if (!each.hadRecentInput) window.shifts += each.value;
    }).observe({ type: 'layout-shift', buffered: true });
  });
  try {
    return await visit(tab);
  } finally {
    await context.close();
  }
}

/** Watches from the start for the frame in which the table stands as it stays; for this to run on the page. */
const watchTable = () => {
  const stands = () =>
    document.querySelector('croft-embed')
      ? document.querySelector('croft-embed').shadowRoot?.querySelector('td')
      : document.readyState !== 'loading' && document.querySelector('td');
  const look = () => {
    if (!stands()) return requestAnimationFrame(look);
    const { port1, port2 } = new MessageChannel();
    // Comes after the frame has been laid out and painted.
    port1.onmessage = () => {
      window.stood = performance.now();
    };
    port2.postMessage('');
  };
  requestAnimationFrame(look);
};

/** When the page was first painted and when its table stood as it stays, in milliseconds from its start. */
const firstPaint = (browser, url) =>
  withPage(browser, async (tab) => {
    await tab.addInitScript(watchTable);
    await tab.goto(url);
    return tab.evaluate(
      () =>
        new Promise((done) => {
          const look = () => {
            const [paint] = performance.getEntriesByName('first-contentful-paint');
            if (paint && window.stood)
              done({ paint: paint.startTime, stood: window.stood, shift: window.shifts });
            else requestAnimationFrame(look);
          };
          look();
        }),
    );
  });

/**
 * From asking for the grid until a cell can be written into, where nothing of it has been loaded before; then
 * until the whole grid has taken its place, with the figures and the formulas, where there are some.
 */
const gridOpens = (browser, url, formulas = false) =>
  withPage(browser, async (tab) => {
    const asked = [];
    tab.on('request', (request) => asked.push(request.url()));
    await tab.goto(url);
    await tab.waitForFunction(() =>
      document.querySelector('croft-embed').shadowRoot?.querySelector('button'),
    );
    const { took, loaded } = await tab.evaluate(
      () =>
        new Promise((done) => {
          const root = document.querySelector('croft-embed').shadowRoot;
          const started = performance.now();
          window.asked = started;
          const look = () => {
            if (root.querySelector('.first .croft-grid td'))
              done({
                took: performance.now() - started,
                loaded: performance.getEntriesByType('resource').map(({ name }) => name),
              });
            else requestAnimationFrame(look);
          };
          [...root.querySelectorAll('button')].find((each) => each.textContent === 'Open as a grid').click();
          look();
        }),
    );
    // What is written at once goes the whole way: into the first grid, and with it into the book.
    await tab.keyboard.type('7');
    await tab.keyboard.press('Enter');
    const whole = await tab.evaluate(
      (withFormulas) =>
        new Promise((done) => {
          const look = () => {
            const root = document.querySelector('croft-embed').shadowRoot;
            const book = root.querySelector('.grid .grid:not(.waiting) croft-book');
            if (book?.live?.isPlanned && (!withFormulas || book.engineReady))
              done(performance.now() - window.asked);
            else requestAnimationFrame(look);
          };
          look();
        }),
      formulas,
    );
    const kept = await tab.evaluate(() => {
      const { live } = document.querySelector('croft-embed').shadowRoot.querySelector('croft-book');
      return live.rowIds('shelf').some((row) => String(live.typed('shelf', row, 'food')) === '7');
    });
    return {
      took,
      whole,
      kept,
      shift: await tab.evaluate(() => window.shifts),
      engineFirst: loaded.some((each) => /hyperformula/.test(each)),
      engine: asked.some((each) => /hyperformula/.test(each)),
    };
  });

const bareOpens = (browser, url) =>
  withPage(browser, async (tab) => {
    await tab.goto(url);
    await tab.waitForFunction(() => window.openBare);
    return tab.evaluate(() => window.openBare());
  });

async function alternating(runs, one, other) {
  const found = [[], []];
  for (let i = 0; i < runs; i++) {
    found[0].push(await one());
    found[1].push(await other());
  }
  return found;
}

export async function benchEmbed(browser, outDir) {
  if (!existsSync(join(dist, 'croftsheet-embed.js'))) {
    console.log('\nThe embedded sheet: npm run build first.');
    return;
  }
  const bare = resolve(outDir, 'bare');
  await build({
    configFile: false,
    root: resolve(import.meta.dirname, 'pages'),
    base: './',
    logLevel: 'error',
    build: {
      outDir: bare,
      emptyOutDir: true,
      target: 'es2022',
      rollupOptions: { input: resolve(import.meta.dirname, 'pages/bare.html') },
    },
  });
  const html = await snippets();
  const tables = html.read.replace(/<\/?croft-embed[^>]*>/g, '');
  const pages = new Map([
    ['/static', page(tables, null)],
    ['/read', page(html.read)],
    ['/open', page(html.open)],
    ['/data', page(html.open.replace(/<\/?croft-embed[^>]*>/g, ''), null)],
    ['/src', page(bySource(html.open))],
    ['/book.json', html.data],
    ['/grid', page(html.grid)],
    ['/formulas', page(html.formulas)],
    ['/few', page(html.few)],
    ['/five', page(html.few.repeat(5))],
  ]);
  const { url, close } = await serve(pages, [dist, bare]);
  try {
    console.log('\nThe embedded sheet, 200 rows, from dist');
    line('script before interaction, gzip', `${total(staticParts(join(dist, 'croftsheet-embed.js')))} bytes`);
    await readingView(browser, url, html.data.length);
    line('layout shift, 8 rows with text below', String((await firstPaint(browser, `${url}/few`)).shift));
    await fiveEmbeds(browser, `${url}/five`);
    const [grids, bares] = await alternating(
      GRID_RUNS,
      () => gridOpens(browser, `${url}/grid`),
      () => bareOpens(browser, `${url}/bare.html`),
    );
    const [a, b] = [median(grids.map(({ took }) => took)), median(bares)];
    line(
      '‘open as a grid’ until a cell can be written into, bare grid',
      `${a.toFixed(0)} ms / ${b.toFixed(0)} ms = ${(a / b).toFixed(2)} ×`,
    );
    const all = median(grids.map(({ whole }) => whole));
    line(
      'until the whole grid is there, its figures worked out',
      `${all.toFixed(0)} ms = ${(all / b).toFixed(2)} ×`,
    );
    line('what was written at once was kept', grids.every(({ kept }) => kept) ? 'yes' : 'no');
    line('layout shift while it opens', String(Math.max(...grids.map(({ shift }) => shift))));
    line('engine loaded with it', grids.some(({ engine }) => engine) ? 'yes' : 'no: later, for formulas');
    const own = await gridOpens(browser, `${url}/formulas`, true);
    line('with a column of formulas: engine before the cell', own.engineFirst ? 'yes' : 'no');
    line('with a column of formulas: all worked out', `${own.whole.toFixed(0)} ms`);
  } finally {
    close();
  }
}

async function readingView(browser, url, size) {
  const inside = `one column open, its book of ${Math.round(size / 1000)} kB inside`;
  const pages = [
    ['read', 'static', 'nothing open, against the table alone'],
    ['src', 'static', 'one column open, its book by address, against the table alone'],
    // So large a page is painted later by itself.
    ['open', 'data', `${inside}, against the table with it`],
    ['data', 'static', 'the table with that book inside and no script of ours, against the table alone'],
  ];
  for (const [which, against, name] of pages) {
    const [ours, plain] = await alternating(
      RUNS,
      () => firstPaint(browser, `${url}/${which}`),
      () => firstPaint(browser, `${url}/${against}`),
    );
    console.log(`  200 rows, ${name}`);
    for (const [what, key] of Object.entries({ 'first paint': 'paint', 'as it stays': 'stood' })) {
      const [a, b] = [ours, plain].map((all) => median(all.map((each) => each[key])));
      line(`  ${what}`, `${a.toFixed(0)} ms / ${b.toFixed(0)} ms = ${(a / b).toFixed(2)} ×`);
    }
    const [mine, its] = [ours, plain].map((all) => median(all.map((each) => each.shift)));
    line('  layout shift', `${mine.toFixed(4)} / ${its.toFixed(4)}`);
  }
}

async function fiveEmbeds(browser, url) {
  await withPage(browser, async (tab) => {
    const asked = [];
    tab.on('request', (request) => asked.push(request.url()));
    await tab.goto(url);
    await tab.waitForFunction(() => [...document.querySelectorAll('croft-embed')].every((e) => e.shadowRoot));
    for (let i = 0; i < 5; i++) {
      await tab.locator('croft-embed').nth(i).locator('input').first().fill('77');
      await tab.keyboard.press('Enter');
    }
    await tab.waitForTimeout(1500);
    const scripts = asked.filter((each) => each.endsWith('.js'));
    line(
      'five on a page, all tried: scripts asked for, each once',
      `${scripts.length}, ${new Set(scripts).size === scripts.length ? 'yes' : 'no'}`,
    );
  });
}
