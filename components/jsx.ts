import type { CroftElements } from './markup-types.js';

/**
 * Types of the elements for JSX: importing this adds them to the global `JSX`. Libraries that keep their tags in a
 * module of their own have an entry here: `croftsheet/react`, `croftsheet/vue`, `croftsheet/svelte` and others.
 */
export type { CroftAttributes, CroftElements } from './markup-types.js';

declare global {
  namespace JSX {
    interface IntrinsicElements extends CroftElements {}
  }
}
