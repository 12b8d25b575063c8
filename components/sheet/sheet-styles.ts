import { css } from 'lit';

export const sheetStyles = css`
  .key {
    color: var(--quiet);
    padding-top: 0.375rem;
  }
  :host {
    container-type: inline-size;
  }
  .head {
    margin-bottom: 0.625rem;
  }
  .body {
    display: grid;
    gap: 1rem;
    align-items: start;
  }
  .stage {
    display: grid;
    min-width: 0;
  }
  .stage > * {
    grid-area: 1 / 1;
    min-width: 0;
  }
  /* Not hidden: what is hidden cannot take the keyboard when it is there. */
  croft-grid-pane.waiting {
    opacity: 0;
    pointer-events: none;
  }
  @container (min-width: 64rem) {
    .body.with-working {
      grid-template-columns: minmax(0, 1fr) 21rem;
    }
    croft-working {
      max-height: calc(var(--height) + 2rem);
      overflow: auto;
    }
  }
  /* On narrow pages the working stays in sight at the foot of the window, over the sheet. */
  @container (max-width: 63.99rem) {
    croft-working {
      position: sticky;
      bottom: 0;
      z-index: 5;
      max-height: 46vh;
      overflow: auto;
      box-shadow: 0 -0.5rem 1.5rem rgb(0 0 0 / 0.18);
    }
  }
  .tools {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 0.125rem;
    margin-bottom: 0.5rem;
  }
  .tool {
    gap: 0.3125rem;
    padding-inline: 0.375rem;
  }
  .tool .words {
    font-size: 0.8125rem;
  }
  .urged {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.375rem 0.625rem;
    margin-bottom: 0.5rem;
    padding: 0.375rem 0.625rem;
    border-radius: var(--radius);
    background: var(--problem-paper);
    color: var(--problem);
  }
  .gap {
    width: 1px;
    height: 1.25rem;
    background: var(--line);
    margin-inline: 0.375rem;
  }
  .look {
    margin-inline-start: auto;
    background: var(--plan);
    border-radius: var(--radius);
    padding: 0.25rem 0.625rem;
  }
  /* Their words beneath their signs, all tools stand in one line at 1,280 pixels. */
  @container (max-width: 94rem) {
    .tool {
      flex-direction: column;
      gap: 0.125rem;
      padding-block: 0.25rem;
      min-width: 3.25rem;
    }
    .tools > .tool {
      padding-inline: 0.25rem;
    }
    .tool .words {
      font-size: 0.6875rem;
      line-height: 1.1;
    }
    .gap {
      margin-inline: 0.125rem;
    }
  }
  @container (max-width: 44rem) {
    /* What is said has the whole line. */
    .status:has(.note) .kept:not(.problem) {
      display: none;
    }
    .key {
      gap: 0.25rem 0.75rem;
      font-size: 0.75rem;
    }
    .tools {
      gap: 0.125rem;
      flex-wrap: nowrap;
      overflow-x: auto;
      scrollbar-width: thin;
      /* A tool at the edge shows only a part: there is more to scroll to. */
      padding-block: 2px;
    }
    .tools > * {
      flex: none;
    }
    /* However far the tools are scrolled, the last step can be taken back. */
    .tools > .tool:first-child {
      position: sticky;
      inset-inline-start: 0;
      z-index: 1;
      background: var(--paper);
      border-inline-end-color: var(--line);
      border-start-end-radius: 0;
      border-end-end-radius: 0;
    }
    .gap {
      display: none;
    }
    .look {
      margin: 0;
      white-space: nowrap;
    }
  }
  .empty {
    border: 1px dashed var(--plan-line);
    border-radius: var(--radius);
    background: var(--plan);
    padding: 1.75rem 1.5rem;
    display: grid;
    gap: 1rem;
    max-width: 46rem;
  }
  .status {
    display: flex;
    align-items: center;
    gap: 0.5rem;
    padding-top: 0.25rem;
  }
  .status:has(.note, .kept) {
    min-height: 2.125rem;
  }
  /* A grid is often taller than the window: what is said of it stays in sight. */
  .status:has(.note) {
    position: sticky;
    bottom: 0;
    z-index: 6;
    padding-bottom: 0.25rem;
    background: var(--paper);
  }
  /* The working lies over the foot of the window on narrow pages: a note would lie over it. */
  @container (max-width: 63.99rem) {
    .body.with-working ~ .status {
      position: static;
    }
  }
  .said {
    flex: 1;
  }
  .note,
  .kept {
    display: inline-flex;
    gap: 0.375rem;
    align-items: center;
  }
  .kept.problem {
    max-width: 32rem;
  }
  .cautions {
    display: flex;
    gap: 0.625rem;
    margin-top: 0.75rem;
    padding-top: 0.75rem;
    border-top: 1px solid var(--line);
    color: var(--quiet);
  }
  .cautions .icon {
    color: var(--problem);
    width: 1.25rem;
    height: 1.25rem;
  }
  .cautions ul {
    display: grid;
    gap: 0.25rem;
    max-width: 75ch;
  }
  .cautions details {
    margin-top: 0.375rem;
  }
  .cautions details ul {
    padding-top: 0.375rem;
  }
  .cautions summary {
    cursor: pointer;
    width: fit-content;
    text-decoration: underline;
    text-underline-offset: 2px;
  }
  .suggested {
    border-inline-start: 4px solid var(--plan-line);
    background: var(--plan);
    border-radius: var(--radius);
    padding: 0.375rem 0.75rem;
    margin-bottom: 0.625rem;
  }
  .next {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.25rem 0.75rem;
    border-inline-start: 4px solid var(--accent);
    background: var(--raised);
    border-radius: var(--radius);
    padding: 0.375rem 0.75rem;
    margin-bottom: 0.625rem;
  }
  .next > span {
    flex: 1 1 18rem;
  }
  @media (max-height: 26rem) {
    .status:has(.note) {
      position: static;
    }
    croft-working {
      position: static !important;
      max-height: none !important;
    }
  }
  .no-book {
    border-inline-start: 4px solid var(--problem);
    background: var(--problem-paper);
    padding: 1rem 1.25rem;
    border-radius: var(--radius);
    display: grid;
    gap: 0.75rem;
  }
  .opening {
    padding: 2rem 0;
  }
  @media print {
    /* In a grid Firefox begins a table on the next page, and cuts it at the foot of each. */
    .body,
    .stage {
      display: block;
    }
    croft-grid-pane,
    croft-add-lots,
    croft-working,
    croft-what-it-takes,
    .tools,
    .urged,
    .suggested,
    .next,
    .status,
    .key,
    .head .button {
      display: none;
    }
  }
`;
