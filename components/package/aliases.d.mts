export declare const STAND_INS: Readonly<Record<string, string>>;
export declare const PACKAGE_ALIASES: { find: RegExp | string; replacement: string }[];
