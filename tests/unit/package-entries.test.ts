import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { ELEMENT_ENTRIES } from '../../components/package/entries.mjs';

const repository = resolve(import.meta.dirname, '../..');
const text = (path: string): string => readFileSync(resolve(repository, path), 'utf8');
const { exports, sideEffects, types, typesVersions } = JSON.parse(text('package.json')) as {
  exports: Record<string, string | Record<string, string>>;
  sideEffects: string[];
  types: string;
  typesVersions: { '*': Record<string, [string]> };
};

test('package.json offers exactly the elements that are built', () => {
  const offered = Object.keys(exports).filter((name) => name.startsWith('./croft-'));
  expect(offered.map((name) => name.slice(2)).sort()).toEqual(Object.keys(ELEMENT_ENTRIES).sort());
  expect(sideEffects).toContain('./dist/**');
});

test('types come first in every entry, as resolvers read them in order', () => {
  for (const to of Object.values(exports))
    if (typeof to === 'object') expect(Object.keys(to)[0]).toBe('types');
});

test('resolvers that know no exports are told the same types', () => {
  const told = Object.entries(exports).flatMap(([name, to]) =>
    typeof to === 'object' ? [[name.slice(2), to.types]] : [],
  );
  const older = Object.entries(typesVersions['*']).map(([name, [file]]) => [name, file]);
  expect([['', types], ...older]).toEqual(told);
});

test('the one script for all elements brings each that is offered by itself', () => {
  const all = text('components/croftsheet.ts');
  for (const source of Object.values(ELEMENT_ENTRIES))
    expect(all, source).toContain(`./${source.replace('components/', '').replace(/\.ts$/, '.js')}'`);
});

test('JSX knows the attributes that the doc blocks name', () => {
  const jsx = text('components/markup-types.ts');
  for (const [name, source] of Object.entries(ELEMENT_ENTRIES)) {
    const doc = text(source);
    const named = [...doc.matchAll(/^ \* @attr ([\w-]+)/gm)].map((match) => match[1]!);
    const typed = new RegExp(`'${name}':([^;]*);`).exec(jsx)?.[1];
    expect(typed, name).toBeDefined();
    const known = [...typed!.matchAll(/'([\w-]+)'/g)].map((match) => match[1]!);
    expect(known.sort(), name).toEqual(named.sort());
  }
});

test('every event that a doc block names has its type, and every typed one is named', () => {
  const typed = [
    ...['events', 'book/events', 'embed/embed-events'].map((each) => text(`components/${each}.ts`)),
  ]
    .flatMap((each) => [...each.matchAll(/^ {2}'(croft-[\w-]+)': CustomEvent/gm)])
    .map((match) => match[1]!);
  const named = Object.values(ELEMENT_ENTRIES).flatMap((source) =>
    [...text(source).matchAll(/^ \* @fires (croft-[\w-]+) - /gm)].map((match) => match[1]!),
  );
  expect(typed.sort()).toEqual([...new Set(named)].sort());
  for (const source of Object.values(ELEMENT_ENTRIES)) expect(text(source), source).toContain('CroftEvents');
});

test('the classes alone are those of the entries', () => {
  const classes = text('components/package/classes.ts');
  for (const source of Object.values(ELEMENT_ENTRIES))
    expect(classes, source).toContain(`../${source.replace('components/', '').replace(/\.ts$/, '.js')}'`);
});
