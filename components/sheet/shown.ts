export * from '../../src/live/shown.js';
