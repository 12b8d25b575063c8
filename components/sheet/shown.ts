export * from '../../src/live/shown.js';
export { shownSoFar } from '../../src/live/shown-so-far.js';
