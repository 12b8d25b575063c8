import { css } from 'lit';

export const workingStyles = css`
  section {
    border: 1px solid var(--line);
    border-top: 4px solid var(--plan-line);
    border-radius: var(--radius);
    background: var(--raised);
    padding: 0.75rem 1rem 1rem;
    display: grid;
    gap: 0.75rem;
    align-content: start;
    overflow: auto;
  }
  /* What can be closed stands in something that scrolls. */
  :host([closable]) section {
    overflow: visible;
  }
  /* However far it is read, it can be closed. */
  header {
    position: sticky;
    top: -0.75rem;
    z-index: 1;
    display: flex;
    align-items: start;
    gap: 0.5rem;
    margin: -0.75rem -1rem 0;
    padding: 0.75rem 1rem 0.25rem;
    background: var(--raised);
  }
  h2 {
    flex: 1;
    font-size: 1rem;
    padding-top: 0.3rem;
  }
  h2:focus-visible {
    outline-offset: 4px;
  }
  h2 .of {
    display: block;
    font-weight: 400;
    font-size: 0.8125rem;
    color: var(--quiet);
  }
  .answer {
    font-size: 1.5rem;
    line-height: 1.2;
    font-weight: 600;
  }
  .missing {
    border-inline-start: 3px solid var(--plan-line);
    padding-inline-start: 0.75rem;
  }
  table {
    border-collapse: collapse;
    width: 100%;
    font-size: 0.875rem;
  }
  caption,
  h3 {
    text-align: start;
    font-weight: 600;
    font-size: 0.8125rem;
    padding-bottom: 0.25rem;
    color: var(--quiet);
  }
  th,
  td {
    border-top: 1px solid var(--line);
    padding: 0.375rem 0;
    vertical-align: top;
    text-align: start;
    font-weight: 400;
  }
  td {
    text-align: end;
    padding-inline-start: 0.75rem;
  }
  .origin {
    display: block;
    color: var(--quiet);
    font-size: 0.75rem;
  }
  .steps {
    display: grid;
    gap: 0.25rem;
    font-size: 0.875rem;
  }
  .steps li.inside {
    margin-inline-start: 1rem;
    background: none;
    border-inline-start: 2px solid var(--plan-line);
    border-radius: 0;
  }
  .steps li {
    background: var(--plan);
    border-radius: 3px;
    padding: 0.25rem 0.5rem;
    overflow-wrap: anywhere;
  }
  .rule {
    overflow-wrap: anywhere;
  }
  .link {
    text-align: start;
    overflow-wrap: anywhere;
  }
  .units {
    display: grid;
    gap: 0.375rem;
    border-inline-start: 3px solid var(--plan-line);
    padding-inline-start: 0.75rem;
  }
  .changes ul {
    display: grid;
    gap: 0.125rem;
    padding-inline-start: 1.1rem;
    list-style: disc;
  }
  code {
    display: block;
    font:
      0.8125rem/1.5 ui-monospace,
      'Cascadia Mono',
      Menlo,
      'DejaVu Sans Mono',
      monospace;
    background: var(--paper);
    border: 1px solid var(--line);
    border-radius: 3px;
    padding: 0.375rem 0.5rem;
    overflow-wrap: anywhere;
    margin-bottom: 0.375rem;
  }
  @media print {
    section {
      overflow: visible;
      border-inline: 0;
      border-bottom: 0;
      padding-inline: 0;
    }
  }
  .cautions {
    display: grid;
    gap: 0.375rem;
    border-inline-start: 3px solid var(--problem);
    padding-inline-start: 0.75rem;
  }
`;
