import { css } from 'lit';

export const rulesStyles = css`
  .rules {
    display: grid;
    gap: 0.625rem;
  }
  .rule {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.375rem;
    padding: 0.5rem;
    border: 1px solid var(--line);
    border-radius: var(--radius);
    background: var(--raised);
  }
  .rule select {
    width: auto;
    flex: 1 1 10rem;
  }
  .rule .colour {
    flex: 0 1 6.5rem;
  }
  .rule .value {
    width: auto;
    flex: 1 1 5.5rem;
    max-width: 10rem;
  }
  .swatch {
    width: 2rem;
    height: 2.125rem;
    border: 1px solid var(--line);
    border-radius: var(--radius);
    text-align: center;
  }
  .swatch.tint::before {
    line-height: 2rem;
  }
  .move {
    display: flex;
    margin-inline-start: auto;
  }
  .takes {
    flex: 1 0 100%;
  }
  .add {
    width: fit-content;
  }
  p:empty {
    display: none;
  }
`;
