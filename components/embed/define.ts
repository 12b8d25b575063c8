declare const __CROFTSHEET_VERSION__: string | undefined;

/** The version of this copy of Croftsheet. */
export const VERSION: string =
  typeof __CROFTSHEET_VERSION__ === 'undefined' ? 'from source' : __CROFTSHEET_VERSION__;

interface Versioned extends CustomElementConstructor {
  readonly version?: string;
}

let said = false;

/**
 * Defines an element unless the page has it already, from another copy of Croftsheet: the first one counts, and
 * where that is another version, the console says so once.
 */
export function defineOnce(name: string, element: CustomElementConstructor): void {
  const registry = globalThis.customElements;
  if (!registry) return;
  if (!Object.hasOwn(element, 'version')) Object.defineProperty(element, 'version', { value: VERSION });
  const there: Versioned | undefined = registry.get(name);
  if (!there) {
    registry.define(name, element);
    return;
  }
  if (there === element || there.version === VERSION || said) return;
  said = true;
  const other = typeof there.version === 'string' ? `Croftsheet ${there.version}` : 'an earlier version';
  console.info(
    `Croftsheet ${VERSION} stands back: the page has <${name}> from ${other} already. Load one of them.`,
  );
}

/** What elements extend; where there is no page, as on a server, something inert. */
export const PageElement = (globalThis.HTMLElement ?? class {}) as typeof HTMLElement;
