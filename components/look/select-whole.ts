/**
 * Selects all that stands in a field that was just entered, so that typing takes its place. Where a press entered
 * it, WebKit sets the caret where it was pressed: after the field was told of the focus, or, where it found all
 * selected by then, once the press is over. So all is selected again at its end, and what WebKit would do then is not.
 */
export function selectWhole(field: HTMLInputElement): void {
  field.select();
  const over = new AbortController();
  const { signal } = over;
  field.addEventListener(
    'mouseup',
    (event) => {
      over.abort();
      if (field.selectionStart === field.selectionEnd) field.select();
      // A part that was selected by drawing over it stays as it is.
      if (field.selectionStart === 0 && field.selectionEnd === field.value.length) event.preventDefault();
    },
    { signal },
  );
  for (const type of ['keydown', 'blur']) field.addEventListener(type, () => over.abort(), { signal });
}
