// `croftsheet/…` as users of the package write it, within the repository: so that what the guide shows is what runs.
import { resolve } from 'node:path';
import { ELEMENT_ENTRIES } from './entries.mjs';

const repository = resolve(import.meta.dirname, '../..');

const NAMES = {
  croftsheet: 'components/croftsheet.ts',
  'croftsheet/core': 'src/core.ts',
  'croftsheet/embed': 'components/embed/croft-embed.ts',
  ...Object.fromEntries(
    Object.entries(ELEMENT_ENTRIES).map(([name, source]) => [`croftsheet/${name}`, source]),
  ),
};

/** Modules of libraries for which one of ours stands, by their names. */
export const STAND_INS = {
  '@stdlib/assert-has-generator-support': resolve(import.meta.dirname, 'has-generators.cjs'),
};

export const PACKAGE_ALIASES = [
  ...Object.entries(NAMES).map(([name, source]) => ({
    find: new RegExp(`^${name}$`),
    replacement: resolve(repository, source),
  })),
  ...Object.entries(STAND_INS).map(([find, replacement]) => ({ find, replacement })),
];
