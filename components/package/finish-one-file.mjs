// The one file, made so: the bundler's own few helpers, which it sets into a file beside, come into each file that
// uses them, and the names of the classes become names that the file exports.
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { ONE_FILE } from './entries.mjs';

const RUNTIME = 'rolldown-runtime.js';
const IMPORT = /import\{([^}]*)\}from"\.\/rolldown-runtime\.js";/;
const EXPORT = /export\{([^}]*)\}(?:from"[^"]*")?;/g;

/** `a as b, c` as pairs of names: `[a, b]`, `[c, c]`. */
const pairs = (names) =>
  names.split(',').map((each) => {
    const [from, to = from] = each.trim().split(/\s+as\s+/);
    return [from, to];
  });

const exportsOf = (code) => [...code.matchAll(EXPORT)].at(-1);

/** The helpers as one statement that gives those which a file imports, under its own names for them. */
function helpers(runtime, imported) {
  const [statement, names] = exportsOf(runtime);
  const local = new Map(pairs(names).map(([from, to]) => [to, from]));
  const body = runtime.slice(0, runtime.lastIndexOf(statement));
  const given = pairs(imported).map(([from, to]) => `${to}:${local.get(from)}`);
  const taken = pairs(imported).map(([, to]) => to);
  return `const{${taken.join()}}=(()=>{${body};return{${given.join()}}})();`;
}

export function finishOneFile(dist) {
  const folder = resolve(dist, ONE_FILE.folder);
  const read = (name) => readFileSync(resolve(folder, name), 'utf8');
  const runtime = read(RUNTIME);
  const facade = pairs(exportsOf(read('facade.js'))[1]);
  for (const name of readdirSync(folder).filter((each) => /(?<!facade|runtime)\.js$/.test(each))) {
    let code = read(name);
    const found = IMPORT.exec(code);
    if (found) {
      // On a line of its own, and blanks where the import was: so the source map is right with one line more.
      code = `${helpers(runtime, found[1])}\n${code.replace(found[0], ' '.repeat(found[0].length))}`;
      const map = JSON.parse(read(`${name}.map`));
      writeFileSync(resolve(folder, `${name}.map`), JSON.stringify({ ...map, mappings: `;${map.mappings}` }));
    }
    if (name === `${ONE_FILE.name}.js`) {
      const [statement, names] = exportsOf(code);
      const local = new Map(pairs(names).map(([from, to]) => [to, from]));
      const classes = facade.map(([from, to]) => `${local.get(from)} as ${to}`);
      const at = code.lastIndexOf(statement);
      code = `${code.slice(0, at)}export{${names},${classes.join()}};${code.slice(at + statement.length)}`;
    }
    writeFileSync(resolve(folder, name), code);
  }
  for (const name of [RUNTIME, 'facade.js', `${RUNTIME}.map`, 'facade.js.map'])
    rmSync(resolve(folder, name), { force: true });
}
