export const BUILT_PAGES: string;
export function buildPages(into?: string): Promise<void>;
