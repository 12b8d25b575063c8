import { css } from 'lit';

export const seasonStyles = css`
  :host {
    --sprout: var(--croft-sprout, var(--own));
  }
  .frosts {
    display: flex;
    flex-wrap: wrap;
    gap: 0 1.25rem;
  }
  .free {
    fill: color-mix(in srgb, var(--sprout) 9%, transparent);
  }
  .cover {
    stroke: var(--bar);
    stroke-width: 2;
    stroke-dasharray: 2 3;
  }
  .growing {
    stroke: var(--sprout);
    stroke-width: 2.5;
  }
  .begin {
    fill: var(--paper);
    stroke: var(--bar);
    stroke-width: 1.8;
    stroke-linejoin: round;
  }
  .begin.done {
    fill: var(--bar);
  }
  .set-out {
    fill: var(--sprout);
    stroke: var(--paper);
    stroke-width: 0.8;
  }
  .set-out .stem {
    fill: none;
    stroke: var(--sprout);
    stroke-width: 2;
  }
  .reap {
    fill: var(--harvest);
  }
  .jar {
    fill: var(--bar);
  }
  .rules .last-frost,
  .rules .first-frost {
    stroke: var(--bar);
    stroke-width: 1.5;
    stroke-dasharray: 6 3;
  }
  .rules .first-frost {
    stroke-dasharray: 2 2;
  }
  .axis .plot {
    height: 3.1rem;
  }
  .axis .day.frost {
    top: 0.95rem;
    font-weight: 400;
  }
  .axis .weeks {
    position: absolute;
    inset: auto 0 0;
    width: 100%;
    height: 4px;
  }
  .weeks line {
    stroke: var(--quiet);
    stroke-width: 0.75;
    shape-rendering: crispEdges;
  }
  .mark,
  .line {
    column-gap: 0.75rem;
    grid-template:
      'name next' auto
      'plot plot' auto
      'days days' auto / minmax(0, 1fr) auto;
  }
  .line {
    display: grid;
    grid-template: 'plot' auto / minmax(0, 1fr);
  }
  .mark {
    padding-block: 0.375rem 0.25rem;
  }
  div.mark {
    cursor: default;
  }
  .name {
    grid-area: name;
  }
  .plot {
    grid-area: plot;
  }
  .next {
    grid-area: next;
    font-weight: 600;
  }
  .next.late {
    color: var(--short);
  }
  .days {
    grid-area: days;
    color: var(--quiet);
  }
  .whole {
    white-space: nowrap;
  }
  svg.plot {
    height: 30px;
  }
  td .one {
    display: block;
  }
  caption {
    text-align: start;
    font-weight: 600;
    padding: 0.5rem 0.625rem;
  }
  @container (min-width: 40rem) {
    .mark {
      grid-template:
        'name plot' 1fr
        'next plot' auto / 13rem minmax(0, 1fr);
      padding-block: 0;
      min-height: 42px;
    }
    .line {
      grid-template: 'name plot' auto / 13rem minmax(0, 1fr);
    }
    .mark > svg.plot {
      height: 0;
      min-height: max(100%, 42px);
    }
    .name {
      align-self: end;
      line-height: 1.25;
    }
    .next {
      align-self: start;
      line-height: 1.3;
    }
    /* Read out all the same. */
    .days {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
  }
  @container (min-width: 78rem) {
    .mark {
      grid-template:
        'name plot days' 1fr
        'next plot days' auto / 13rem minmax(0, 1fr) 19rem;
    }
    .line {
      grid-template: 'name plot days' auto / 13rem minmax(0, 1fr) 19rem;
    }
    .days {
      position: static;
      width: auto;
      height: auto;
      clip-path: none;
      align-self: center;
    }
  }
  @media (forced-colors: active) {
    :host {
      --sprout: CanvasText;
    }
    .free {
      fill: none;
    }
    .rules .last-frost,
    .rules .first-frost,
    .cover,
    .growing,
    .begin,
    .set-out .stem {
      stroke: CanvasText;
    }
    .begin {
      fill: Canvas;
    }
    .begin.done,
    .reap,
    .jar,
    .set-out {
      fill: CanvasText;
    }
  }
  @media print {
    :host {
      --sprout: #000;
    }
    .free {
      fill: #f2f2f2;
    }
    .reap {
      fill: #777;
    }
    .mark,
    .line {
      grid-template: 'name plot days' auto / 34mm minmax(0, 1fr) 52mm;
      column-gap: 2mm;
    }
    .mark > svg.plot {
      height: 0;
      min-height: max(100%, 26px);
    }
    .next {
      display: none;
    }
    .days {
      position: static;
      width: auto;
      height: auto;
      clip-path: none;
      align-self: center;
      font-size: 7.5pt;
    }
    .name {
      align-self: center;
    }
  }
`;
