/** Runs something once the page has been painted as it now is, and has a moment to spare. */
export function afterPaint(run: () => void): void {
  // A page out of sight is not painted.
  if (document.visibilityState === 'hidden') {
    setTimeout(run);
    return;
  }
  requestAnimationFrame(() => {
    if (typeof requestIdleCallback === 'function') requestIdleCallback(run, { timeout: 300 });
    else setTimeout(run);
  });
}
