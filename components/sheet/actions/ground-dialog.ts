import { css, html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { type GroundToShare, groundToShare } from '../../../src/live/doings/share-ground.js';
import type { LiveBook } from '../../../src/live/live-book.js';
import { type CropGround, explainGround, type GroundPlan } from '../../../src/planning/ground/index.js';
import { workingInWords } from '../../../src/planning/working/in-words.js';
import type { Result } from '../../../src/problem.js';
import { turnedUnit } from '../../../src/units/index.js';
import { phrase, say, spoken } from '../../../src/words/index.js';
import { inWords } from '../../look/problems.js';
import { tableStyles } from '../../look/table-styles.js';
import { workingStyles } from '../../working/working-styles.js';
import { workingView } from '../../working/working-view.js';
import { shownNumber } from '../shown.js';
import { ActionDialog, dialogStyles } from './action-dialog.js';

/** How the ground could be shared among the plantings of Beds, and what that gives up; plans it so when asked. */
@customElement('croft-ground-dialog')
export class GroundDialog extends ActionDialog {
  static override styles = [
    ...ActionDialog.styles,
    workingStyles,
    tableStyles,
    dialogStyles,
    css`
      .bars {
        display: grid;
        grid-template-columns: auto minmax(0, 1fr) auto;
        gap: 0.25rem 0.625rem;
        align-items: center;
      }
      .bars svg {
        width: 100%;
        height: 14px;
      }
      .bars rect {
        fill: var(--accent);
      }
      .bars .wanted rect {
        fill: var(--plan-line);
      }
      progress {
        width: 100%;
        accent-color: var(--accent);
      }
      details > * + * {
        margin-top: 0.5rem;
      }
    `,
  ];

  protected override heading = phrase('Share the ground');
  @state() private shared: Result<GroundToShare> | null = null;
  @state() private refused = '';

  protected override firstUpdated(changed: PropertyValues): void {
    super.firstUpdated(changed);
    void this.#share();
  }

  async #share(): Promise<void> {
    if (!this.live) return;
    try {
      this.shared = await groundToShare(this.live);
    } catch (error) {
      console.error(error);
      this.refused = say`What shares the ground could not be loaded. Check the connection and try again.`;
    }
  }

  protected override content(live: LiveBook): TemplateResult {
    const { shared } = this;
    if (this.refused) return html`<p class="problem" role="alert">${this.refused}</p>${this.foot()}`;
    if (!shared) {
      return html`<p role="status">${say`Weighing what is wanted against the ground…`}</p>
        <progress aria-label=${say`Sharing the ground`}></progress>${this.foot()}`;
    }
    if (!shared.ok) return html`<p class="problem" role="alert">${inWords(shared.problem)}</p>${this.foot()}`;
    const { plan, command } = shared.value;
    const run = (): void => {
      const done = live.apply(command);
      const n = plan.crops.length;
      const planned =
        n === 1
          ? say`Plants planned in one planting. Undo brings back what stood there.`
          : say`Plants planned in ${n} plantings. Undo brings back what stood there.`;
      this.close(done.ok ? planned : done.problem);
    };
    return html`${bars(plan)}
      <div role="status">
        <ul class="says">
          ${plan.words.map((words) => html`<li>${words}</li>`)}
        </ul>
      </div>
      ${this.#table(live, plan)} ${givenUp(plan)}
      <details class="small">
        <summary>${say`How it is worked out`}</summary>
        ${workingView(workingInWords(explainGround(plan)), nothing)}
      </details>
      ${this.foot({ label: say`Plan it so`, run })}`;
  }

  #table(live: LiveBook, plan: GroundPlan): TemplateResult {
    const beds = live.sheetOfKind('beds')!;
    return html`<div class="scroll" tabindex="0" role="region" aria-label=${say`Plants of each planting`}>
      <table>
        <thead>
          <tr>
            <th scope="col">${say`Planting`}</th>
            <th scope="col" class="number">${say`Wanted`}</th>
            <th scope="col" class="number">${say`Planned now`}</th>
            <th scope="col" class="number">${say`Would be`}</th>
            <th scope="col" class="number">${say`Share`}</th>
          </tr>
        </thead>
        <tbody>
          ${plan.crops.map(({ id, name, wanted, plants, share }) => {
            const now = live.value(beds, id, 'plants');
            return html`<tr data-row=${id}>
              <th scope="row">${name}</th>
              <td class="number figures">${shownNumber(wanted, 0)}</td>
              <td class="number figures">${typeof now === 'number' ? shownNumber(now, 0) : '–'}</td>
              <td class="number figures ${plants < wanted ? 'less' : ''}">${shownNumber(plants, 0)}</td>
              <td class="number figures">${share > 0 && share < 0.01 ? '< 1' : Math.floor(share * 100 + 1e-9)} %</td>
            </tr>`;
          })}
        </tbody>
      </table>
    </div>`;
  }
}

/** Ground wanted above ground there is, to one scale. */
function bars({ needed, available, measure }: GroundPlan): TemplateResult {
  const most = Math.max(needed, available);
  const { unit = measure, factor = 1 } = turnedUnit(measure) ?? {};
  const bar = (name: string, amount: number, kind: string) => html`<span class="small">${name}</span>
    <svg class=${kind} aria-hidden="true" focusable="false"><rect height="14" width="${(amount / most) * 100}%" rx="2" /></svg>
    <span class="small figures">${shownNumber(amount * factor, 0)} ${spoken(unit)}</span>`;
  return html`<div class="bars">${bar(say`Wanted`, needed, 'wanted')} ${bar(say`There is`, available, '')}</div>`;
}

function givenUp({ crops }: GroundPlan): TemplateResult | typeof nothing {
  const less = crops.filter((crop: CropGround) => crop.plants < crop.wanted);
  if (less.length === 0) return nothing;
  return html`<details class="small">
    <summary>${say`What is given up, crop by crop`}</summary>
    <ul class="says">
      ${less.map(({ words }) => html`<li>${words}</li>`)}
    </ul>
  </details>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'croft-ground-dialog': GroundDialog;
  }
}
