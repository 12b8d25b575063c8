import { css } from 'lit';

export const taskStyles = css`
  :host {
    container-type: inline-size;
  }
  .task-whole {
    display: grid;
    gap: 0.625rem;
  }
  .task-scroll {
    /* What is said to readers only stands in here, and goes along. */
    position: relative;
    overflow-x: auto;
    border: 1px solid var(--line);
    border-radius: var(--radius);
    background: var(--raised);
  }
  table.task {
    border-collapse: collapse;
    width: 100%;
    font-size: 0.875rem;
  }
  .task th,
  .task td {
    padding: 0.3rem 0.625rem;
    border-bottom: 1px solid var(--line);
    text-align: start;
    font-weight: 400;
    vertical-align: top;
  }
  .task thead th {
    font-weight: 600;
    font-size: 0.8125rem;
    background: color-mix(in srgb, var(--line) 35%, transparent);
    vertical-align: bottom;
  }
  .task tbody tr:last-child > * {
    border-bottom: 0;
  }
  .task .number {
    text-align: end;
    font-variant-numeric: tabular-nums;
  }
  .task .asked {
    background: var(--plan);
    min-width: 7rem;
  }
  .task .right .asked {
    font-weight: 600;
  }
  .task .wrong .asked {
    color: var(--problem);
    font-weight: 600;
  }
  .write {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto auto;
    gap: 0.375rem 0.5rem;
    align-items: end;
  }
  .write .field input {
    font-family: var(--font-figures);
  }
  .names {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.375rem;
  }
  .names .button {
    min-height: 1.875rem;
    padding: 0.125rem 0.5rem;
    font-size: 0.8125rem;
  }
  .feedback {
    padding: 0.375rem 0.625rem;
    border-inline-start: 3px solid var(--line);
  }
  .tools {
    display: flex;
    flex-wrap: wrap;
    gap: 0.375rem;
  }
  .asked-task {
    display: grid;
    gap: 0.375rem;
  }
  .stands {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 0.5rem;
    align-items: start;
  }
  .feedback:empty {
    display: none;
  }
  .feedback.right {
    border-color: var(--own);
    color: var(--own);
    font-weight: 600;
  }
  .feedback.wrong {
    border-color: var(--problem);
  }
  .caution {
    padding: 0.5rem 0.75rem;
    border-inline-start: 4px solid var(--problem);
    background: var(--problem-paper);
  }
  .steps {
    display: grid;
    gap: 0.25rem;
    list-style: decimal;
    padding-inline-start: 1.5rem;
  }
  @media print {
    .names {
      display: none;
    }
  }
  @container (max-width: 26rem) {
    .task .asked {
      min-width: 5rem;
    }
    .write {
      grid-template-columns: 1fr 1fr;
    }
    .write .field {
      grid-column: 1 / -1;
    }
    .write .button {
      justify-content: center;
    }
  }
`;
