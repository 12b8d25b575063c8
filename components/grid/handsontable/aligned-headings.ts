/**
 * Holds headings over their columns. When other columns are to stand still, the library draws the headings anew;
 * while they are narrow the browser scrolls them back to the start, and the library does not hear of it. A figure
 * would then stand under the title of another.
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
