/** Longest wait in milliseconds for a first paint that has begun: a page in the background is never painted. */
const AT_MOST = 60;

/** Whether readers have seen anything of the page. */
export const painted = (): boolean => performance.getEntriesByType('paint').length > 0;

let coming: Promise<void> | null | undefined;

/**
 * Resolves when the page's first paint is out, where it is on its way already; null where there is nothing to wait
 * for. Browsers lay a page out before its deferred scripts run: drawing then would only hold that paint up.
 */
export function firstPaint(): Promise<void> | null {
  if (painted() || document.visibilityState !== 'visible') return null;
  // 0 as long as no frame has begun: then the first can show the table as it stays.
  if (!document.timeline?.currentTime || typeof PerformanceObserver === 'undefined') return null;
  if (coming !== undefined) return coming;
  coming = new Promise<void>((done) => {
    const observer = new PerformanceObserver(finish);
    const timer = setTimeout(finish, AT_MOST);
    function finish(): void {
      observer.disconnect();
      clearTimeout(timer);
      coming = null;
      done();
    }
    observer.observe({ type: 'paint', buffered: true });
  });
  return coming;
}
