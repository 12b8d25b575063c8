import { defineOnce } from '../embed/define.js';

interface Initializable extends CustomElementConstructor {
  /** Of lit's elements: called as each of them is made. */
  readonly addInitializer?: (initializer: () => void) => void;
}

const waiting = new Map<string, CustomElementConstructor>();
let begun = false;

/**
 * Takes an element under its name. It is defined at once where an entry that defines elements has been loaded;
 * else when one is, when `defineElements` is called, or when the first element of ours is made, since one may
 * need others inside.
 */
export function offerElement(name: string, element: Initializable): void {
  if (begun) defineOnce(name, element);
  else {
    waiting.set(name, element);
    element.addInitializer?.(defineElements);
  }
}

/** Defines every element whose class has been loaded, under its own name, and from now on each as it loads. */
export function defineElements(): void {
  begun = true;
  for (const [name, element] of waiting) defineOnce(name, element);
  waiting.clear();
}
