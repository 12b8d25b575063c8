import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const root = new URL('../../', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, root), 'utf8');
const json = (path: string): { license: string; dependencies: Record<string, string> } =>
  JSON.parse(read(path));
const NOTICE = read('NOTICE');
/** What a package's own file says where the licence has no short name there. */
const SAID: Readonly<Record<string, string>> = { handsontable: 'non-commercial' };

describe('NOTICE', () => {
  it.each(Object.keys(json('package.json').dependencies))('names %s with its licence', (name) => {
    const called = name.startsWith('@stdlib/') ? '@stdlib/*' : name;
    const at = NOTICE.split(/\n(?= {2}\S)/).find((entry) => entry.split(/[\s,()]+/).includes(called));
    expect(at, `${name} is not in NOTICE`).toBeDefined();
    expect(at).toContain(SAID[name] ?? json(`node_modules/${name}/package.json`).license);
  });
});
