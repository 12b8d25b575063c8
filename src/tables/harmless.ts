/**
 * Text that a program might take for a formula (after `=`, `+`, `-`, `@`, a tab or a return) gets an apostrophe
 * before it. So does text that has one there already, or bringing it in again would take that away.
 */
export const harmless = (text: string): string => (/^'*[=+\-@\t\r]/.test(text) ? `'${text}` : text);

/** Takes away the apostrophe that `harmless` set. */
export const asMeant = (text: string): string => (/^'+[=+\-@\t\r]/.test(text) ? text.slice(1) : text);

/** True of text that `harmless` has marked: it is meant as text, whatever it looks like. */
export const isMarked = (text: string): boolean => asMeant(text) !== text;
