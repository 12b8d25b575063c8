/** Types of the elements for Vue’s templates: `import 'croftsheet/vue'`. */
import type { HTMLAttributes, ReservedProps } from 'vue';
import type {} from '../../croftsheet.js';
import type { CroftEvents } from '../../events.js';
import type { CroftAttributes } from '../../markup-types.js';

type Camel<Name extends string> = Name extends `${infer First}-${infer Rest}`
  ? `${First}${Capitalize<Camel<Rest>>}`
  : Name;

/** Templates are checked by the names of properties: `read-only` as `readOnly`, `@croft-change` as `onCroftChange`. */
type Props<Tag extends keyof CroftAttributes> = {
  readonly [Name in keyof CroftAttributes[Tag] as Camel<Name & string>]: CroftAttributes[Tag][Name];
} & {
  readonly [Name in keyof CroftEvents as `on${Capitalize<Name | Camel<Name>>}`]?:
    | ((event: CroftEvents[Name]) => void)
    | undefined;
} & { readonly [data: `data${string}`]: unknown };

type Tags = {
  [Tag in keyof CroftAttributes]: new () => HTMLElementTagNameMap[Tag] & {
    /** Only for the checking of templates: no element has it. */
    $props: HTMLAttributes & ReservedProps & Props<Tag>;
  };
};

declare module 'vue' {
  interface GlobalComponents extends Tags {}
}
