/** Types of the elements for Solid: `import 'croftsheet/solid'`. */
import type { JSX } from 'solid-js';
import type {} from '../../croftsheet.js';
import type { CroftAttributes, CroftListeners } from '../../markup-types.js';

type Tags = {
  [Tag in keyof CroftAttributes]: JSX.HTMLAttributes<HTMLElementTagNameMap[Tag]> &
    CroftListeners &
    CroftAttributes[Tag];
};

declare module 'solid-js' {
  namespace JSX {
    interface IntrinsicElements extends Tags {}
  }
}
