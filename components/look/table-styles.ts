import { css } from 'lit';

/** A small table of figures beside a sheet: in a frame that scrolls, with its caption. */
export const tableStyles = css`
  .scroll {
    overflow-x: auto;
    border: 1px solid var(--line);
    border-radius: var(--radius);
    background: var(--raised);
  }
  table {
    border-collapse: collapse;
    width: 100%;
    font-size: 0.875rem;
  }
  caption {
    text-align: start;
    font-weight: 600;
    padding: 0.375rem 0.625rem;
  }
`;
