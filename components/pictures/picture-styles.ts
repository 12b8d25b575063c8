import { css } from 'lit';

/** What the pictures share: their frame, axis, rows and how they look in print and in high contrast. */
export const pictureStyles = css`
  :host {
    container-type: inline-size;
    --bar: var(--croft-bar, var(--accent));
    --short: var(--croft-short, var(--problem));
    --over: var(--croft-over, var(--own));
    --harvest: var(--croft-harvest, light-dark(#8a5a00, #f0bf5a));
    --rule: color-mix(in srgb, var(--line) 75%, transparent);
  }
  .head {
    display: grid;
    gap: 0.125rem;
    margin-bottom: 0.75rem;
  }
  .controls {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 1rem;
    align-items: end;
    margin-bottom: 0.625rem;
  }
  .controls select {
    width: auto;
    max-width: 100%;
  }
  .controls .check {
    display: flex;
    gap: 0.4rem;
    align-items: center;
    min-height: 2.125rem;
  }
  .controls .button {
    margin-inline-start: auto;
  }
  .key {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 1.125rem;
    margin: 0 0 0.5rem;
  }
  .key li {
    display: inline-flex;
    align-items: center;
    gap: 0.375rem;
  }
  .key svg {
    width: 2.25rem;
    height: 18px;
    flex: none;
    overflow: visible;
  }
  .key .one {
    width: 1.125rem;
  }
  .defs {
    position: absolute;
    width: 0;
    height: 0;
  }
  .axis {
    position: sticky;
    top: var(--croft-sticky-top, 0px);
    z-index: 2;
    background: var(--paper);
    border-bottom: 1px solid var(--line);
  }
  /* Time runs from left to right also on a page that is read from right to left, as its dates and figures do. */
  .plot {
    direction: ltr;
  }
  .axis .plot {
    position: relative;
    height: 2.25rem;
    font-size: 0.6875rem;
    line-height: 1.1;
    white-space: nowrap;
    color: var(--quiet);
  }
  .tick,
  .day {
    position: absolute;
  }
  .tick {
    bottom: 0.2rem;
    padding-inline-start: 3px;
  }
  .tick b {
    display: block;
  }
  .tick.year,
  .day {
    color: var(--ink);
  }
  .day {
    top: 0.1rem;
    font-weight: 600;
  }
  .day.before {
    translate: -100%;
  }
  .mark {
    display: grid;
    position: relative;
    width: 100%;
    min-height: 30px;
    color: inherit;
    scroll-margin-block: 3.5rem;
    border-radius: 0;
  }
  .mark:is(:hover, :focus-visible) {
    background: color-mix(in srgb, var(--plan) 80%, transparent);
  }
  .mark:focus-visible {
    outline-offset: 1px;
    z-index: 1;
  }
  .mark > * {
    align-self: center;
  }
  svg.plot {
    display: block;
    width: 100%;
    height: 26px;
    overflow: hidden;
  }
  .name .way,
  .lasts {
    color: var(--quiet);
  }
  .name {
    overflow-wrap: anywhere;
  }
  .rules line {
    stroke: var(--rule);
    shape-rendering: crispEdges;
  }
  .rules .year {
    stroke: color-mix(in srgb, var(--quiet) 60%, var(--line));
  }
  .rules .as-of {
    stroke: var(--ink);
    stroke-width: 2;
  }
  h3 {
    margin: 1.125rem 0 0.25rem;
  }
  .empty {
    border: 1px dashed var(--line);
    border-radius: var(--radius);
    padding: 1.25rem;
    max-width: 62ch;
  }
  .scroll {
    overflow-x: auto;
    border: 1px solid var(--line);
    border-radius: var(--radius);
    background: var(--raised);
  }
  .scroll + .scroll {
    margin-top: 1rem;
  }
  table {
    border-collapse: collapse;
    width: 100%;
    font-size: 0.875rem;
  }
  th,
  td {
    text-align: start;
    font-weight: 400;
    padding: 0.375rem 0.625rem;
    border-bottom: 1px solid var(--line);
    vertical-align: top;
  }
  thead th {
    font-weight: 600;
    font-size: 0.8125rem;
    vertical-align: bottom;
    background: var(--plan);
  }
  tbody tr:last-child > * {
    border-bottom: 0;
  }
  td.figures {
    white-space: nowrap;
  }
  /* What a line is about stays in sight while its figures are scrolled to. */
  .scroll tr > :first-child {
    position: sticky;
    inset-inline-start: 0;
    background: var(--raised);
    border-inline-end: 1px solid var(--line);
  }
  .scroll thead tr > :first-child {
    background: var(--plan);
  }
  .link {
    color: var(--accent);
    text-decoration: underline;
    text-underline-offset: 2px;
  }
  @container (max-width: 63.99rem) {
    .tick.narrow {
      display: none;
    }
  }
  @container (min-width: 64rem) {
    .tick.wide {
      display: none;
    }
  }
  @media (pointer: coarse) {
    .mark {
      min-height: 2.75rem;
    }
  }
  @media (max-height: 26rem) {
    .axis {
      position: static;
    }
  }
  @media (prefers-contrast: more) {
    :host {
      --rule: color-mix(in srgb, var(--ink) 45%, var(--paper));
    }
  }
  @media (forced-colors: active) {
    :host {
      --bar: CanvasText;
      --short: CanvasText;
      --over: CanvasText;
      --harvest: CanvasText;
      --rule: GrayText;
    }
    .rules .as-of {
      stroke: Highlight;
    }
    .mark:is(:hover, :focus-visible) {
      background: none;
      outline: 2px solid Highlight;
      outline-offset: -2px;
    }
  }
  @media print {
    :host {
      --rule: #ccc;
      --plan: #fff;
      --bar: #333;
      --short: #000;
      --over: #000;
      --harvest: #000;
      font-size: 9pt;
      print-color-adjust: exact;
      -webkit-print-color-adjust: exact;
    }
    .controls {
      display: none;
    }
    /* A table's head is printed again on each page. */
    .chart {
      display: table;
      width: 100%;
    }
    .chart > .axis {
      display: table-header-group;
      position: static;
      break-inside: avoid;
    }
    .rows {
      display: table-row-group;
    }
    .rows > * {
      display: table-row;
      break-inside: avoid;
    }
    .mark {
      min-height: 0;
    }
    .small {
      font-size: 8pt;
      line-height: 1.3;
    }
    h3,
    .group {
      break-after: avoid;
    }
    svg.plot {
      height: 18px;
    }
    .scroll {
      overflow: visible;
      border: 0;
    }
    table {
      font-size: 8pt;
    }
    tr,
    .empty {
      break-inside: avoid;
    }
    .link {
      text-decoration: none;
      color: inherit;
    }
  }
`;
