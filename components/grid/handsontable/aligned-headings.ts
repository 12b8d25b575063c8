/**
 * Holds headings over their columns. A browser scrolls headings alone where it brings something in them into
 * sight, as when text is looked for on the page, and the library does not hear of that. A figure would then
 * stand under the title of another.
 *
 * @param root the grid's own element
 */
export function alignHeadings(root: HTMLElement): void {
  const align = (heading: Element): void => {
    const cells = root.querySelector('.ht_master .wtHolder');
    if (cells && heading.isConnected && heading.scrollLeft !== cells.scrollLeft)
      heading.scrollLeft = cells.scrollLeft;
  };
  root.addEventListener(
    'scroll',
    ({ target }) => {
      if (!(target instanceof Element) || !target.parentElement?.matches('.ht_clone_top')) return;
      // A person may scroll by the headings too: by then the library has moved the cells with them.
      requestAnimationFrame(() => align(target));
    },
    { capture: true, passive: true },
  );
}
