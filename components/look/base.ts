import { controls } from './base-controls.js';
import { dialogs } from './base-dialogs.js';
import { paper } from './base-paper.js';
import { text } from './base-text.js';
import { tokens } from './tokens.js';

/** What every element of ours adopts: constructed sheets, shared. What is said of paper comes last. */
export const base = [tokens, text, controls, dialogs, paper];
