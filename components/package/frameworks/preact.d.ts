/** Types of the elements for Preact: `import 'croftsheet/preact'`. */
import type { HTMLAttributes } from 'preact';
import type {} from '../../croftsheet.js';
import type { CroftAttributes, CroftListeners } from '../../markup-types.js';

type Tags = {
  [Tag in keyof CroftAttributes]: HTMLAttributes<HTMLElementTagNameMap[Tag]> &
    CroftListeners &
    CroftAttributes[Tag];
};

declare module 'preact' {
  namespace JSX {
    interface IntrinsicElements extends Tags {}
  }
}
