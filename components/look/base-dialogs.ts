import { css } from 'lit';

/** Dialogs, and how fields and buttons stand in them. */
export const dialogs = css`
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
    dialog {
      border-width: 2px;
    }
  }
`;
