import { css } from 'lit';

/** Groups, what stands under columns, and notes in the reading view. */
export const readingLooks = css`
  tr.group > * {
    background: color-mix(in srgb, var(--accent) 10%, var(--paper));
    border-block: 1px solid var(--line);
    white-space: nowrap;
  }
  tr.group > th {
    overflow: visible;
    max-width: none;
  }
  tr.group button {
    display: inline-flex;
    align-items: center;
    gap: 0.5rem;
    min-height: 1.5rem;
    font-weight: 650;
  }
  .turn {
    width: 0.375rem;
    height: 0.375rem;
    border: solid currentColor;
    border-width: 0 2px 2px 0;
    rotate: 45deg;
    translate: 0 -0.125rem;
  }
  [aria-expanded='false'] > .turn {
    rotate: -45deg;
    translate: 0 0;
  }
  .count,
  .name {
    font: 400 0.75rem/1.25 var(--font);
    color: var(--quiet);
  }
  tfoot > tr > * {
    position: sticky;
    bottom: 0;
    z-index: 2;
    background: var(--raised);
    border-top: 2px solid var(--accent);
    border-bottom: 0;
    vertical-align: bottom;
    max-width: 12rem;
  }
  tfoot > tr > :first-child {
    z-index: 3;
    background: var(--raised);
  }
  tfoot .name {
    display: block;
  }
  .sum {
    font-variant-numeric: tabular-nums lining-nums;
  }
  tfoot .sum {
    font-weight: 600;
    white-space: normal;
  }
  .sum .why {
    display: inline-block;
    max-width: 11rem;
    font: 400 0.75rem/1.3 var(--font);
    color: var(--problem);
    white-space: normal;
    text-align: start;
  }
  .own-note {
    display: inline-block;
    margin-inline-start: 0.375rem;
    font: 400 0.6875rem/1.5 var(--font);
    color: var(--accent);
    border-bottom: 1px solid currentColor;
    white-space: nowrap;
  }
  .own-notes {
    padding-top: 0.5rem;
  }
  .own-notes .whose {
    font-weight: 600;
  }
  @media screen and (max-width: 40rem) {
    /* One long list would push every other row out of the window; whoever chooses it reads all of it. */
    td.planning:not(.number, .date, .chosen) .figure:not(:has(.look-at, .noted, .own-note, .range)) {
      display: -webkit-box;
      -webkit-box-orient: vertical;
      -webkit-line-clamp: 3;
      overflow: hidden;
      /* Room below would show what is left out. */
      padding-bottom: 0;
      margin-bottom: 0;
    }
  }
  @media print {
    tfoot > tr > * {
      position: static;
    }
  }
`;
