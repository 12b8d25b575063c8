// Debian's packages of the engines, where this user may install packages.
import { spawnSync } from 'node:child_process';
import { PACKAGES } from './browser/harness/find-engines.mjs';

const has = (command) => spawnSync('sh', ['-c', `command -v ${command}`]).status === 0;
const isRoot = process.getuid?.() === 0;
const state = { updated: false };
/** Where nothing answers, tests go on with what is there. */
const IMPATIENT = ['-o', 'Acquire::Retries=0', '-o', 'Acquire::http::Timeout=20'];
const LONGEST = 180_000;

/** Whether packages can be put in without asking anybody: in a container or where CI says that it is one. */
export const mayInstallFreely = () =>
  process.platform === 'linux' && has('apt-get') && (isRoot || (Boolean(process.env.CI) && has('sudo')));

/** Installs an engine; whether that was possible. */
export function installEngine(engine) {
  if (process.platform !== 'linux' || !has('apt-get') || !(isRoot || has('sudo'))) return false;
  const apt = (...args) => {
    const [command, ...rest] = [...(isRoot ? [] : ['sudo', '-n']), 'apt-get', ...IMPATIENT, ...args];
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    const stdio = ['ignore', 'ignore', 'inherit'];
    return spawnSync(command, rest, { stdio, env, timeout: LONGEST }).status === 0;
  };
  if (!state.updated && !apt('update', '-q')) return false;
  state.updated = true;
  return PACKAGES[engine].some((packages) => {
    console.log(`Installing Debian’s ${packages.join(', ')}.`);
    return apt('install', '-q', '-y', '--no-install-recommends', ...packages, 'fonts-dejavu-core');
  });
}
