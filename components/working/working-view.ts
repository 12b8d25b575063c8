import { html, nothing, type TemplateResult } from 'lit';
import { withoutLead } from '../../src/facts/index.js';
import type { Origin, PlanValue, Working, WorkingInput } from '../../src/planning/types.js';
import { n } from '../../src/planning/working/closing.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { shownDay, shownNumber, unitWord, withShownDays } from '../sheet/shown.js';

const ORIGINS: Readonly<Record<Origin, string>> = {
  own: phrase('your own figure'),
  learned: phrase('learned from your own records'),
  published: phrase('published'),
  'from memory': phrase('recalled, not checked'),
  computed: phrase('worked out'),
  entered: phrase('as you wrote it'),
  'common practice, no source': phrase('common practice, no source'),
};

/** Where a number came from and whose it is: `published: …`, `worked out from …`. */
export function originInWords(origin: Origin, source = ''): string {
  if (source === '') return spoken(ORIGINS[origin]);
  // A source says of itself when its figure was derived or recalled; the origin says so already.
  const whose = withoutLead(source);
  return origin === 'computed' ? say`worked out from ${whose}` : `${spoken(ORIGINS[origin])}: ${whose}`;
}

/** A planned value in words, with its unit where it is a number. */
export function inFull(value: PlanValue, unit: string): TemplateResult | string {
  if (value === null) return say`blank`;
  if (typeof value === 'string') {
    return /^\d{4}-\d{2}-\d{2}$/.test(value)
      ? html`<time datetime=${value}>${shownDay(value)}</time>`
      : value;
  }
  const word = unitWord(unit, value);
  return word ? `${fractional(value)} ${word}` : shownNumber(value);
}

/** Of a measure: 17⅔. */
const fractional = (value: number): string => (/[⅓⅔]/.test(n(value)) ? n(value) : shownNumber(value));

/** Asks for the cell of an input to be shown. */
export type ShowInput = (from: NonNullable<WorkingInput['from']>) => void;

const nameOf = ({ name, from }: WorkingInput, show: ShowInput | null): TemplateResult | string =>
  from && show
    ? html`<button class="link" type="button" title=${say`Go to this cell`} @click=${() => show(from)}>${name}</button>`
    : name;

const problems = (working: Working): TemplateResult | typeof nothing =>
  working.problems?.length
    ? html`<ul class="units small">
        ${working.problems.map(({ message, mend }) => html`<li><strong>${spoken(message)}</strong> ${spoken(mend)}</li>`)}
      </ul>`
    : nothing;

const changes = (working: Working): TemplateResult | typeof nothing =>
  working.changes?.length
    ? html`<div class="changes small">
        <h3>${say`What would change it`}</h3>
        <ul>
          ${working.changes.map((text) => html`<li>${text}</li>`)}
        </ul>
      </div>`
    : nothing;

/**
 * A working as a reader sees it: the rule, what went in, how, what would change it, then the same as a formula.
 * With `show`, numbers that stand in a cell lead there.
 */
export const workingView = (
  working: Working,
  formula: TemplateResult | typeof nothing,
  show: ShowInput | null = null,
): TemplateResult => html`
  <p class="answer figures">${inFull(working.value, working.unit)}</p>
  <p class="rule">${working.rule}</p>
  ${problems(working)}
  ${working.missing ? html`<p class="missing"><strong>${say`Blank for now.`}</strong> ${working.missing}</p>` : nothing}
  ${
    working.inputs.length === 0
      ? nothing
      : html`<table>
          <caption>
            ${say`What goes in`}
          </caption>
          <tbody>
            ${working.inputs.map(
              (each) => html`<tr>
                <th scope="row">
                  ${nameOf(each, show)}
                  <span class="origin">${originInWords(each.origin, each.source)}</span>
                </th>
                <td class="figures">${inFull(each.value, each.unit)}</td>
              </tr>`,
            )}
          </tbody>
        </table>`
  }
  ${
    working.steps.length === 0
      ? nothing
      : html`<div><h3>${say`Step by step`}</h3>
          <ol class="steps figures">
            ${working.steps.map(
              ({ text, depth = 0 }) =>
                html`<li class=${depth > 0 ? 'inside' : ''}>${withShownDays(text)}</li>`,
            )}
          </ol></div>`
  }
  ${changes(working)}
  ${formula}
  ${
    working.cautions?.length
      ? html`<ul class="cautions small">
          ${working.cautions.map((text) => html`<li>${text}</li>`)}
        </ul>`
      : nothing
  }
`;
