import { css } from 'lit';

export const countStyles = css`
  dialog {
    width: min(44rem, calc(100vw - 1.5rem));
  }
  .where {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr) auto;
    gap: 0.5rem;
    align-items: end;
  }
  .line {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 0.125rem 1rem;
    align-items: center;
    padding: 0.5rem 0.25rem;
  }
  .line + .line {
    border-top: 1px solid var(--line);
  }
  .what > * {
    display: block;
    overflow-wrap: anywhere;
  }
  .how-many {
    display: flex;
    gap: 0.5rem;
    align-items: center;
    justify-content: end;
  }
  .stepper {
    display: flex;
    gap: 0.25rem;
    align-items: stretch;
  }
  .as-written {
    min-height: 2.75rem;
    color: var(--quiet);
  }
  .is {
    grid-column: 1 / -1;
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 1rem;
    align-items: center;
  }
  .is:empty {
    display: none;
  }
  .differs {
    color: var(--problem);
    font-weight: 600;
  }
  .check {
    display: inline-flex;
    gap: 0.4rem;
    align-items: center;
    min-height: 1.75rem;
    font-weight: 400;
  }
  .unseen-foods ul {
    max-height: 8rem;
    overflow: auto;
    margin-top: 0.25rem;
  }
  .unseen-foods li {
    padding: 0.25rem 0;
  }
  .said {
    display: grid;
    gap: 0.25rem;
    max-height: 6rem;
    overflow: auto;
  }
  .said:not(:has(p)) {
    position: absolute;
  }
  @media (max-width: 36rem) {
    .line {
      grid-template-columns: minmax(0, 1fr);
    }
    .how-many {
      display: grid;
      grid-template-columns: minmax(0, 1fr) auto;
    }
    .as-written {
      justify-content: center;
      white-space: normal;
    }
    .ends .button {
      white-space: normal;
    }
  }
`;
