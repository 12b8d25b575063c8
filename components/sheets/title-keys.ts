/**
 * Enter in a title's field makes what the dialog is for. Kept from the page: else the same key would press
 * the button that has the focus once the dialog is gone.
 */
export function onEnter(event: KeyboardEvent, make: () => void): void {
  if (event.key !== 'Enter') return;
  event.preventDefault();
  make();
}
