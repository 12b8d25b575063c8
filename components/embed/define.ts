/** Defines an element unless the page has it already, from another copy of this script. */
export function defineOnce(name: string, element: CustomElementConstructor): void {
  const registry = globalThis.customElements;
  if (registry && !registry.get(name)) registry.define(name, element);
}

/** What elements extend; where there is no page, as on a server, something inert. */
export const PageElement = (globalThis.HTMLElement ?? class {}) as typeof HTMLElement;
