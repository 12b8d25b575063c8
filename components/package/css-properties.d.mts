export declare const CSS_PROPERTIES: Readonly<Record<string, string>>;
