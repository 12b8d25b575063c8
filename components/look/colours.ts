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
  .tint.tint-${colour} { background-color: var(--${colour}); }
  .tint-${colour}::before { content: '${COLOUR_SIGNS[colour]}' / ''; color: var(--${colour}-deep); }`,
).join('');

/** Whatever is marked with a colour: class `tint` with `tint-COLOUR`; `tint-inline` puts the sign beside the words. */
export const colourStyles = css`
  :is(td, button, span).tint {
    position: relative;
  }
  .tint::before {
    position: absolute;
    inset: 0.125rem auto auto 0.1875rem;
    font: 400 0.5rem/1 var(--font);
  }
  .tint.tint-inline::before {
    position: static;
    font-size: 0.75rem;
  }
  ${unsafeCSS(rules)}
`;
