import type { Plugin } from 'vite';

export declare function guidePages(): Plugin;
export declare function booksBeside(): Plugin;
