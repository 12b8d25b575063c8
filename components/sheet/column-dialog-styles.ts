import { css } from 'lit';

export const columnDialogStyles = css`
  /* However long the rest is, the buttons stay in sight. */
  dialog[open] {
    display: flex;
    max-height: calc(100dvh - 2rem);
    padding: 0;
  }
  form {
    flex: 1;
    min-width: 0;
    overflow: auto;
    padding: 1.25rem 1.25rem 0;
  }
  .ends {
    position: sticky;
    bottom: 0;
    padding-block: 0.75rem 1.25rem;
    background: var(--paper);
    z-index: 1;
  }
  .ends .row {
    justify-content: flex-end;
  }
  .pair {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(12rem, 1fr));
    gap: 1rem;
  }
  .advice {
    border-inline-start: 4px solid var(--accent);
    background: var(--raised);
    padding: 0.375rem 0.625rem;
  }
  textarea {
    resize: vertical;
  }
  p:empty {
    display: none;
  }
`;

/** Of the formula field: code, names to put in, advice and first answers. */
export const formulaFieldStyles = css`
  code {
    font-family: ui-monospace, 'Cascadia Mono', Menlo, 'DejaVu Sans Mono', monospace;
    font-size: 0.8125rem;
  }
  .names {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem;
    max-height: 7rem;
    overflow: auto;
  }
  .names .button {
    min-height: 1.75rem;
    padding: 0 0.5rem;
    font-size: 0.8125rem;
  }
  .told {
    display: grid;
    gap: 0.375rem;
  }
  .advice {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.375rem 0.75rem;
    border-inline-start: 4px solid var(--accent);
    background: var(--raised);
    padding: 0.375rem 0.625rem;
  }
  .advice > span {
    flex: 1 1 14rem;
  }
  .answers {
    display: grid;
    gap: 0.125rem;
  }
  .answers > div {
    display: flex;
    justify-content: space-between;
    gap: 1rem;
    border-bottom: 1px solid var(--line);
  }
  p:empty,
  .told:empty {
    display: none;
  }
`;
