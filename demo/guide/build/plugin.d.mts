import type { Plugin } from 'vite';

export declare function guidePages(): Plugin;
