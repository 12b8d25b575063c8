// `npm run soak`: the long forms. `npm run soak -- operations kills --operations 5000 --kills 20 --seed 7`.
import { setPriority } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { createServer } from 'vite';

const PARTS = ['operations', 'full-size', 'kills'];
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    operations: { type: 'string', default: '100000' },
    'full-size': { type: 'string', default: '2000' },
    kills: { type: 'string', default: '200' },
    failures: { type: 'string', default: '1' },
    seed: { type: 'string' },
  },
});
const number = (name) => {
  const value = Number(values[name]);
  if (Number.isInteger(value) && value >= 0) return value;
  console.error(`--${name} takes a whole number.`);
  process.exit(2);
};
const strange = positionals.find((part) => !PARTS.includes(part));
if (strange !== undefined) {
  console.error(`There is no part “${strange}”: name some of ${PARTS.join(', ')}, or none for all of them.`);
  process.exit(2);
}
const seed = values.seed === undefined ? Math.floor(Math.random() * 1e9) : number('seed');
const parts = positionals.length > 0 ? PARTS.filter((part) => positionals.includes(part)) : PARTS;
console.log(`soak: ${parts.join(', ')}; seed ${seed} (the same again: --seed ${seed})`);

// The machine is for whoever works at it; this may take its time.
setPriority(19);
const server = await createServer({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  configFile: false,
  logLevel: 'error',
  appType: 'custom',
  server: { middlewareMode: true, hmr: false, watch: null, ws: false },
  optimizeDeps: { noDiscovery: true, include: [] },
});
const load = (name) => server.ssrLoadModule(`/tests/soak/${name}.ts`);
let wrong = 0;
const line = (figures) =>
  Object.entries(figures)
    .map(([name, value]) => `${name} ${value}`)
    .join(', ');

try {
  if (parts.includes('operations')) {
    const { soakOperations } = await load('operations');
    const { failures, ...figures } = soakOperations({
      operations: number('operations'),
      seed,
      mostFailures: number('failures'),
      said: progress(),
      failed: (failure) => console.log(`\nFAILED ${failure}`),
    });
    console.log(`operations: ${line(figures)}, failures ${failures.length}`);
    wrong += failures.length;
  }
  if (parts.includes('full-size')) {
    const { soakFullSize } = await load('full-size');
    for (const { failures, ...figures } of soakFullSize({
      operations: number('full-size'),
      seed,
      said: progress(),
    })) {
      for (const failure of failures) console.log(`\nFAILED ${failure}`);
      console.log(`full size: ${line(figures)}, failures ${failures.length}`);
      wrong += failures.length;
    }
  }
  if (parts.includes('kills')) {
    const { soakKills } = await load('kills');
    const figures = await soakKills({
      kills: number('kills'),
      seed,
      said: progress(),
      missed: (what) => console.log(`\nLOST ${what}`),
    });
    console.log(`kills: ${line(figures)}`);
    wrong += figures.lost + figures.unreadable;
  }
} finally {
  await server.close();
}
process.exit(wrong > 0 ? 1 : 0);

/** Says how far it is, about once a minute. */
function progress() {
  let last = Date.now();
  return (figures) => {
    if (Date.now() - last < 60_000) return;
    last = Date.now();
    const { failures, ...rest } = figures;
    console.log(`  … ${line(rest)}${failures?.length ? `, failures ${failures.length}` : ''}`);
  };
}
