import type { Exact } from '../exact.js';
import type { Answer } from '../types.js';

/** An answer that is a chance, from 0 to 1. */
export const chanceOf = (value: Exact): Answer => ({ kind: 'chance', value });
