import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { tokenText } from '../../components/look/token-text.js';
import { CSS_PROPERTIES } from '../../components/package/css-properties.mjs';
import { ELEMENT_ENTRIES } from '../../components/package/entries.mjs';

const components = resolve(import.meta.dirname, '../../components');
const read = (names: RegExp): string[] =>
  readdirSync(components, { recursive: true, encoding: 'utf8' })
    .filter((name) => names.test(name))
    .map((name) => readFileSync(resolve(components, name), 'utf8'));
const sources = read(/\.(ts|css)$/);
const elements = Object.values(ELEMENT_ENTRIES).map((path) =>
  readFileSync(resolve(components, '..', path), 'utf8'),
);
const named = (texts: readonly string[], pattern: RegExp): string[] => [
  ...new Set(texts.flatMap((text) => [...text.matchAll(pattern)].map(([, name]) => name!))),
];
const sorted = (names: Iterable<string>): string[] => [...new Set(names)].sort();

/** Parts inside what is no element of the package. */
const INSIDE = ['problems'];

test('every property that all elements heed has its meaning, and no other', () => {
  expect(sorted(named([tokenText], /var\(\s*(--croft-[\w-]+)/g))).toEqual(
    sorted(Object.keys(CSS_PROPERTIES)),
  );
});

test('a property is heeded exactly where a doc block or the common list says so', () => {
  const documented = [...Object.keys(CSS_PROPERTIES), ...named(elements, /^ \* @cssprop (--[\w-]+) - /gm)];
  expect(sorted(named(sources, /var\(\s*(--croft-[\w-]+)/g))).toEqual(sorted(documented));
});

test('every part that can be styled from outside is in a doc block, and each of those is there', () => {
  const documented = named(elements, /^ \* @csspart ([\w-]+) - /gm);
  const lists = ['bringUp', 'shopping', 'prep'];
  const embedded = named(read(/^embed\/.*\.ts$/), /\bpart: '([\w-]+)'/g);
  const parts = [...named(sources, /\bpart="([\w-]+)"/g), ...embedded, ...lists];
  const exported = named(sources, /exportparts="\w+: ([\w-]+)"/g);
  expect(sorted([...parts, ...exported].filter((part) => !INSIDE.includes(part)))).toEqual(
    sorted(documented),
  );
});

test('each custom property and part stands on a line of its own, for those who read the manifest', () => {
  for (const text of elements)
    for (const line of text.match(/^ \* @css(?:prop|part).*$/gm) ?? []) {
      expect(line).toMatch(/^ \* @css(prop|part) [\w-]+ - [A-Z].*\.$/);
      expect(line).not.toContain('likewise');
    }
});
