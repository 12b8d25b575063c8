import { css } from 'lit';

export const runwayStyles = css`
  .sure {
    fill: var(--bar);
  }
  .likely {
    fill: color-mix(in srgb, var(--bar) 68%, var(--paper));
  }
  .range {
    fill: color-mix(in srgb, var(--bar) 26%, var(--paper));
  }
  .ground,
  .over.resting {
    fill: var(--over);
  }
  .dot {
    fill: var(--paper);
  }
  .gap {
    stroke: var(--short);
    stroke-width: 1;
  }
  .hatch {
    stroke: var(--short);
    stroke-width: 1.3;
  }
  .end {
    stroke: var(--ink);
    stroke-width: 2;
  }
  .onwards {
    fill: none;
    stroke: var(--ink);
    stroke-width: 2;
  }
  .harvest {
    fill: var(--harvest);
    stroke: var(--paper);
    stroke-width: 1.5;
  }
  .mark,
  .line {
    column-gap: 0.75rem;
    grid-template:
      'name verdict' auto
      'plot plot' auto
      'lasts lasts' auto / minmax(0, 1fr) auto;
  }
  .line {
    display: grid;
    grid-template: 'plot' auto / minmax(0, 1fr);
  }
  .mark {
    padding-block: 0.375rem 0.25rem;
  }
  .name {
    grid-area: name;
  }
  .plot {
    grid-area: plot;
  }
  .verdict {
    grid-area: verdict;
    font-weight: 600;
  }
  .lasts {
    grid-area: lasts;
  }
  .verdict.short {
    color: var(--short);
  }
  .verdict.over {
    color: color-mix(in srgb, var(--over) 60%, var(--ink));
  }
  .verdict.quiet {
    font-weight: 400;
  }
  .apart {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(100%, 19rem), 1fr));
    gap: 0 1.25rem;
  }
  .apart .mark {
    display: block;
    padding: 0.3rem 0.25rem;
  }
  .apart .mark > :last-child {
    display: block;
  }
  .group::first-letter {
    text-transform: uppercase;
  }
  /* German weeks and days take more room beside the bars. */
  :host(:lang(de)) {
    --_lasts: 15rem;
  }
  @container (min-width: 40rem) {
    .mark,
    .line {
      grid-template:
        'name plot verdict' 1fr
        'name plot lasts' auto / 10.5rem minmax(0, 1fr) var(--_lasts, 13rem);
    }
    .line {
      grid-template: 'name plot verdict' auto / 10.5rem minmax(0, 1fr) var(--_lasts, 13rem);
    }
    .mark {
      padding-block: 0;
    }
    /* Its row's height, not its own: so the lines of one row meet those of the next. */
    .mark > svg.plot {
      height: 0;
      min-height: max(100%, 36px);
    }
    .verdict {
      align-self: end;
      line-height: 1.2;
    }
    .lasts {
      align-self: start;
      line-height: 1.3;
    }
  }
  @container (min-width: 64rem) {
    .mark,
    .line {
      grid-template: 'name plot verdict lasts' auto / 12.5rem minmax(0, 1fr) 11.75rem 16.5rem;
    }
    .mark > svg.plot {
      min-height: max(100%, 28px);
    }
    .mark > .verdict,
    .mark > .lasts {
      align-self: center;
    }
  }
  @media (prefers-reduced-motion: no-preference) {
    rect {
      transition:
        x 160ms,
        width 160ms;
    }
  }
  @media (forced-colors: active) {
    .likely,
    .range {
      fill: Canvas;
      stroke: CanvasText;
    }
    .range {
      stroke-dasharray: 2 2;
    }
    .dot {
      fill: Canvas;
    }
    .end,
    .onwards {
      stroke: CanvasText;
    }
    .harvest {
      fill: CanvasText;
      stroke: Canvas;
    }
  }
  @media print {
    .mark,
    .line {
      grid-template: 'name plot verdict lasts' auto / 36mm minmax(0, 1fr) 34mm 47mm;
      column-gap: 2mm;
    }
    .mark > svg.plot {
      min-height: max(100%, 18px);
    }
    .mark > .verdict,
    .mark > .lasts {
      align-self: center;
      font-size: 7.5pt;
    }
    .range {
      fill: #fff;
      stroke: #333;
      stroke-width: 0.75;
    }
    .likely {
      fill: #888;
    }
    .apart {
      display: block;
      columns: 3;
    }
    .apart li {
      break-inside: avoid;
    }
  }
`;
