/** The `lang` of the element or of the nearest around it, out of shadow roots too; '' where none is said. */
export function languageAround(element: Element): string {
  for (let at: Element | null = element; at; ) {
    const found: Element | null = at.closest('[lang]');
    if (found) return found.getAttribute('lang') ?? '';
    const root = at.getRootNode();
    at = root instanceof ShadowRoot ? root.host : null;
  }
  return '';
}
