// Maps say where everything of the built files comes from. The text of our own modules stands in them; that of
// libraries, most of the maps otherwise, is in the packages of those, at the versions that ours names.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';

export function leanMaps(dist) {
  for (const each of readdirSync(dist, { recursive: true, encoding: 'utf8' })) {
    if (!each.endsWith('.map')) continue;
    const file = resolve(dist, each);
    const map = JSON.parse(readFileSync(file, 'utf8'));
    const isOurs = (source) => !/(?:^|\/)node_modules\//.test(source);
    map.sourcesContent = map.sourcesContent?.map((text, at) => (isOurs(map.sources[at]) ? text : null));
    writeFileSync(file, JSON.stringify(map));
  }
}
