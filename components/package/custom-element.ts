import { offerElement } from './definitions.js';

/**
 * In the built files this stands in for lit's decorator of the same name. A page that loads two copies of them keeps
 * the elements of the first, where lit would throw; and a page that imports the classes alone defines nothing yet.
 */
export const customElement =
  (name: string) =>
  (element: CustomElementConstructor): void =>
    offerElement(name, element);
