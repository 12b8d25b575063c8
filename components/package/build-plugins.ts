import { resolve } from 'node:path';
import type { Plugin } from 'vite';
import { ENTRIES } from './entries.mjs';

const DEFINITIONS = resolve(import.meta.dirname, 'definitions.ts');
const DEFINE_LATER = resolve(import.meta.dirname, 'define-later.ts');
const PREFIX = 'defining:';

/** What stands for an entry in the build, so that it defines the elements whose classes its module exports. */
export const definingEntry = (name: string): string => PREFIX + name;

/** Classes define nothing by themselves: an entry is its module, and the defining. */
export const definingEntries = (at: (path: string) => string): Plugin => ({
  name: 'defining-entries',
  enforce: 'pre',
  resolveId: (source) => (source.includes(PREFIX) ? `\0${source.slice(source.indexOf(PREFIX))}` : null),
  load(id) {
    if (!id.startsWith(`\0${PREFIX}`)) return null;
    const source = ENTRIES[id.slice(PREFIX.length + 1)];
    if (source === undefined) return null;
    return `export * from ${JSON.stringify(at(source))};
import { defineElements } from ${JSON.stringify(DEFINITIONS)};
defineElements();`;
  },
});

/** Loaded on demand, so that both copies of the embedded sheet's class share it. */
const ON_DEMAND = /\/(?:trial|grid-part|own-book-text|table-book|mount|live-book|page-advice)\.js$/;

const SHARED = /\/(?:token-text|define|language-around|select-whole|keep-keys)\.js$/;
/** What parts that load on demand use of the first file: it holds nothing but what it says, and comes again. */
const TWICE = /\/(?:token-text|first-table|embed-styles|frame|said)\.js$/;
const LATER = '?later';

/**
 * What the embedded sheet shares with the other elements comes into its file once more, small as it is: so that
 * all of it that runs before a reader does something is one file, with one integrity hash.
 */
export const embedAlone: Plugin = {
  name: 'embed-alone',
  enforce: 'pre',
  async resolveId(source, importer) {
    if (!importer || !/components\/embed\//.test(importer)) return null;
    const comesLater = importer.endsWith(LATER) || ON_DEMAND.test(importer.replace(/\.ts$/, '.js'));
    const shared = comesLater ? TWICE.test(source) : SHARED.test(source) && !importer.includes('?');
    if (!shared) return null;
    const found = await this.resolve(source, importer, { skipSelf: true });
    return found && { ...found, id: `${found.id}${comesLater ? LATER : '?embed'}` };
  },
};

const CLASS = '?class';

/** The embedded sheet's class among the other classes is a copy that defines nothing: its own file defines it. */
export const embedClass: Plugin = {
  name: 'embed-class',
  enforce: 'pre',
  async resolveId(source, importer) {
    const isFirst = importer?.endsWith('/package/classes.ts') && source.endsWith('/croft-embed.js');
    if (!importer || (!isFirst && !importer.endsWith(CLASS)) || ON_DEMAND.test(source)) return null;
    if (source === './define.js') return DEFINE_LATER;
    const found = await this.resolve(source, importer.replace(CLASS, ''), { skipSelf: true });
    if (!found) return null;
    // What its own file has for itself, this copy has with all others.
    if (!/\/components\/embed\//.test(found.id)) return { ...found, id: found.id.replace('?embed', '') };
    return { ...found, id: found.id.replace(/\?.*$/, '') + CLASS };
  },
};
