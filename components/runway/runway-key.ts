import { html, svg, type TemplateResult } from 'lit';
import { say } from '../../src/words/index.js';
import { sample } from '../pictures/key.js';
import { harvestMark } from './runway-bar.js';

/** What the marks of the runway mean. */
export const runwayKey =
  (): TemplateResult => html`<ul class="key small" part="key" aria-label=${say`What the marks mean`}>
  <li>
    ${sample(svg`<rect class="sure" width="18" y="-6" height="12"/><rect class="likely" x="18" width="8" y="-6" height="12"/><rect class="range" x="26" width="10" y="-6" height="12"/><path class="end" d="M26-9v18"/>`)}
    ${say`lasts to here, with its range`}
  </li>
  <li>${sample(svg`<rect class="sure" width="36" y="-1.5" height="3"/>`)} ${say`fresh season: shelf not used`}</li>
  <li>${sample(harvestMark(false), true)} ${say`next harvest`}</li>
  <li>${sample(harvestMark(true), true)} ${say`next supply`}</li>
  <li>${sample(svg`<rect class="gap" fill="url(#short)" width="36" y="-5" height="10"/>`)} ${say`short before it`}</li>
  <li>
    ${sample(svg`<rect class="sure" width="36" y="-6" height="12"/><rect class="over" fill="url(#over)" width="36" y="-6" height="12"/>`)} ${say`over when it comes`}
  </li>
</ul>`;
