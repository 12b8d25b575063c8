import { html, type TemplateResult } from 'lit';
import type { ColumnDeclaration } from '../../src/book/index.js';
import { spoken } from '../../src/words/index.js';

/** Planning columns to choose from, each with what it means. */
export const figuresChoice = (
  legend: string,
  columns: readonly ColumnDeclaration[],
  chosen: ReadonlySet<string>,
  choose: (chosen: ReadonlySet<string>) => void,
): TemplateResult => html`<fieldset>
  <legend>${legend}</legend>
  <div class="figures-list" id="figures">
    ${columns.map(
      ({ id, title, unit, help }) => html`<label class="choice">
        <input
          type="checkbox"
          .checked=${chosen.has(id)}
          @change=${(event: Event) => {
            const next = new Set(chosen);
            if ((event.target as HTMLInputElement).checked) next.add(id);
            else next.delete(id);
            choose(next);
          }}
        />
        <span><strong>${spoken(title)}</strong>${unit ? html` <span class="quiet small">${spoken(unit)}</span>` : ''}
          <span class="help quiet small">${spoken(help)}</span></span>
      </label>`,
    )}
  </div>
</fieldset>`;
