/** Types of the elements for React: `import 'croftsheet/react'`. From 18.3 on; in 18 no event goes by an attribute. */
import type { DetailedHTMLProps, HTMLAttributes } from 'react';
import type {} from '../../croftsheet.js';
import type { CroftAttributes, CroftListeners } from '../../markup-types.js';

type Written<Element> = DetailedHTMLProps<HTMLAttributes<Element>, Element> & CroftListeners;

type Tags = {
  [Tag in keyof CroftAttributes]: Written<HTMLElementTagNameMap[Tag]> &
    CroftAttributes[Tag] & { readonly class?: string | undefined };
};

declare module 'react' {
  namespace JSX {
    interface IntrinsicElements extends Tags {}
  }
}
