/** Calls back when the page is put away (it may never come back) and when it is shown again. */
export function watchPage(hidden: () => void, shown: () => void): () => void {
  if (typeof document === 'undefined' || typeof window === 'undefined') return () => {};
  const changed = () => (document.visibilityState === 'hidden' ? hidden() : shown());
  document.addEventListener('visibilitychange', changed);
  window.addEventListener('pagehide', hidden);
  window.addEventListener('pageshow', shown);
  return () => {
    document.removeEventListener('visibilitychange', changed);
    window.removeEventListener('pagehide', hidden);
    window.removeEventListener('pageshow', shown);
  };
}

let asked = false;

/** Asks the browser, once a page, not to clear the storage when the device runs short. */
export async function askToPersist(): Promise<void> {
  if (asked || typeof navigator === 'undefined' || !navigator.storage?.persist) return;
  asked = true;
  try {
    if (!(await navigator.storage.persisted())) await navigator.storage.persist();
  } catch {
    // A refusal changes nothing about what is saved now.
  }
}
