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
  .lines {
    border-block: 1px solid var(--line);
    max-height: min(24rem, 44vh);
    overflow: auto;
    scroll-padding-block: 0.5rem;
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
  .step {
    justify-content: center;
    min-width: 2.75rem;
    min-height: 2.75rem;
    padding: 0;
    font-size: 1.25rem;
  }
  .how-much input {
    width: 4rem;
    min-height: 2.75rem;
    text-align: end;
    font-size: 1.125rem;
    font-variant-numeric: tabular-nums;
  }
  .how-much select {
    flex: 1 1 5rem;
    min-width: 0;
    min-height: 2.75rem;
  }
  .how-much .button {
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
  @media (max-width: 36rem) {
    dialog {
      width: 100vw;
      max-width: 100vw;
      height: 100dvh;
      max-height: 100dvh;
      margin: 0;
      border-radius: 0;
      border-inline: 0;
    }
    .lines {
      max-height: none;
      overflow: visible;
    }
    .ends .button {
      min-height: 2.75rem;
    }
  }
`;
