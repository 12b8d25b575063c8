import { css } from 'lit';

export const sheetsStyles = css`
  fieldset {
    display: grid;
    gap: 0.375rem;
    min-width: 0;
  }
  legend {
    padding: 0;
    margin-block-end: 0.25rem;
    font-weight: 600;
    font-size: 0.8125rem;
  }
  .choice {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    gap: 0.125rem 0.625rem;
    align-items: start;
    padding: 0.4rem 0.5rem;
    border-radius: var(--radius);
    font-weight: 400;
    font-size: 0.9375rem;
    cursor: pointer;
  }
  .choice input {
    margin-block-start: 0.2rem;
  }
  .choice strong {
    font-weight: 600;
  }
  .choice .help {
    display: block;
  }
  .ways {
    grid-template-columns: repeat(auto-fit, minmax(min(15rem, 100%), 1fr));
    gap: 0.5rem;
  }
  .ways legend {
    grid-column: 1 / -1;
  }
  .ways .choice {
    border: 1px solid var(--line);
    background: var(--raised);
  }
  .ways .choice:has(:checked) {
    border-color: var(--accent);
    box-shadow: inset 0 0 0 1px var(--accent);
  }
  .figures-list {
    max-height: min(20rem, 45vh);
    overflow: auto;
    border: 1px solid var(--line);
    border-radius: var(--radius);
    background: var(--raised);
    padding: 0.25rem;
  }
  .figures-list .choice + .choice {
    border-top: 1px solid var(--line);
    border-radius: 0;
  }
  .pair {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(14rem, 100%), 1fr));
    gap: 1rem;
  }
  p:empty {
    display: none;
  }
`;
