/** Longest wait in milliseconds for a first paint: a frame out of sight is never painted. */
const AT_MOST = 250;

/** Whether readers have seen anything of the page. */
export const painted = (): boolean => performance.getEntriesByType('paint').length > 0;

let coming: Promise<void> | null | undefined;

/**
 * Resolves when the page's first paint is out; null where there is nothing to wait for. Drawing a table before would
 * only hold that paint up: browsers mostly lay a page out before its deferred scripts run, and what could then be
 * thrown away is what readers see soonest.
 *
 * @param hasTable whether the page's own table stands there to be read meanwhile.
 */
export function firstPaint(hasTable: boolean): Promise<void> | null {
  if (painted() || document.visibilityState !== 'visible' || typeof PerformanceObserver === 'undefined')
    return null;
  // 0 as long as no frame has begun: then the first can show what else would come after it.
  if (!hasTable && !document.timeline?.currentTime) return null;
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
