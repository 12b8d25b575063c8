export declare const ELEMENT_ENTRIES: Readonly<Record<string, string>>;
export declare const ENTRIES: Readonly<Record<string, string>>;
export declare const DEFINING: readonly string[];
export declare const ONE_FILE: { readonly folder: string; readonly name: string; readonly source: string };
