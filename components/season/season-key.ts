import { html, svg } from 'lit';
import { sample } from '../pictures/key.js';
import { beginMark, setOutMark } from './season-marks.js';

/** What the marks of the growing year mean. */
export const seasonKey = html`<ul class="key small" part="key" aria-label="What the marks mean">
  <li>${sample(beginMark('start indoors', false), true)} start indoors</li>
  <li>${sample(beginMark('sow under cover', false), true)} sow under cover</li>
  <li>${sample(beginMark('sow', false), true)} sow</li>
  <li>${sample(beginMark('plant', false), true)} plant</li>
  <li>${sample(beginMark('sow', true), true)} filled: done</li>
  <li>${sample(setOutMark, true)} set out</li>
  <li>${sample(svg`<line class="cover" x2="36"/>`)} under cover</li>
  <li>${sample(svg`<line class="growing" x2="36"/>`)} in the ground</li>
  <li>${sample(svg`<rect class="reap" width="36" y="-5" height="10"/>`)} harvest</li>
  <li>${sample(svg`<rect class="put-up" fill="url(#jars)" width="35" y="-3" height="6"/>`)} put up</li>
</ul>`;
