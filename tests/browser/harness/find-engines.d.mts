export type EngineName = 'chromium' | 'firefox' | 'webkit';
export const ENGINES: readonly EngineName[];
/** Debian’s packages that bring an engine; the first of them that can be installed is enough. */
export const PACKAGES: Record<EngineName, readonly (readonly string[])[]>;
export function findFirefox(): string | null;
/** WebKitGTK’s driver, its small browser, and what makes a display where there is none. */
export function findWebkit(): { driver: string; browser: string; display: string } | null;
export function hasEngine(engine: EngineName): boolean;
