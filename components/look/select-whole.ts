/**
 * Selects all that stands in a field that was just entered, so that typing takes its place. Where a press entered
 * it, WebKit sets the caret after the field was told of the focus: once the press is over, all is selected again.
 */
export function selectWhole(field: HTMLInputElement): void {
  field.select();
  const over = new AbortController();
  const { signal } = over;
  field.addEventListener(
    'mouseup',
    () => {
      over.abort();
      if (field.selectionStart === field.selectionEnd) field.select();
    },
    { signal },
  );
  for (const type of ['keydown', 'blur']) field.addEventListener(type, () => over.abort(), { signal });
}
