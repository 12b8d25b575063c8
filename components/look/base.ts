import { css } from 'lit';
import { tokens } from './tokens.js';

const rules = css`
  :host {
    display: block;
    color: var(--ink);
    font: 400 0.9375rem/1.5 var(--font);
    letter-spacing: normal;
    text-align: start;
    text-transform: none;
    word-spacing: normal;
    white-space: normal;
  }
  :host([hidden]) {
    display: none;
  }
  *,
  ::before,
  ::after {
    box-sizing: border-box;
  }
  h2,
  h3,
  p,
  ul,
  ol,
  dl,
  dd,
  fieldset {
    margin: 0;
    padding: 0;
    border: 0;
  }
  h2,
  h3 {
    font: 600 1.125rem/1.3 var(--font-title);
  }
  h3 {
    font-size: 1rem;
  }
  ul,
  ol {
    list-style: none;
  }
  a {
    color: var(--accent);
  }
  .quiet {
    color: var(--quiet);
  }
  .small {
    font-size: 0.8125rem;
    line-height: 1.45;
  }
  .figures {
    font-family: var(--font-figures);
    font-variant-numeric: tabular-nums lining-nums;
  }
  :focus-visible {
    outline: 2px solid var(--focus);
    outline-offset: 2px;
    border-radius: 3px;
  }
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
  svg.icon {
    width: 1.125em;
    height: 1.125em;
    flex: none;
    fill: none;
    stroke: currentColor;
    stroke-width: 1.6;
    stroke-linecap: round;
    stroke-linejoin: round;
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
  .problem {
    color: var(--problem);
  }
  progress,
  input[type='range'] {
    max-width: 100%;
  }
  dialog {
    color: var(--ink);
    background: var(--paper);
    border: 1px solid var(--line);
    border-radius: calc(var(--radius) * 1.5);
    border-top: 4px solid var(--accent);
    padding: 1.25rem;
    width: min(34rem, calc(100vw - 2rem));
    max-height: calc(100dvh - 2rem);
    overflow: auto;
    box-shadow: 0 1.5rem 3rem rgb(0 0 0 / 0.25);
  }
  dialog::backdrop {
    background: rgb(15 22 28 / 0.45);
  }
  dialog > form,
  .stack {
    display: grid;
    gap: 1rem;
  }
  .field {
    display: grid;
    gap: 0.25rem;
    align-content: start;
  }
  .row {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.5rem;
  }
  .ends {
    justify-content: flex-end;
  }
  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    margin: -1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  /*
   * On a page that is read from right to left each piece of text goes its own way, as its first letters say:
   * what people write may be in any script. Formulas are always read from left to right; arrows turn round.
   */
  :is(p, li, dt, dd, h2, h3, h4, caption, legend, label, summary, span, button):dir(rtl) {
    unicode-bidi: plaintext;
    text-align: right;
  }
  code,
  input[spellcheck='false'] {
    direction: ltr;
    unicode-bidi: isolate;
    text-align: left;
  }
  .turns:dir(rtl) {
    display: inline-block;
    scale: -1 1;
  }
  @media (prefers-reduced-motion: no-preference) {
    .button {
      transition:
        border-color 120ms,
        color 120ms;
    }
  }
  @media (prefers-contrast: more) {
    :focus-visible {
      outline-width: 3px;
    }
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
    .link {
      padding-block: 0.375rem;
    }
  }
  /* A window as low as two hands are high: a page at 400 %, or a phone with its keyboard open. */
  @media (max-height: 26rem) {
    dialog {
      max-height: calc(100dvh - 0.5rem);
      padding: 0.75rem;
    }
    dialog .ends {
      position: static;
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
    dialog {
      border-width: 2px;
    }
  }
  @media print {
    .button {
      display: none;
    }
    .link,
    a {
      color: inherit;
      text-decoration: none;
    }
    h2,
    h3,
    h4 {
      break-after: avoid;
    }
    thead {
      display: table-header-group;
    }
    tr {
      break-inside: avoid;
    }
    /* Nothing scrolls on paper, and nothing is folded away. */
    .scroll,
    dialog {
      max-height: none !important;
      overflow: visible !important;
    }
    /* One that is open is printed alone: see openModal. */
    dialog {
      position: absolute;
      inset: 0 auto auto 0;
      width: 100% !important;
      max-width: none;
      height: auto !important;
      margin: 0;
      padding: 0;
      border: 0;
      box-shadow: none;
    }
    dialog[data-printed] {
      visibility: visible;
    }
    dialog::backdrop,
    dialog .ends {
      display: none;
    }
    details::details-content {
      content-visibility: visible;
    }
    summary {
      list-style: none;
      text-decoration: none !important;
    }
  }
`;

/** What every element of ours adopts: one constructed sheet, shared. */
export const base = [tokens, rules];
