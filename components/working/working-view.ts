import { html, nothing, type TemplateResult } from 'lit';
import type { Origin, PlanValue, Working } from '../../src/planning/types.js';
import { shownDay, shownNumber, unitWord } from '../sheet/shown.js';

const ORIGINS: Readonly<Record<Origin, string>> = {
  own: 'your own figure',
  learned: 'learned from your own records',
  published: 'published',
  'from memory': 'recalled, not checked',
  computed: 'worked out',
  entered: 'as you wrote it',
  'common practice, no source': 'common practice, no source',
};

/** Where a number came from and whose it is: `published: …`, `worked out from …`. */
export function originInWords(origin: Origin, source = ''): string {
  if (source === '') return ORIGINS[origin];
  // A source says of itself when its figure was derived or recalled; the origin says so already.
  const whose = source.replace(/^(?:derived|from memory): /, '');
  return origin === 'computed' ? `worked out from ${whose}` : `${ORIGINS[origin]}: ${whose}`;
}

/** A planned value in words, with its unit where it is a number. */
export function inFull(value: PlanValue, unit: string): TemplateResult | string {
  if (value === null) return 'blank';
  if (typeof value === 'string') {
    return /^\d{4}-\d{2}-\d{2}$/.test(value)
      ? html`<time datetime=${value}>${shownDay(value)}</time>`
      : value;
  }
  const word = unitWord(unit, value);
  return word ? `${shownNumber(value)} ${word}` : shownNumber(value);
}

/** A working as a reader sees it: the rule, then what went in, then how, then the same as a formula. */
export const workingView = (
  working: Working,
  formula: TemplateResult | typeof nothing,
): TemplateResult => html`
  <p class="answer figures">${inFull(working.value, working.unit)}</p>
  <p>${working.rule}</p>
  ${working.missing ? html`<p class="missing"><strong>Blank for now.</strong> ${working.missing}</p>` : nothing}
  ${
    working.inputs.length === 0
      ? nothing
      : html`<table>
          <caption>
            What goes in
          </caption>
          <tbody>
            ${working.inputs.map(
              ({ name, value, unit, origin, source }) => html`<tr>
                <th scope="row">
                  ${name}
                  <span class="origin">${originInWords(origin, source)}</span>
                </th>
                <td class="figures">${inFull(value, unit)}</td>
              </tr>`,
            )}
          </tbody>
        </table>`
  }
  ${
    working.steps.length === 0
      ? nothing
      : html`<div><h3>Step by step</h3>
          <ol class="steps figures">
            ${working.steps.map(({ text }) => html`<li>${text}</li>`)}
          </ol></div>`
  }
  ${formula}
  ${
    working.cautions?.length
      ? html`<ul class="cautions small">
          ${working.cautions.map((text) => html`<li>${text}</li>`)}
        </ul>`
      : nothing
  }
`;
