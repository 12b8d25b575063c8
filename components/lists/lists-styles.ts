import { css, unsafeCSS } from 'lit';
import { PAPER } from './lists-paper.js';

export const listsStyles = css`
  :host {
    container-type: inline-size;
  }
  .top {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.5rem 1rem;
    margin-bottom: 0.875rem;
  }
  .top h2 {
    margin-inline-end: auto;
  }
  .lists {
    display: grid;
    gap: 1rem;
    align-items: start;
  }
  .list,
  .meals {
    border: 1px solid var(--line);
    border-top: 4px solid var(--accent);
    border-radius: var(--radius);
    background: var(--raised);
    padding: 0.75rem 1rem 0.5rem;
    min-width: 0;
  }
  .list h3 {
    display: flex;
    justify-content: space-between;
    align-items: baseline;
    gap: 0.75rem;
    margin-bottom: 0.375rem;
  }
  .left {
    font-weight: 400;
  }
  h4 {
    margin: 0.75rem 0 0.125rem;
    font: 600 0.8125rem/1.4 var(--font);
    color: var(--quiet);
  }
  .line {
    border-top: 1px solid var(--line);
  }
  h4 + ul > .line:first-child,
  h3 + ul > .line:first-child {
    border-top: 0;
  }
  .line label {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    gap: 0.75rem;
    align-items: start;
    min-height: 2.75rem;
    padding: 0.5rem 0;
    font: inherit;
    cursor: pointer;
  }
  .line input[type='checkbox'] {
    width: 1.5rem;
    height: 1.5rem;
    margin: 0;
  }
  .words {
    display: grid;
    gap: 0.0625rem;
    min-width: 0;
    overflow-wrap: anywhere;
  }
  .text {
    font-size: 1rem;
    line-height: 1.5rem;
    font-weight: 600;
  }
  .line.ticked .text {
    font-weight: 400;
    text-decoration: line-through;
    color: var(--quiet);
  }
  .again,
  .short {
    color: var(--problem);
  }
  .short {
    display: block;
  }
  .care {
    display: flex;
    gap: 0.375rem;
    align-items: start;
    color: var(--problem);
  }
  .care svg {
    margin-top: 0.1rem;
  }
  .line.ticked .care {
    color: var(--quiet);
  }
  .open li {
    padding: 0.375rem 0;
  }
  .none {
    padding: 0.25rem 0 0.5rem;
  }
  .meals ol {
    display: grid;
    gap: 0 1rem;
  }
  .meals h4 {
    margin-top: 0.375rem;
  }
  .meals li li {
    padding: 0.125rem 0;
    overflow-wrap: anywhere;
  }
  .safety {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    gap: 0.625rem;
    margin-top: 1rem;
    padding: 0.75rem 1rem;
    border-radius: var(--radius);
    background: var(--plan);
    max-width: 80ch;
  }
  .safety ul {
    display: grid;
    gap: 0.25rem;
  }
  .foot {
    margin-top: 0.75rem;
  }
  .empty {
    border: 1px dashed var(--plan-line);
    border-radius: var(--radius);
    padding: 1.25rem;
    max-width: 62ch;
    display: grid;
    gap: 0.75rem;
    justify-items: start;
  }
  @container (max-width: 39.99rem) {
    .top {
      display: grid;
      grid-template-columns: 1fr 1fr;
    }
    .top h2 {
      grid-column: 1 / -1;
    }
    .top .row {
      display: contents;
    }
    .top .button {
      justify-content: center;
      min-height: 2.75rem;
    }
    .list,
    .meals {
      padding-inline: 0.75rem;
    }
    .line label {
      min-height: 3rem;
      padding: 0.625rem 0;
    }
  }
  @container (min-width: 40rem) {
    .lists {
      grid-template-columns: repeat(2, minmax(0, 1fr));
    }
    .bringUp {
      grid-row: span 2;
    }
    .meals {
      grid-column: 1 / -1;
      order: -1;
    }
    .meals ol {
      grid-template-columns: repeat(auto-fit, minmax(8.5rem, 1fr));
    }
  }
  @container (min-width: 64rem) {
    .lists {
      grid-template-columns: minmax(0, 1.25fr) minmax(0, 1fr) minmax(0, 1fr);
    }
    .bringUp {
      grid-row: auto;
    }
  }
  @media (forced-colors: active) {
    .line.ticked .text {
      color: GrayText;
    }
  }
  @media print {
    :host {
      font-size: 9pt;
      line-height: 1.35;
      container-type: normal;
    }
    .top {
      display: block;
      margin: 0;
    }
    .top h2 {
      font-size: 1.5em;
      margin: 0 0 0.5em;
    }
    .top .button,
    .foot {
      display: none;
    }
    .safety {
      max-width: none;
    }
    .small {
      line-height: inherit;
    }
    .empty {
      border: 0;
      padding: 0;
    }
    ${unsafeCSS(PAPER)}
    .text {
      font-size: inherit;
      line-height: inherit;
    }
    .line input[type='checkbox'] {
      width: 0.9em;
      height: 0.9em;
      margin-block-start: 0.2em;
    }
  }
`;
