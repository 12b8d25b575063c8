const LIKE_FORMULA = /^'*[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/;

/**
 * Text that a program might take for a formula (after `=`, `+`, `-`, `@`, narrow or wide, a tab or a line end) gets an apostrophe
 * before it. So does text that has one there already, or bringing it in again would take that away.
 */
export const harmless = (text: string): string => (LIKE_FORMULA.test(text) ? `'${text}` : text);

/** Takes away the apostrophe that `harmless` set. */
export const asMeant = (text: string): string =>
  text.startsWith("'") && LIKE_FORMULA.test(text) ? text.slice(1) : text;

/** True of text that `harmless` has marked: it is meant as text, whatever it looks like. */
export const isMarked = (text: string): boolean => asMeant(text) !== text;
