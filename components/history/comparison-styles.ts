import { css } from 'lit';

export const comparisonStyles = css`
  .sheet-part,
  .rows-part {
    display: grid;
    gap: 0.5rem;
  }
  .sheet-part {
    border-top: 2px solid var(--line);
    padding-top: 0.625rem;
  }
  .sheet-head {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem;
    align-items: baseline;
    justify-content: space-between;
  }
  .row-part {
    display: grid;
    gap: 0.25rem;
    padding: 0.5rem 0.625rem;
    border: 1px solid var(--line);
    border-radius: var(--radius);
    background: var(--raised);
  }
  .row-part > header {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 0.75rem;
    align-items: baseline;
    justify-content: space-between;
  }
  .row-part strong {
    overflow-wrap: anywhere;
  }
  .pairs {
    display: grid;
    gap: 0.125rem;
    font-size: 0.875rem;
  }
  .pairs > div {
    display: grid;
    grid-template-columns: minmax(6rem, 13rem) 1fr;
    gap: 0 0.75rem;
  }
  .pairs dt {
    color: var(--quiet);
  }
  .pairs dd {
    overflow-wrap: anywhere;
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.75rem;
    justify-content: space-between;
  }
  .pairs .planned {
    background: var(--plan);
    padding-inline: 0.25rem;
    border-radius: 3px;
  }
  .was {
    color: var(--quiet);
  }
  .is {
    font-weight: 600;
  }
  .mark {
    font-size: 0.75rem;
    font-weight: 600;
    border: 1px solid currentColor;
    border-radius: 999px;
    padding: 0 0.4rem;
    white-space: nowrap;
  }
  .mark.removed {
    color: var(--problem);
  }
  .mark.added {
    color: var(--accent);
  }
  .on-paper {
    display: none;
  }
  @media (max-width: 30rem) {
    .pairs > div {
      grid-template-columns: 1fr;
      margin-top: 0.25rem;
    }
  }
  /* In columns, where no row is cut. */
  @media print {
    .sheet-part {
      display: block;
      font-size: 8.5pt;
    }
    .sheet-head {
      break-after: avoid;
    }
    .rows-part {
      display: block;
      columns: 2 16em;
      column-gap: 1.5em;
    }
    .row-part {
      display: block;
      break-inside: avoid;
      border: 0;
      border-top: 0.5pt solid var(--line);
      border-radius: 0;
      padding: 3pt 0;
    }
    .pairs {
      display: block;
      font-size: inherit;
    }
    .pairs > div {
      grid-template-columns: minmax(0, 2fr) minmax(0, 3fr);
      margin: 0;
      break-inside: avoid;
    }
    .pairs .link {
      display: none;
    }
    .on-paper {
      display: block;
    }
  }
`;
