/** What to tell a person whose machine has no Chromium. */
export const NO_CHROMIUM: string;
/** Path of a Chromium, or null. `CROFTSHEET_CHROMIUM` comes before the usual places. */
export function findChromium(options?: { readonly whole?: boolean }): string | null;
/** Whether it is the shell, which has no windows and so does less work for the same tests. */
export function isShell(path: string | null): boolean;
