// `npm run test:engines`: the browser tests in every engine that is found. Names of engines and of files make it
// less: `npm run test:engines -- firefox core-paths`.
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { BUILT_PAGES, buildPages } from './browser/harness/build-pages.mjs';
import { ENGINES, hasEngine, PACKAGES } from './browser/harness/find-engines.mjs';

const at = (path) => fileURLToPath(new URL(path, import.meta.url));

/** Runs files of browser tests in an engine, with what it lacks said at the end; whether all passed. */
export async function testIn(engine, files = []) {
  const names = files.length > 0 ? files.map((name) => `tests/browser/${name}.test.ts`) : ['tests/browser'];
  const reporters = ['--reporter=default', `--reporter=${at('./browser/harness/engines/reporter.mjs')}`];
  const child = spawn(
    process.execPath,
    [at('../node_modules/vitest/vitest.mjs'), 'run', ...names, ...reporters],
    { stdio: 'inherit', env: { ...process.env, CROFTSHEET_ENGINE: engine } },
  );
  return new Promise((done) => child.once('exit', (code) => done(code === 0)));
}

/** Says that an engine is not there, and how it comes to be. */
export function sayMissing(engine) {
  console.log(
    `\n${engine}: not found, so nothing was tried in it. On Debian or Ubuntu: ` +
      `sudo apt-get install ${PACKAGES[engine][0].join(' ')}`,
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const asked = process.argv.slice(2);
  const engines = asked.filter((each) => ENGINES.includes(each));
  const files = asked.filter((each) => !ENGINES.includes(each));
  await buildPages();
  process.env.CROFTSHEET_PAGES = BUILT_PAGES;
  for (const engine of engines.length > 0 ? engines : ENGINES)
    if (!hasEngine(engine)) {
      sayMissing(engine);
      if (engines.length > 0) process.exitCode = 1;
    } else if (!(await testIn(engine, files))) process.exitCode = 1;
}
