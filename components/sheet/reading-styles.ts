import { css } from 'lit';

export const readingStyles = css`
  .frame {
    position: relative;
    overflow: auto;
    max-height: var(--height);
    border: 1px solid var(--line);
    border-top: 4px solid var(--accent);
    border-radius: var(--radius);
    background: var(--paper);
    overscroll-behavior-x: contain;
    /* Room for the header and the first column, which stay in place. */
    scroll-padding-block: 4rem 0.5rem;
    scroll-padding-inline: 9.5rem 0.5rem;
    --up: 0.375rem;
  }
  table {
    border-collapse: separate;
    border-spacing: 0;
    width: max-content;
    min-width: 100%;
    font-size: 0.875rem;
    line-height: 1.4;
  }
  th,
  td {
    padding: var(--up) 0.625rem;
    text-align: start;
    vertical-align: top;
    border-bottom: 1px solid var(--line);
    font-weight: 400;
    max-width: 16rem;
    overflow-wrap: break-word;
  }
  thead th {
    position: sticky;
    top: 0;
    z-index: 2;
    vertical-align: bottom;
    font-size: 0.8125rem;
    line-height: 1.25;
    font-weight: 600;
    background: var(--raised);
    border-bottom: 1px solid var(--quiet);
  }
  /* By class: a style attribute would need a laxer security policy than a page may have. */
  .wide-5 {
    min-width: 5rem;
  }
  .wide-6 {
    min-width: 6rem;
  }
  .wide-7 {
    min-width: 7rem;
  }
  .wide-8 {
    min-width: 8rem;
  }
  /* An own column of long text is for reading: lines of a comfortable length. */
  .wide-24 {
    min-width: min(24rem, 70vw);
    max-width: 40rem;
  }
  thead .title {
    display: inline-block;
    max-width: 7rem;
  }
  thead .unit {
    display: block;
    font-weight: 400;
    color: var(--quiet);
  }
  tr > :first-child {
    position: sticky;
    inset-inline-start: 0;
    z-index: 1;
    background: var(--paper);
    border-inline-end: 1px solid var(--line);
    font-weight: 600;
    max-width: 11rem;
    min-width: 6rem;
  }
  thead tr > :first-child {
    z-index: 3;
    background: var(--raised);
  }
  .number,
  .date {
    white-space: nowrap;
    font-family: var(--font-figures);
    font-variant-numeric: tabular-nums lining-nums;
  }
  .number {
    text-align: end;
  }
  .planning {
    background: var(--plan);
  }
  thead .planning {
    background: var(--plan);
    box-shadow: inset 0 3px 0 var(--plan-line);
  }
  thead .own {
    box-shadow: inset 0 3px 0 var(--own);
  }
  tbody tr:hover > * {
    background-image: linear-gradient(
      color-mix(in srgb, var(--accent) 6%, transparent),
      color-mix(in srgb, var(--accent) 6%, transparent)
    );
  }
  tbody tr:last-child > * {
    border-bottom: 0;
  }
  td:focus-visible,
  th:focus-visible {
    outline-offset: -2px;
  }
  .figure {
    display: block;
    width: calc(100% + 1.25rem);
    margin: calc(-1 * var(--up)) -0.625rem;
    padding: var(--up) 0.625rem;
    min-height: 1.4em;
    white-space: inherit;
  }
  .number .figure {
    text-align: end;
  }
  .figure:focus-visible {
    outline-offset: -2px;
  }
  .chosen {
    box-shadow: inset 0 0 0 2px var(--accent);
  }
  .after {
    display: inline-block;
    min-width: 4.75rem;
    text-align: start;
    color: var(--quiet);
    font-size: 0.8125rem;
  }
  .range {
    display: block;
    color: var(--quiet);
    font-size: 0.75rem;
  }
  /* A figure that asks for doing something. */
  .strong {
    font-weight: 650;
  }
  .strong .figure::before {
    content: "";
    display: inline-block;
    width: 0.5625rem;
    height: 0.5rem;
    margin-inline-end: 0.3125rem;
    background: var(--problem);
    clip-path: polygon(50% 0, 100% 100%, 0 100%);
  }
  .look-at {
    display: inline-block;
    margin-inline-start: 0.25rem;
    font: 600 0.6875rem/1.5 var(--font);
    color: var(--problem);
    background: var(--problem-paper);
    border-radius: 3px;
    padding: 0 0.3rem;
    white-space: nowrap;
  }
  .noted {
    display: inline-block;
    margin-inline-start: 0.25rem;
    font: 400 0.6875rem/1.5 var(--font);
    color: var(--quiet);
    border-bottom: 1px dotted var(--quiet);
    white-space: nowrap;
  }
  .error {
    color: var(--problem);
    white-space: nowrap;
  }
  .legend {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.25rem 1.125rem;
    margin-bottom: 0.5rem;
  }
  .end {
    margin-inline-start: auto;
    display: flex;
    gap: 0.5rem;
    align-items: center;
  }
  .used-up {
    display: flex;
    gap: 0.375rem;
    align-items: center;
    font-weight: 400;
    white-space: nowrap;
  }
  .find {
    display: flex;
    align-items: center;
    gap: 0.5rem;
  }
  .find input {
    width: 11rem;
  }
  .foot {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 1rem;
    align-items: center;
    padding-top: 0.5rem;
  }
  :is(th, td):dir(rtl) {
    unicode-bidi: plaintext;
    text-align: right;
  }
  .number:dir(rtl),
  .number :is(span, button):dir(rtl) {
    text-align: left;
  }
  @media (pointer: coarse) {
    .frame {
      --up: 0.75rem;
    }
  }
  /* A low window: what stays in place must not cover all of it. */
  @media (max-height: 26rem) {
    .frame {
      max-height: 85dvh;
    }
    thead th {
      position: static;
    }
    tr > :first-child {
      position: static;
    }
  }
  @media (forced-colors: active) {
    thead .planning {
      border-top: 4px double;
    }
    thead .own {
      border-top: 3px dashed;
    }
    .strong .figure::before {
      forced-color-adjust: none;
      background: CanvasText;
    }
    .chosen {
      outline: 2px solid Highlight;
      outline-offset: -2px;
    }
    .look-at {
      border: 1px solid;
    }
  }
  details ul {
    display: grid;
    gap: 0.375rem;
    padding-block-start: 0.5rem;
    padding-inline-start: 1rem;
  }
  details li button {
    text-decoration: underline;
    text-underline-offset: 2px;
    color: var(--accent);
  }
  summary {
    cursor: pointer;
    width: fit-content;
  }
  @media (max-width: 40rem) {
    tr > :first-child {
      max-width: 8.5rem;
      min-width: 5.5rem;
    }
    .end {
      flex-wrap: wrap;
      margin-inline-start: 0;
      width: 100%;
    }
    .find {
      flex: 1 1 8rem;
    }
    .find input {
      width: 100%;
    }
  }
`;
