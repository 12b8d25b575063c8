import type { ShownCell } from '../../sheet/shown.js';

/** Value, range and unit: `0.8 (0.5–1.2) quart jars`. */
export const wholeText = ({ text, range, unit }: ShownCell): string =>
  [text, range && `(${range})`, unit].filter(Boolean).join(' ');
