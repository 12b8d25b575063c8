import { css } from 'lit';

/** A sheet on paper. */
export const readingPrint = css`
  @media print {
    .frame {
      max-height: none;
      overflow: visible;
      border: 0;
    }
    .legend,
    .foot {
      display: none;
    }
    /* As wide as the paper: words wrap, and columns are as narrow as their longest word. */
    table {
      width: 100%;
      font-size: 7.5pt;
      line-height: 1.25;
    }
    th,
    td,
    tr > :first-child {
      padding: 1.5pt 2.5pt;
      min-width: 0;
      max-width: none;
      border-bottom: 0.5pt solid #bbb;
    }
    thead th {
      font-size: 7pt;
      border-bottom: 1pt solid #000;
    }
    thead .title {
      max-width: none;
    }
    thead th,
    tr > :first-child {
      position: static;
    }
    .number {
      white-space: normal;
    }
    .after {
      min-width: 0;
      font-size: inherit;
      white-space: nowrap;
    }
    .range,
    thead .unit {
      font-size: 6.5pt;
    }
    .figure {
      width: 100%;
      margin: 0;
      padding: 0;
      min-height: 0;
    }
    [class*='wide-'] {
      min-width: 0;
      max-width: none;
    }
    .chosen {
      box-shadow: none;
    }
    tr:has(+ .under) {
      break-after: avoid;
    }
    tr:has(+ .under) > * {
      border-bottom: 0;
    }
    .under > :first-child {
      padding: 0 2.5pt 3pt 9pt;
      font-weight: 400;
      border-inline-end: 0;
    }
    .under .text {
      margin-inline-end: 4pt;
    }
    .under b {
      font-weight: 600;
      font-size: 0.92em;
      color: #444;
    }
    .planning,
    .tint {
      print-color-adjust: exact;
      -webkit-print-color-adjust: exact;
    }
  }
`;
