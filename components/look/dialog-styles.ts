import { css } from 'lit';

/** A dialog that fills a telephone. After a dialog's own styles: its width goes before theirs there. */
export const fillsTelephone = css`
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

/** What stands on the shelf, line by line, and fields for amounts with a step up and down beside them. */
export const amountsByLine = css`
  .lines {
    border-block: 1px solid var(--line);
    max-height: min(24rem, 46vh);
    overflow: auto;
    scroll-padding-block: 0.5rem;
  }
  .step {
    justify-content: center;
    min-width: 2.75rem;
    min-height: 2.75rem;
    padding: 0;
    font-size: 1.25rem;
  }
  input.amount {
    width: 4.25rem;
    min-height: 2.75rem;
    text-align: end;
    font-size: 1.125rem;
    font-variant-numeric: tabular-nums;
  }
`;
