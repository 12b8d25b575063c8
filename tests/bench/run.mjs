// `npm run bench`: speed as ratios against a bare grid in the same run and the same browser. Times are
// printed for orientation; only the ratios are comparable between machines.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { chromium } from 'playwright-core';
import { build, preview } from 'vite';
import { findChromium } from '../browser/harness/find-chromium.mjs';
import { benchEmbed } from './embed.mjs';

const EDITS = 15;
const CHROMIUM_FLAGS =
  '--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync'.split(
    ' ',
  );
const here = import.meta.dirname;
const outDir = mkdtempSync(join(tmpdir(), 'croftsheet-bench-'));
const root = resolve(here, 'pages');
const shared = {
  configFile: false,
  root,
  logLevel: 'error',
  build: { outDir, emptyOutDir: true, target: 'es2022' },
};

const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
const ms = (n) => `${n.toFixed(1)} ms`.padStart(11);
const ratio = (a, b) => `${(a / b).toFixed(2)} ×`.padStart(9);

async function edits(page) {
  const times = [];
  for (let i = 0; i < EDITS + 3; i++) {
    await page.keyboard.type(String(20 + i));
    await page.evaluate(() => window.bench.timeEnter());
    await page.keyboard.press('Enter');
    times.push(await page.evaluate(() => window.bench.timing()));
  }
  // The first few warm the browser's compiler up.
  const counted = times.slice(3);
  return { settled: median(counted.map((t) => t.settled)), painted: median(counted.map((t) => t.painted)) };
}

async function measure(browser, url, which) {
  const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(url);
  await page.waitForFunction(() => window.bench);
  await page.evaluate((w) => window.bench.loadBare(w), which);
  const bareLoads = [];
  for (let i = 0; i < 3; i++) bareLoads.push(await page.evaluate((w) => window.bench.loadBare(w), which));
  await page.locator('#stand td').nth(3).click();
  const bare = await edits(page);
  await page.reload();
  await page.waitForFunction(() => window.bench);
  const ourLoads = [];
  for (let i = 0; i < 3; i++) ourLoads.push(await page.evaluate((w) => window.bench.loadOurs(w), which));
  const ours = await edits(page);
  const alone = median((await page.evaluate(() => window.bench.bookAlone(20))).slice(5));
  await page.close();
  return {
    bare,
    ours,
    alone,
    bareLoad: median(bareLoads),
    ourLoad: median(ourLoads.map((l) => l.grid)),
    figures: median(ourLoads.map((l) => l.figures)),
    formulas: median(ourLoads.map((l) => l.formulas)),
  };
}

function print(title, m) {
  console.log(`\n${title}`);
  console.log('                                        bare grid  Croftsheet     ratio');
  const row = (name, a, b) => console.log(`  ${name.padEnd(36)}${ms(a)} ${ms(b)} ${ratio(b, a)}`);
  row('one edit, until all is worked out', m.bare.settled, m.ours.settled);
  row('one edit, until painted', m.bare.painted, m.ours.painted);
  row('load, until painted', m.bareLoad, m.ourLoad);
  console.log(
    `  ${'figures painted too, from the start'.padEnd(36)}${''.padStart(11)} ${ms(m.figures)} ${ratio(m.figures, m.bareLoad)}`,
  );
  console.log(
    `  ${'formulas ready too, from the start'.padEnd(36)}${''.padStart(11)} ${ms(m.formulas)} ${ratio(m.formulas, m.bareLoad)}`,
  );
  console.log(`  ${'the edit in the book alone'.padEnd(36)}${''.padStart(11)} ${ms(m.alone)}`);
}

const executablePath = findChromium();
if (!executablePath) {
  console.error('The bench needs a Chromium: `npm test` installs one, or set CROFTSHEET_CHROMIUM.');
  process.exit(1);
}
await build(shared);
const server = await preview({ ...shared, preview: { port: 0, host: '127.0.0.1' } });
const only = process.argv[2];
const browser = await chromium.launch({ executablePath, args: CHROMIUM_FLAGS });
try {
  const url = server.resolvedUrls.local[0];
  if (only !== 'embed') {
    print('The demo household', await measure(browser, url, 'demo'));
    print('5,000 lots and 20,000 draws', await measure(browser, url, 'big'));
  }
  if (only !== 'book') await benchEmbed(browser, outDir);
} finally {
  await browser.close();
  await server.close();
  rmSync(outDir, { recursive: true, force: true });
}
