import { html, nothing, type TemplateResult } from 'lit';
import type { WhatIfTrial } from '../../src/live/what-if-trial.js';
import { say, spoken } from '../../src/words/index.js';
import { valueInWords } from './control-view.js';

/** What would be written into the book, and whether to. */
export const putView = (
  { tried }: WhatIfTrial,
  on: { readonly put: () => void; readonly leave: () => void },
): TemplateResult => html`<div class="writes" role="group" aria-label=${say`Put it into the book`}>
  <p>${say`This would be written into the book, as one step that undo takes back:`}</p>
  <ul>
    ${tried.map(
      ({ varied, value }) => html`<li>
        ${spoken(varied.label)}: ${valueInWords(varied, varied.present)} → <strong>${valueInWords(varied, value)}</strong>
        ${varied.isFormula ? html`<span class="problem">${say`(in place of its formula)`}</span>` : nothing}
      </li>`,
    )}
  </ul>
  <div class="row">
    <button class="button first" type="button" @click=${on.put}>
      ${tried.length === 1 ? say`Write this value` : say`Write these ${tried.length} values`}
    </button>
    <button class="button" type="button" @click=${on.leave}>${say`Not now`}</button>
  </div>
</div>`;

/** What is said once values were put into the book. */
export const putInWords = (values: number): string =>
  values === 1
    ? say`1 value is in the book now. Undo takes it back.`
    : say`${values} values are in the book now. Undo takes it back.`;

/** Where figures would change that are not looked at, in words; '' where nowhere. */
export function elsewhereInWords(titles: readonly string[]): string {
  const last = titles.at(-1);
  if (last === undefined) return '';
  const others = titles.slice(0, -1).join(', ');
  return say`On ${others === '' ? last : say`${others} and ${last}`} some would. `;
}

/** What is said of formulas while the copy has no engine. */
export const formulasNote = (followed: boolean): TemplateResult => html`<p class="note quiet small">
  ${
    followed
      ? say`Formulas are not worked out yet, so what depends on them may be missing here.`
      : say`Own formulas are not worked out here: no planning figure depends on them.`
  }
</p>`;
