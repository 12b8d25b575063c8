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
  .lines {
    border-top: 1px solid var(--line);
    border-bottom: 1px solid var(--line);
    max-height: min(24rem, 48vh);
    overflow: auto;
    scroll-padding-block: 0.5rem;
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
  .step {
    justify-content: center;
    min-width: 2.75rem;
    min-height: 2.75rem;
    padding: 0;
    font-size: 1.25rem;
  }
  .how-many input {
    width: 4.5rem;
    min-height: 2.75rem;
    text-align: end;
    font-size: 1.125rem;
    font-variant-numeric: tabular-nums;
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
      min-height: 2.75rem;
      white-space: normal;
    }
  }
`;
