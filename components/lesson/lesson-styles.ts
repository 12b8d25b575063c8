import { css } from 'lit';

export const lessonStyles = css`
  :host {
    container-type: inline-size;
  }
  .head {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    align-items: end;
    gap: 0.5rem 1.5rem;
    margin-bottom: 0.75rem;
  }
  .head > * {
    min-width: 0;
    max-width: 100%;
  }
  .controls {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.5rem;
  }
  .controls label {
    display: flex;
    min-width: 0;
    max-width: 100%;
    align-items: center;
    gap: 0.375rem;
  }
  .controls .seed input {
    width: 5.5rem;
    font-weight: 400;
  }
  .controls select {
    width: auto;
    flex: 0 1 auto;
    font-weight: 400;
  }
  h3 {
    margin-block: 1.25rem 0.375rem;
  }
  .words {
    display: grid;
    gap: 0.5rem;
    max-width: 68ch;
  }
  .words ul {
    display: grid;
    gap: 0.25rem;
    list-style: disc;
    padding-inline-start: 1.25rem;
  }
  .caution {
    max-width: 68ch;
    margin-block: 0.75rem;
    padding: 0.5rem 0.75rem;
    border-inline-start: 4px solid var(--problem);
    background: var(--problem-paper);
  }
  .progress {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.25rem 0.75rem;
    margin-block: 0.75rem 0.25rem;
  }
  progress {
    appearance: none;
    border: 1px solid var(--line);
    border-radius: 99px;
    height: 0.625rem;
    width: min(14rem, 60%);
    background: var(--raised);
    overflow: hidden;
  }
  progress::-webkit-progress-bar {
    background: var(--raised);
  }
  progress::-webkit-progress-value {
    background: var(--own);
  }
  progress::-moz-progress-bar {
    background: var(--own);
  }
  .questions {
    counter-reset: question;
    border-top: 1px solid var(--line);
  }
  .question {
    counter-increment: question;
    display: grid;
    grid-template-columns: 2rem minmax(0, 1fr);
    gap: 0.5rem 0.25rem;
    padding-block: 0.875rem 0.5rem;
    border-bottom: 1px solid var(--line);
  }
  .question::before {
    content: counter(question);
    font-weight: 600;
    font-variant-numeric: tabular-nums;
    color: var(--quiet);
  }
  .question.done::before {
    content: '✓';
    color: var(--own);
  }
  .question > * {
    grid-column: 2;
  }
  .text {
    max-width: 68ch;
    overflow-wrap: anywhere;
  }
  .answer {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.375rem 0.5rem;
  }
  .answer .blank {
    width: 9rem;
    max-width: 100%;
  }
  .answer select.blank {
    width: auto;
  }
  .unit {
    overflow-wrap: anywhere;
  }
  .done .blank {
    border-color: var(--own);
  }
  /* Room for what will be said, so that nothing moves away under the pointer. */
  .feedback {
    min-height: 1.5em;
    max-width: 68ch;
  }
  .feedback.right {
    color: var(--own);
    font-weight: 600;
  }
  .feedback.soft {
    color: var(--ink);
    font-style: italic;
  }
  .feedback.wrong {
    color: var(--problem);
  }
  .steps {
    list-style: decimal;
    padding-block: 0.5rem;
    padding-inline: 2rem 0.75rem;
    max-width: 68ch;
    border-inline-start: 3px solid var(--plan-line);
    background: var(--plan);
    overflow-wrap: anywhere;
  }
  .chart {
    max-width: 30rem;
    margin: 0;
  }
  .chart svg {
    display: block;
    width: 100%;
    height: auto;
  }
  .chart text {
    fill: var(--ink);
    font-size: 11px;
  }
  .chart .line {
    stroke: var(--line);
  }
  .chart .foot {
    stroke: var(--ink);
  }
  .chart .bar {
    fill: color-mix(in srgb, var(--accent) 75%, var(--paper));
  }
  .chart table {
    border-collapse: collapse;
    margin-top: 0.25rem;
  }
  .chart :is(th, td) {
    text-align: start;
    font-weight: 400;
    padding-block: 0.125rem;
    padding-inline: 0 1rem;
    border-bottom: 1px solid var(--line);
  }
  summary {
    cursor: pointer;
    width: fit-content;
    text-decoration: underline;
    text-underline-offset: 2px;
  }
  .note {
    margin-block: 0.5rem;
    max-width: 68ch;
  }
  .paper {
    display: none;
  }
  @container (max-width: 30rem) {
    .question {
      grid-template-columns: 1.5rem minmax(0, 1fr);
    }
    .answer input.blank {
      width: 7rem;
    }
    .answer input.day {
      width: 9.5rem;
    }
    .chart text {
      font-size: 13px;
    }
  }
  @media (forced-colors: active) {
    .chart .bar {
      fill: CanvasText;
    }
    progress {
      appearance: auto;
    }
  }
  @media print {
    .screen {
      display: none;
    }
    .paper {
      display: block;
    }
  }
`;
