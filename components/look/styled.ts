import { noChange } from 'lit';
import { Directive, directive, type ElementPart, type PartInfo, PartType } from 'lit/directive.js';

type Styles = Readonly<Record<string, string>>;

class StyledDirective extends Directive {
  #set: readonly string[] = [];

  constructor(part: PartInfo) {
    super(part);
    if (part.type !== PartType.ELEMENT) throw new Error('styled stands in the tag of an element.');
  }

  render(_styles: Styles): unknown {
    return noChange;
  }

  override update(part: ElementPart, [styles]: [Styles]): unknown {
    const { style } = part.element as HTMLElement;
    const names = Object.keys(styles);
    for (const name of this.#set) if (!names.includes(name)) style.removeProperty(name);
    for (const name of names) style.setProperty(name, styles[name]!);
    this.#set = names;
    return noChange;
  }
}

/**
 * CSS properties of an element, by name: `<div ${styled({ left: '10%' })}>`. They are set one by one: a page may
 * forbid `style` attributes (`style-src 'self'`), and lit's own directive writes one at first.
 */
export const styled = directive(StyledDirective);
