import { css } from 'lit';

/** Of the list as a whole. */
export const listStyles = css`
  .head {
    display: grid;
    gap: 0.25rem;
    margin-block-end: 0.75rem;
  }
  .controls {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: 0.5rem 1.25rem;
    margin-block-end: 0.75rem;
  }
  .controls .field {
    flex: 1 1 14rem;
    max-width: 26rem;
  }
  .check {
    display: inline-flex;
    align-items: center;
    gap: 0.5rem;
    min-height: 2.125rem;
    font-weight: 400;
    font-size: 0.9375rem;
  }
  [role='status'].quiet {
    margin-block-end: 0.75rem;
  }
  .told {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.5rem 0.75rem;
    min-height: 0;
  }
  .told:not(:empty) {
    margin-block-end: 0.75rem;
  }
  section + section {
    margin-block-start: 1.25rem;
  }
  h3 {
    padding-block-end: 0.25rem;
    border-block-end: 1px solid var(--plan-line);
  }
  h4 {
    margin: 0.75rem 0 0;
    font-size: 0.8125rem;
    font-weight: 600;
    color: var(--quiet);
  }
  .lines > li {
    border-block-end: 1px solid var(--line);
    padding-block: 0.625rem;
  }
  .empty {
    border: 1px dashed var(--plan-line);
    border-radius: var(--radius);
    padding: 1rem;
  }
  .more {
    margin-block-start: 0.75rem;
  }
  @media print {
    .controls,
    .told,
    .more {
      display: none;
    }
    .lines > li {
      padding-block: 3pt;
      break-inside: avoid;
    }
  }
`;

/** Of one line of it. */
export const lineStyles = css`
  .line {
    display: grid;
    gap: 0.25rem;
  }
  .what {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: space-between;
    gap: 0 1rem;
  }
  .what > span {
    min-width: 0;
    overflow-wrap: anywhere;
  }
  .place {
    font-weight: 600;
    color: inherit;
    text-decoration: underline;
    text-decoration-color: var(--line);
    text-underline-offset: 3px;
  }
  .place:hover {
    color: var(--accent);
    text-decoration-color: currentcolor;
  }
  .value {
    text-align: end;
  }
  .formula {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 0.5rem;
  }
  code {
    font-family: ui-monospace, 'Cascadia Mono', 'DejaVu Sans Mono', 'Liberation Mono', monospace;
    font-size: 0.875em;
    overflow-wrap: anywhere;
    unicode-bidi: isolate;
  }
  .fault {
    display: grid;
    gap: 0.375rem;
    padding: 0.5rem 0.75rem;
    border-inline-start: 3px solid var(--problem);
    border-start-end-radius: var(--radius);
    border-end-end-radius: var(--radius);
    background: var(--problem-paper);
  }
  .fault + .fault {
    margin-block-start: 0.25rem;
  }
  .ring {
    display: flex;
    flex-wrap: wrap;
    gap: 0.125rem 0.4rem;
  }
  .ring li + li::before {
    content: '→ ' / '';
  }
  .small .link {
    text-align: start;
  }
  form {
    display: grid;
    gap: 0.375rem;
  }
  form code,
  form input {
    font-family: ui-monospace, 'Cascadia Mono', 'DejaVu Sans Mono', 'Liberation Mono', monospace;
  }
  .mend {
    display: grid;
    gap: 0.25rem;
  }
  @media print {
    .formula .link {
      display: none;
    }
  }
  .mend .row > select {
    flex: 1 1 11rem;
    max-width: 20rem;
    width: auto;
  }
`;
