import { css } from 'lit';

export const roomStyles = css`
  .over-picture {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    align-items: end;
    gap: 0 1rem;
  }
  .two {
    display: grid;
    gap: 0.5rem 2rem;
  }
  .two > section {
    min-width: 0;
  }
  .two p {
    max-width: 62ch;
    margin-bottom: 0.375rem;
  }
  .full {
    color: var(--short);
    font-weight: 600;
  }
  /* Weeks go from left to right on every page: see the pictures' own styles. */
  .plane,
  .months {
    direction: ltr;
  }
  .plane {
    position: relative;
  }
  svg.bars {
    position: absolute;
    width: 100%;
    height: 100%;
    overflow: hidden;
  }
  .taken {
    fill: color-mix(in srgb, var(--bar) 72%, var(--paper));
    stroke: var(--paper);
    stroke-width: 0.75;
  }
  .taken.full {
    fill: var(--bar);
  }
  rect.over {
    fill: url(#too-much);
    stroke: var(--short);
    stroke-width: 0.75;
  }
  .too-much {
    fill: color-mix(in srgb, var(--short) 30%, var(--paper));
  }
  .hatch {
    stroke: var(--short);
    stroke-width: 1.5;
  }
  .tick-line {
    stroke: var(--rule);
    shape-rendering: crispEdges;
  }
  .limit {
    stroke: var(--ink);
    stroke-width: 2;
    stroke-dasharray: 6 3;
  }
  .amount {
    position: absolute;
    inset-inline-start: 2px;
    translate: 0 -100%;
    font-size: 0.6875rem;
    line-height: 1.2;
    color: var(--ink);
    background: color-mix(in srgb, var(--paper) 88%, transparent);
    border-radius: 2px;
    padding-inline: 2px;
    pointer-events: none;
  }
  .limit-name {
    inset-inline: auto 2px;
    font-weight: 600;
    color: var(--ink);
  }
  .weeks {
    position: absolute;
    inset: 0;
    display: flex;
  }
  .week {
    flex: 1;
  }
  .week:hover,
  .week:focus-visible {
    background: color-mix(in srgb, var(--focus) 25%, transparent);
  }
  .week:focus-visible {
    outline-offset: 0;
  }
  .months {
    position: relative;
    height: 2rem;
    overflow-x: clip;
    border-top: 1px solid var(--line);
    font-size: 0.6875rem;
    line-height: 1.1;
    white-space: nowrap;
    color: var(--quiet);
  }
  .months .tick {
    top: 0.2rem;
    bottom: auto;
  }
  .months .tick.year {
    display: flex;
    flex-direction: column-reverse;
  }
  .readout {
    min-height: 1.45em;
    margin-bottom: 0.5rem;
  }
  .first {
    display: grid;
    gap: 0.125rem;
  }
  .first .mark {
    display: block;
    padding: 0.3rem 0.25rem;
    min-height: 0;
  }
  .first .name {
    font-weight: 600;
  }
  details {
    margin-top: 0.75rem;
  }
  summary {
    cursor: pointer;
    width: fit-content;
    text-decoration: underline;
    text-underline-offset: 2px;
  }
  .too-many {
    color: var(--short);
    font-weight: 600;
  }
  @container (min-width: 60rem) {
    .two {
      grid-template-columns: 1fr 1fr;
    }
  }
  @media (forced-colors: active) {
    .taken {
      fill: GrayText;
      stroke: Canvas;
    }
    .taken.full {
      fill: CanvasText;
    }
    rect.over {
      stroke: Highlight;
    }
    .amount {
      background: Canvas;
    }
  }
  @media print {
    .readout {
      display: none;
    }
    .two > section {
      break-inside: avoid;
    }
  }
`;
