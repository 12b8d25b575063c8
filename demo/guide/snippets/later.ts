/** Brings an element in when it is asked for; the bundler makes a file of its own of it. */
export async function showRunway(into: Element): Promise<void> {
  await import('croftsheet/croft-runway');
  into.append(document.createElement('croft-runway'));
}
