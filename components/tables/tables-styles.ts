import { css } from 'lit';

export const tablesStyles = css`
  dialog {
    width: min(60rem, calc(100vw - 1.5rem));
  }
  .drop {
    display: grid;
    gap: 0.5rem;
    justify-items: start;
    padding: 1rem;
    border: 2px dashed var(--line);
    border-radius: var(--radius);
    background: var(--raised);
  }
  .drop.over {
    border-color: var(--accent);
  }
  textarea {
    min-height: 6rem;
    font-family: var(--font-figures);
    white-space: pre;
    resize: vertical;
  }
  .fields {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(13rem, 100%), 1fr));
    gap: 0.75rem 1rem;
    align-items: start;
  }
  .fields.wide {
    grid-template-columns: repeat(auto-fit, minmax(min(20rem, 100%), 1fr));
  }
  .tick {
    display: flex;
    align-items: center;
    gap: 0.5rem;
    font-weight: 400;
    font-size: 0.9375rem;
  }
  fieldset {
    display: grid;
    gap: 0.5rem;
    min-width: 0;
  }
  legend {
    padding: 0;
    font: 600 1rem/1.3 var(--font-title);
    margin-bottom: 0.25rem;
  }
  .columns {
    display: grid;
    gap: 0.5rem;
  }
  .column {
    display: grid;
    grid-template-columns: minmax(8rem, 1.2fr) minmax(9rem, 1.4fr) minmax(8rem, 1.4fr);
    gap: 0.5rem 0.75rem;
    align-items: start;
    padding: 0.5rem 0.625rem;
    border: 1px solid var(--line);
    border-inline-start: 4px solid var(--accent);
    border-radius: var(--radius);
    background: var(--raised);
  }
  .column.out {
    border-inline-start-color: var(--line);
    background: none;
  }
  .column.own {
    border-inline-start-color: var(--own);
  }
  .column h4 {
    margin: 0;
    font: 600 0.9375rem/1.35 var(--font);
    overflow-wrap: anywhere;
  }
  .samples {
    overflow-wrap: anywhere;
    display: -webkit-box;
    -webkit-box-orient: vertical;
    -webkit-line-clamp: 2;
    overflow: hidden;
  }
  .stack-small {
    display: grid;
    gap: 0.375rem;
    min-width: 0;
  }
  td {
    max-width: 16rem;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  td.wrap {
    white-space: normal;
    overflow-wrap: anywhere;
    min-width: 10rem;
  }
  td.wrong {
    color: var(--problem);
    background: var(--problem-paper);
  }
  .line {
    color: var(--quiet);
    text-align: end;
  }
  progress {
    width: 100%;
    height: 0.75rem;
    accent-color: var(--accent);
  }
  .list {
    display: grid;
    gap: 0.25rem;
    padding-inline-start: 1.1rem;
    list-style: disc;
  }
  .pieces {
    display: grid;
    gap: 0.5rem;
  }
  /* What is focused must not lie under the buttons at the foot. */
  :focus {
    scroll-margin-block-end: 6rem;
  }
  .piece {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0.25rem 0.75rem;
  }
  @media (max-width: 40rem) {
    .column {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
