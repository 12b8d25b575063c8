// What each property is, put into the types from the doc blocks of the elements, where it stands with the attribute.
import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { ELEMENT_ENTRIES } from './entries.mjs';

/** Where the properties of an element are declared, beside its own file. */
const BESIDE = { 'croft-embed': ['components/embed/embed-attributes.ts'] };

/** The text with a comment before each property of these that has none; a pair of accessors has it once. */
function documented(text, members) {
  return members.reduce((so, { name, description }) => {
    const place = new RegExp(`(?<!\\*/\\n)^( +)((?:get )?${name}(?:\\(\\))?\\??: )`, 'm');
    return so.replace(place, (_, indent, declared) => {
      const comment = description.replace(/\s+/g, ' ').replaceAll('*/', '* /');
      return `${indent}/** ${comment} */\n${indent}${declared}`;
    });
  }, text);
}

/** Writes into the types what the manifest says of the properties that attributes set. */
export function documentTypes(types, manifest) {
  for (const { tagName, members = [] } of manifest.modules.flatMap(({ declarations }) => declarations)) {
    const told = members.filter(({ attribute, description }) => attribute && description);
    for (const source of [ELEMENT_ENTRIES[tagName], ...(BESIDE[tagName] ?? [])]) {
      const file = resolve(types, source.replace(/\.ts$/, '.d.ts'));
      writeFileSync(file, documented(readFileSync(file, 'utf8'), told));
    }
  }
}
