// The package as somebody would get it: packed, unpacked elsewhere, with what it depends on beside it.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';

export const repository = resolve(import.meta.dirname, '../..');

/** Packs and unpacks; nothing is asked of any registry: the dependencies are those of the repository. */
export function unpack() {
  if (!existsSync(join(repository, 'dist/croftsheet.js')))
    throw new Error('There is nothing to pack yet: npm run build');
  const at = mkdtempSync(join(tmpdir(), 'croftsheet-package-'));
  const [{ filename }] = JSON.parse(
    execFileSync('npm', ['pack', '--json', '--ignore-scripts', '--pack-destination', at], {
      cwd: repository,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    }),
  );
  const modules = join(at, 'node_modules');
  mkdirSync(modules);
  execFileSync('tar', ['-xzf', join(at, filename), '-C', modules]);
  const inside = join(modules, 'croftsheet');
  execFileSync('mv', [join(modules, 'package'), inside]);
  const { dependencies, exports } = JSON.parse(readFileSync(join(inside, 'package.json'), 'utf8'));
  for (const name of Object.keys(dependencies)) {
    mkdirSync(dirname(join(modules, name)), { recursive: true });
    symlinkSync(join(repository, 'node_modules', name), join(modules, name));
  }
  return { at, inside, exports, remove: () => rmSync(at, { recursive: true, force: true }) };
}
