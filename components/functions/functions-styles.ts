import { css } from 'lit';

/** The list, and the reference beside it, or below where there is no room. */
export const functionsStyles = css`
  :host {
    container-type: inline-size;
  }
  .controls {
    max-width: 26rem;
    margin-block: 0.5rem 0.375rem;
  }
  #found {
    margin-block-end: 0.625rem;
  }
  .both {
    display: grid;
    gap: 1rem 1.75rem;
    align-items: start;
  }
  nav {
    max-height: 13rem;
    overflow-y: auto;
    overscroll-behavior: contain;
    border: 1px solid var(--line);
    border-radius: var(--radius);
    background: var(--raised);
    padding: 0.5rem;
  }
  nav h3 {
    font-size: 0.8125rem;
    color: var(--quiet);
    padding: 0.375rem 0.5rem 0.125rem;
  }
  nav button {
    display: block;
    width: 100%;
    padding: 0.3125rem 0.5rem;
    border-inline-start: 3px solid transparent;
    font-size: 0.875rem;
    overflow-wrap: anywhere;
  }
  nav button:hover {
    color: var(--accent);
  }
  nav button:focus-visible {
    outline-offset: -2px;
  }
  nav button[aria-current] {
    border-color: var(--accent);
    background: var(--plan);
    font-weight: 600;
  }
  .reference {
    min-width: 0;
  }
  .reference > p {
    margin-block-start: 0.5rem;
  }
  @container (min-width: 44rem) {
    .both {
      grid-template-columns: minmax(12rem, 16rem) minmax(0, 1fr);
    }
    nav {
      max-height: var(--croft-list-height, 70vh);
      position: sticky;
      inset-block-start: 0.5rem;
    }
  }
  @media (pointer: coarse) {
    nav button {
      min-height: 2.75rem;
    }
  }
  @media print {
    .controls,
    #found,
    nav {
      display: none;
    }
    .both {
      display: block;
    }
  }
`;

/** One function. */
export const referenceStyles = css`
  :host {
    container-type: inline-size;
  }
  article {
    display: grid;
    gap: 0.75rem;
  }
  h3 {
    overflow-wrap: break-word;
  }
  h3:focus {
    outline: none;
  }
  h4 {
    margin: 0;
    font-size: 0.8125rem;
    font-weight: 600;
  }
  code {
    font-size: 0.9375em;
    overflow-wrap: anywhere;
  }
  .caution {
    display: flex;
    gap: 0.5rem;
    padding: 0.5rem 0.75rem;
    border-inline-start: 3px solid var(--plan-line);
    background: var(--plan);
  }
  .try {
    display: grid;
    gap: 1rem 1.75rem;
    align-items: start;
  }
  .fields {
    display: grid;
    gap: 0.75rem;
  }
  .fields .quiet em {
    font-style: normal;
    color: var(--ink);
  }
  .field label .quiet {
    font-weight: 400;
  }
  .answer {
    display: grid;
    gap: 0.5rem;
    padding: 0.75rem 1rem;
    border: 1px solid var(--plan-line);
    border-radius: var(--radius);
    background: var(--plan);
  }
  .value {
    font-size: 1.375rem;
    line-height: 1.3;
    font-weight: 600;
    overflow-wrap: break-word;
  }
  .steps {
    display: grid;
    gap: 0.25rem;
    font-size: 0.875rem;
    padding-inline-start: 1.25rem;
    list-style: decimal;
  }
  .details,
  .errors ul {
    list-style: disc;
    padding-inline-start: 1.25rem;
    display: grid;
    gap: 0.25rem;
  }
  .errors p {
    margin-block: 0.375rem;
  }
  summary {
    cursor: pointer;
    width: fit-content;
  }
  @container (min-width: 40rem) {
    .try {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1.15fr);
    }
  }
`;
