import { html, svg, type TemplateResult } from 'lit';
import { HERE } from '../../src/words/here.js';
import { say } from '../../src/words/index.js';
import { sample } from '../pictures/key.js';
import { beginMark, setOutMark } from './season-marks.js';
import { spokenBeginning } from './season-words.js';

/** What the marks of the growing year mean. */
export const seasonKey =
  (): TemplateResult => html`<ul class="key small" part="key" aria-label=${say`What the marks mean`}>
  <li>${sample(beginMark('start indoors', false), true)} ${spokenBeginning('start indoors')}</li>
  <li>${sample(beginMark('sow under cover', false), true)} ${spokenBeginning('sow under cover')}</li>
  <li>${sample(beginMark('sow', false), true)} ${spokenBeginning('sow')}</li>
  <li>${sample(beginMark('plant', false), true)} ${spokenBeginning('plant')}</li>
  <li>${sample(beginMark('sow', true), true)} ${say`filled: done`}</li>
  <li>${sample(setOutMark, true)} ${say`set out`}</li>
  <li>${sample(svg`<line class="cover" x2="36"/>`)} ${say`under cover`}</li>
  <li>${sample(svg`<line class="growing" x2="36"/>`)} ${say`in the ground`}</li>
  <li>${sample(svg`<rect class="reap" width="36" y="-5" height="10"/>`)} ${say`harvest`}</li>
  <li>${sample(svg`<rect class="put-up" fill="url(#jars)" width="35" y="-3" height="6"/>`)} ${say`put up${HERE}`}</li>
</ul>`;
