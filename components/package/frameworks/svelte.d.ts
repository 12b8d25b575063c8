/** Types of the elements for Svelte: `import 'croftsheet/svelte'`. */
import type { HTMLAttributes } from 'svelte/elements';
import type {} from '../../croftsheet.js';
import type { CroftAttributes, CroftListeners } from '../../markup-types.js';

type Tags = {
  [Tag in keyof CroftAttributes]: HTMLAttributes<HTMLElementTagNameMap[Tag]> &
    CroftListeners &
    CroftAttributes[Tag];
};

declare module 'svelte/elements' {
  interface SvelteHTMLElements extends Tags {}
}
