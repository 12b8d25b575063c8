import { css, unsafeCSS } from 'lit';
import { COLOURS, type Colour } from '../../src/book/index.js';

/** A sign of each colour, so that cells are told apart without seeing colours. */
export const COLOUR_SIGNS: Readonly<Record<Colour, string>> = {
  rose: '●',
  amber: '▲',
  leaf: '◆',
  sky: '■',
  plum: '✚',
  stone: '▬',
};

const rules = COLOURS.map(
  (colour) => `
  .tint-${colour} { background-color: var(--${colour}); }
  .tint-${colour}::before { content: '${COLOUR_SIGNS[colour]}' / ''; color: var(--${colour}-deep); }`,
).join('');

/** Cells marked with a colour: class `tint` with `tint-COLOUR`. */
export const colourStyles = css`
  .tint::before {
    float: inline-start;
    margin-inline-end: 0.25rem;
    font: 400 0.5625rem/1.25rem var(--font);
    text-decoration: none;
  }
  ${unsafeCSS(rules)}
`;
