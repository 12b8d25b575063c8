import { css } from 'lit';

/** The beginning of every element: its ground, headings, words and signs, on pages read from right to left too. */
export const text = css`
  :host {
    display: block;
    color: var(--ink);
    font: 400 0.9375rem/1.5 var(--font);
    letter-spacing: normal;
    text-align: start;
    text-transform: none;
    word-spacing: normal;
    white-space: normal;
  }
  :host([hidden]) {
    display: none;
  }
  *,
  ::before,
  ::after {
    box-sizing: border-box;
  }
  h2,
  h3,
  p,
  ul,
  ol,
  dl,
  dd,
  fieldset {
    margin: 0;
    padding: 0;
    border: 0;
  }
  h2,
  h3 {
    font: 600 1.125rem/1.3 var(--font-title);
  }
  h3 {
    font-size: 1rem;
  }
  ul,
  ol {
    list-style: none;
  }
  a {
    color: var(--accent);
  }
  .quiet {
    color: var(--quiet);
  }
  .small {
    font-size: 0.8125rem;
    line-height: 1.45;
  }
  .figures {
    font-family: var(--font-figures);
    font-variant-numeric: tabular-nums lining-nums;
  }
  :focus-visible {
    outline: 2px solid var(--focus);
    outline-offset: 2px;
    border-radius: 3px;
  }
  svg.icon {
    width: 1.125em;
    height: 1.125em;
    flex: none;
    fill: none;
    stroke: currentColor;
    stroke-width: 1.6;
    stroke-linecap: round;
    stroke-linejoin: round;
  }
  .problem {
    color: var(--problem);
  }
  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    margin: -1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  /*
   * On a page that is read from right to left each piece of text goes its own way, as its first letters say:
   * what people write may be in any script. Formulas are always read from left to right; arrows turn round.
   */
  :is(p, li, dt, dd, h2, h3, h4, caption, legend, label, summary, span, button):dir(rtl) {
    unicode-bidi: plaintext;
    text-align: right;
  }
  code,
  input[spellcheck='false'] {
    direction: ltr;
    unicode-bidi: isolate;
    text-align: left;
  }
  .turns:dir(rtl) {
    display: inline-block;
    scale: -1 1;
  }
  @media (prefers-contrast: more) {
    :focus-visible {
      outline-width: 3px;
    }
  }
`;
