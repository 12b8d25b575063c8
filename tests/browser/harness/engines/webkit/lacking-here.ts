import { skipForWantOf } from '../lacking.js';

/** An object that does what is given; a test that asks it for anything else is skipped, with what it asked for. */
export function withWhatIsLacking<T extends object>(what: string, given: object): T {
  return new Proxy(given, {
    get(target, name, self) {
      if (name in target || typeof name === 'symbol' || name === 'then')
        return Reflect.get(target, name, self);
      return () => skipForWantOf(`${what}.${name}`);
    },
  }) as T;
}
