import type { Messages, Translation } from './language.js';

/** Translations into German of each part of the catalogue that has some, by the part's name. */
const parts: Record<string, { readonly default: Record<string, Translation> }> = import.meta.glob(
  // The demo's page brings its own.
  ['./de/*.json', '!./de/demo.json'],
  {
    eager: true,
  },
);

/** Everything that can be said in German. */
export const german: Messages = new Map(Object.values(parts).flatMap((part) => Object.entries(part.default)));
