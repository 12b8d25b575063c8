// Says after a run of the browser tests in an engine what passed and what was skipped, by name and with the reason.
import { readFileSync } from 'node:fs';
import { basename } from 'node:path';

const LACKING = JSON.parse(readFileSync(new URL('./lacking.json', import.meta.url), 'utf8'));

export default class EngineReporter {
  onTestRunEnd(modules) {
    const engine = process.env.CROFTSHEET_ENGINE ?? 'chromium';
    const tests = modules.flatMap((module) =>
      [...module.children.allTests()].map((test) => ({
        file: basename(module.moduleId, '.test.ts'),
        name: test.fullName,
        ...test.result(),
      })),
    );
    const passed = tests.filter(({ state }) => state === 'passed').length;
    const failed = tests.filter(({ state }) => state === 'failed').length;
    const skipped = tests.filter(({ state }) => state === 'skipped');
    console.log(`\n${engine}: ${passed} passed, ${failed} failed, ${skipped.length} skipped`);
    for (const { file, name, note } of skipped)
      console.log(`  ${file}: ${name}\n    – ${note ?? 'by its file'}`);
    // A name that stays after its test was called otherwise would hide that the test runs again, or never.
    const files = new Set(tests.map(({ file }) => file));
    const stale = LACKING.filter(
      (each) =>
        each.engine === engine &&
        files.has(each.file) &&
        each.test !== '' &&
        !tests.some(
          ({ file, name }) =>
            file === each.file && (name === each.test || name.startsWith(`${each.test} > `)),
        ),
    );
    for (const { file, test } of stale)
      console.error(`lacking.json names a test that is not there: ${file}: ${test}`);
    if (stale.length > 0) process.exitCode = 1;
  }
}
