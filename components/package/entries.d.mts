export declare const ELEMENT_ENTRIES: Readonly<Record<string, string>>;
export declare const ENTRIES: Readonly<Record<string, string>>;
