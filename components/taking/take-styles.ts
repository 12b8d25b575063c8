import { css } from 'lit';

export const takeStyles = css`
  dialog {
    width: min(40rem, calc(100vw - 1.5rem));
  }
  .once {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr));
    gap: 0.75rem;
  }
  li + li {
    border-top: 1px solid var(--line);
  }
  .line {
    all: unset;
    box-sizing: border-box;
    display: flex;
    justify-content: space-between;
    align-items: center;
    gap: 0.125rem 1rem;
    width: 100%;
    min-height: 2.75rem;
    padding: 0.375rem 0.5rem;
    cursor: pointer;
  }
  .line:hover,
  .line[aria-expanded='true'] {
    background: var(--raised);
  }
  .line:focus-visible {
    outline: 2px solid var(--focus);
    outline-offset: -2px;
  }
  .line strong {
    font-weight: 600;
    overflow-wrap: anywhere;
  }
  .left {
    text-align: end;
    font-variant-numeric: tabular-nums;
  }
  .how-much {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem;
    align-items: stretch;
    padding: 0.25rem 0.5rem 0.75rem;
    background: var(--raised);
  }
  .how-much select {
    flex: 20 1 5rem;
    min-width: 0;
    min-height: 2.75rem;
  }
  /* In a language in which it does not fit beside the rest, it has a line of its own. */
  .how-much .button.first {
    flex: 1 0 auto;
    justify-content: center;
    min-height: 2.75rem;
  }
  .care {
    display: grid;
    gap: 0.25rem;
    margin: 0 0.5rem 0.75rem;
    padding-inline-start: 0.625rem;
    border-inline-start: 3px solid var(--plan-line);
  }
  .taken {
    display: grid;
    max-height: 8rem;
    overflow: auto;
  }
  .taken li {
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.75rem;
    justify-content: space-between;
    align-items: center;
    padding: 0.25rem 0;
  }
`;
