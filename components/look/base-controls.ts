import { css } from 'lit';

/** Buttons, links and fields: in more contrast, for fingers, and in colours of the reader’s own too. */
export const controls = css`
  button {
    font: inherit;
    color: inherit;
    background: none;
    border: 0;
    padding: 0;
    cursor: pointer;
    text-align: inherit;
  }
  .button {
    display: inline-flex;
    align-items: center;
    gap: 0.375rem;
    min-height: 2.125rem;
    padding: 0.25rem 0.75rem;
    border: 1px solid var(--line);
    border-radius: var(--radius);
    background: var(--raised);
    white-space: nowrap;
  }
  .button:hover:not(:disabled) {
    border-color: var(--accent);
    color: var(--accent);
  }
  .button.first {
    background: var(--accent);
    border-color: var(--accent);
    color: var(--on-accent);
  }
  .button.first:hover:not(:disabled) {
    color: var(--on-accent);
    filter: brightness(1.1);
  }
  .button.plain {
    border-color: transparent;
    background: none;
    padding-inline: 0.5rem;
  }
  .button[aria-pressed='true'],
  .button[aria-expanded='true'] {
    border-color: var(--accent);
    color: var(--accent);
  }
  .link {
    color: var(--accent);
    text-decoration: underline;
    text-underline-offset: 2px;
  }
  button:disabled {
    cursor: default;
    color: color-mix(in srgb, var(--quiet) 70%, transparent);
  }
  label {
    font-weight: 600;
    font-size: 0.8125rem;
  }
  input:not([type='checkbox'], [type='radio']),
  select,
  textarea {
    font: inherit;
    color: var(--ink);
    background: var(--raised);
    border: 1px solid color-mix(in srgb, var(--quiet) 60%, var(--line));
    border-radius: var(--radius);
    padding: 0.3rem 0.5rem;
    min-height: 2.125rem;
    width: 100%;
    min-width: 0;
  }
  /* In WebKit a long choice would else make the page wider, whatever its overflow is said to be. */
  select {
    contain: paint;
  }
  input:is([type='checkbox'], [type='radio']) {
    accent-color: var(--accent);
    width: 1.05rem;
    height: 1.05rem;
    flex: none;
  }
  ::placeholder {
    color: var(--quiet);
    opacity: 1;
  }
  [aria-invalid='true'] {
    border-color: var(--problem) !important;
  }
  progress,
  input[type='range'] {
    max-width: 100%;
  }
  @media (prefers-reduced-motion: no-preference) {
    .button {
      transition:
        border-color 120ms,
        color 120ms;
    }
  }
  @media (prefers-contrast: more) {
    input:not([type='checkbox'], [type='radio']),
    select,
    textarea {
      border-color: var(--ink);
    }
  }
  /* Whatever a finger presses is as large as a finger. */
  @media (pointer: coarse) {
    .button,
    input:not([type='checkbox'], [type='radio']),
    select,
    textarea {
      min-height: 2.75rem;
    }
    .button {
      min-width: 2.75rem;
      justify-content: center;
    }
    input:is([type='checkbox'], [type='radio']) {
      width: 1.5rem;
      height: 1.5rem;
    }
    label:has(> :is([type='checkbox'], [type='radio'])) {
      min-height: 2.75rem;
    }
    summary {
      padding-block: 0.75rem;
    }
    /* Without moving what stands around it. */
    .link {
      padding-block: 0.8125rem;
      margin-block: -0.4375rem;
    }
  }
  @media (forced-colors: active) {
    .button.first:not(:disabled) {
      forced-color-adjust: none;
      background: ButtonText;
      border-color: ButtonText;
      color: ButtonFace;
    }
    .button[aria-pressed='true'] {
      forced-color-adjust: none;
      background: Highlight;
      border-color: Highlight;
      color: HighlightText;
    }
    .button:hover:not(:disabled) {
      border-color: Highlight;
    }
    button:disabled {
      color: GrayText;
      border-color: GrayText;
    }
  }
`;
