import { css } from 'lit';

export const whatIfStyles = css`
  :host {
    container-type: inline-size;
  }
  .whole {
    display: grid;
    gap: 1rem;
  }
  .controls {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(19rem, 100%), 1fr));
    gap: 0.75rem;
  }
  .control {
    display: grid;
    align-content: start;
    gap: 0.25rem;
    padding: 0.625rem 0.75rem;
    border: 1px solid var(--line);
    border-inline-start: 3px solid var(--line);
    border-radius: var(--radius);
    background: var(--raised);
  }
  .control.tried {
    border-inline-start-color: var(--accent);
  }
  .name {
    display: flex;
    justify-content: space-between;
    align-items: start;
    gap: 0.5rem;
    min-height: 1.5rem;
  }
  .label {
    font-weight: 600;
    font-size: 0.875rem;
    overflow-wrap: anywhere;
  }
  .away {
    min-height: 1.5rem;
    padding: 0 0.25rem;
    margin-block-start: -0.125rem;
    margin-inline-end: -0.25rem;
  }
  @media (pointer: coarse) {
    .away {
      min-height: 2.75rem;
      margin-block: -0.625rem;
    }
  }
  .inputs {
    display: grid;
    grid-template-columns: minmax(6rem, 1fr) auto auto;
    align-items: center;
    gap: 0.5rem;
  }
  .inputs.choice,
  .inputs.tick {
    grid-template-columns: minmax(0, auto);
    justify-content: start;
    min-height: 2.125rem;
  }
  input.slider {
    accent-color: var(--accent);
    padding: 0;
    border: 0;
    background: none;
  }
  input.box {
    width: 5.5rem;
  }
  input.date {
    width: 9.25rem;
  }
  .was {
    display: flex;
    flex-wrap: wrap;
    gap: 0.125rem 0.625rem;
  }
  .problem:empty {
    display: none;
  }
  .doings {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.5rem 0.75rem;
  }
  .doings p {
    flex: 1 1 12rem;
  }
  .changes {
    display: grid;
    gap: 0.875rem;
    justify-items: start;
  }
  .scroll {
    width: 100%;
    max-height: var(--croft-what-if-height, 26rem);
    overflow: auto;
  }
  th,
  td {
    text-align: start;
    font-weight: 400;
    padding: 0.25rem 0.625rem;
    vertical-align: top;
  }
  thead th {
    position: sticky;
    top: 0;
    background: var(--plan);
    font-weight: 600;
    font-size: 0.8125rem;
    border-bottom: 1px solid var(--line);
  }
  tr.first > *,
  tfoot tr:first-child > * {
    border-top: 1px solid var(--line);
  }
  tbody:first-of-type tr.first > * {
    border-top: 0;
  }
  th[scope='rowgroup'] {
    font-weight: 600;
  }
  .number {
    text-align: end;
  }
  .by {
    font-weight: 600;
    white-space: nowrap;
  }
  tfoot {
    background: color-mix(in srgb, var(--plan) 55%, transparent);
  }
  .writes {
    display: grid;
    gap: 0.625rem;
    padding: 0.75rem;
    border: 1px solid var(--accent);
    border-radius: var(--radius);
    background: var(--raised);
  }
  .writes ul {
    list-style: disc;
    padding-inline-start: 1.25rem;
  }
  .cautions {
    display: flex;
    gap: 0.625rem;
    padding: 0.5rem 0.75rem;
    border-inline-start: 4px solid var(--problem);
    background: var(--problem-paper);
  }
  .cautions ul {
    display: grid;
    gap: 0.25rem;
  }
  .cautions summary {
    cursor: pointer;
    text-decoration: underline;
  }
  .note {
    border-inline-start: 3px solid var(--line);
    padding-inline-start: 0.625rem;
  }
  @media print {
    .whole,
    .changes {
      display: block;
    }
    .whole > * + *,
    .changes > * + * {
      margin-block-start: 8pt;
    }
    input.slider,
    .was .link {
      display: none;
    }
    .inputs {
      grid-template-columns: auto auto;
      justify-content: start;
    }
    thead th {
      position: static;
    }
  }
  @container (max-width: 34rem) {
    thead {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    table,
    tbody,
    tfoot,
    caption {
      display: block;
    }
    table tr {
      display: grid;
      grid-template-columns: 1fr 1fr;
      padding: 0.25rem 0.5rem;
    }
    table tr > * {
      padding: 0.1rem 0.125rem;
      border: 0 !important;
    }
    tr.first,
    tfoot tr:first-child {
      border-top: 1px solid var(--line);
    }
    th[scope='rowgroup'],
    .figure {
      grid-column: 1 / -1;
    }
    tfoot th {
      grid-column: 1 / -1;
      font-weight: 600;
    }
    td.number {
      text-align: start;
    }
    td.number[data-of]::before {
      content: attr(data-of) ' ';
      color: var(--quiet);
      font-size: 0.75rem;
    }
    td.by {
      grid-column: 1 / -1;
    }
    td.by:empty {
      display: none;
    }
  }
`;
