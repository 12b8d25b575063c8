export declare const PACKAGE_ALIASES: { find: RegExp; replacement: string }[];
