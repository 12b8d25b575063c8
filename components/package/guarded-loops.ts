import type { Plugin } from 'vite';

/**
 * Where a page's scripts have added to `Object.prototype` or `Array.prototype` what can be enumerated, loops by
 * `for … in` see it in every object: libraries then break as soon as they are loaded. In the built files each
 * such loop goes over what this answers: the same, without what the page added. It is asked at every loop, since
 * a page may add something at any time; the page's own objects are left as they are.
 */
const GUARD = `function __keysOf(of) {
  for (var added in []) return __withoutAdded(of);
  return of;
}
function __withoutAdded(of) {
  var kept = Object.create(null);
  for (var key in of) {
    var at = Object(of);
    while (at && !Object.prototype.hasOwnProperty.call(at, key)) at = Object.getPrototypeOf(at);
    if (at !== Object.prototype && at !== Array.prototype && at !== Function.prototype) kept[key] = true;
  }
  return kept;
}
`;
const MODULE = 'virtual:guarded-loops';

interface Loop {
  readonly start: number;
  readonly end: number;
}

/** Places of what `for … in` loops go over. */
function loopsIn(node: unknown, found: Loop[] = []): Loop[] {
  if (typeof node !== 'object' || node === null) return found;
  if ('type' in node && node.type === 'ForInStatement' && 'right' in node) found.push(node.right as Loop);
  for (const each of Object.values(node)) loopsIn(each, found);
  return found;
}

const isModule = (body: readonly { readonly type: string }[]): boolean =>
  body.some(({ type }) => type.startsWith('Import') || type.startsWith('Export'));

/** Puts the guard into every module that has such a loop. */
export const guardedLoops: Plugin = {
  name: 'guarded-loops',
  enforce: 'post',
  resolveId: (source) => (source === MODULE ? `\0${MODULE}` : null),
  load: (id) => (id === `\0${MODULE}` ? `${GUARD}export { __keysOf };` : null),
  transform(code, id) {
    if (id === `\0${MODULE}` || !/\.[cm]?[jt]s(?:\?|$)/.test(id) || !/\bfor\s*\([^;]*?\bin\b/.test(code))
      return null;
    const program = this.parse(code);
    const loops = loopsIn(program.body);
    if (loops.length === 0) return null;
    const marks = loops.flatMap(({ start, end }) => [
      { at: start, text: '__keysOf((' },
      { at: end, text: '))' },
    ]);
    let guarded = code;
    for (const { at, text } of marks.sort((a, b) => b.at - a.at))
      guarded = guarded.slice(0, at) + text + guarded.slice(at);
    // What the bundler adds by itself is to import nothing: it stands before everything.
    // At the end, and on lines as they were: then the source map still tells the line.
    const shares = isModule(program.body) && !id.startsWith('\0');
    const guard = shares ? `import { __keysOf } from '${MODULE}';` : GUARD;
    return { code: `${guarded}\n${guard}`, map: null };
  },
};
