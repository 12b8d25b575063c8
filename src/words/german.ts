import type { Messages } from './language.js';

export const german: Messages = new Map();
