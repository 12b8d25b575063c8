import { css } from 'lit';

/** What every element leaves off paper, and what it opens there. */
export const paper = css`
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
    /* A sum stands once, at the end: on each page it would be read as that of the page. */
    tfoot {
      display: table-row-group;
    }
    tr {
      break-inside: avoid;
    }
    /* Nothing scrolls on paper, and nothing is folded away. */
    .scroll,
    .lines,
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
    /* Firefox cuts what stands in a grid at the foot of a page, whatever is said of breaks. */
    .stack,
    dialog > form {
      display: block;
    }
    .stack > * + *,
    dialog > form > * + * {
      margin-block-start: 0.75rem;
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
