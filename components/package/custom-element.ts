import { defineOnce } from '../embed/define.js';

/**
 * In the built files this stands in for lit's decorator of the same name: a page that loads two copies of them
 * keeps the elements of the first, where lit would throw.
 */
export const customElement =
  (name: string) =>
  (element: CustomElementConstructor): void =>
    defineOnce(name, element);
