/** What to tell a person whose machine has no Chromium. */
export const NO_CHROMIUM: string;
/** Path of a Chromium, or null. `CROFTSHEET_CHROMIUM` comes before the usual places. */
export function findChromium(): string | null;
