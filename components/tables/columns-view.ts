import { html, nothing, type TemplateResult } from 'lit';
import type { LiveBook } from '../../src/live/live-book.js';
import { type ColumnPlan, columnsToFill, freeTitle, type Target } from '../../src/tables/plan.js';
import { asText, isBlank, type Reading, type ReadType } from '../../src/tables/types.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import type { ImportRun } from './import-run.js';

const TYPES: readonly (readonly [ReadType, string])[] = [
  ['text', phrase('Text')],
  ['number', phrase('Numbers')],
  ['date', phrase('Dates')],
  ['tick', phrase('Ticks (yes or no)')],
  ['choice', phrase('Choices')],
];

const READ_AS: Readonly<Record<ReadType, string>> = {
  text: phrase('text'),
  number: phrase('numbers'),
  date: phrase('dates'),
  tick: phrase('ticks'),
  choice: phrase('choices'),
  any: phrase('text, numbers or dates, as each looks'),
  'month-day': phrase('days of the year'),
};

const value = (event: Event): string => (event.target as HTMLSelectElement | HTMLInputElement).value;

/** Into which sheet the table goes. */
export function placeView(live: LiveBook, run: ImportRun): TemplateResult {
  const { plan } = run;
  if (!plan) return html``;
  const { place } = plan;
  const sheet = 'sheet' in place ? place.sheet : '';
  return html`<fieldset>
    <legend>${say`Where it goes`}</legend>
    <div class="fields">
      <div class="field">
        <label for="place">${say`Sheet`}</label>
        <select
          id="place"
          @change=${(event: Event) => {
            const id = value(event);
            void run.setPlace(
              id === ''
                ? { newSheet: freeTitle(live, run.name.replace(/\.[^.]{1,12}$/, '')) }
                : { sheet: id },
            );
          }}
        >
          <option value="" .selected=${sheet === ''}>${say`A new sheet of your own`}</option>
          ${live
            .sheets()
            .map(
              ({ id, title }) =>
                html`<option value=${id} .selected=${id === sheet}>${say`${title}: below its rows`}</option>`,
            )}
        </select>
      </div>
      ${
        'newSheet' in place
          ? html`<div class="field">
              <label for="title">${say`Title of the new sheet`}</label>
              <input id="title" maxlength="60" .value=${place.newSheet} @input=${(event: Event) => run.setTitle(value(event))} />
            </div>`
          : nothing
      }
    </div>
  </fieldset>`;
}

/** Each column of the file: a look at it, where it goes, and how it is read. */
export function columnsView(live: LiveBook, run: ImportRun): TemplateResult {
  const { plan } = run;
  if (!plan) return html``;
  const sheet = 'sheet' in plan.place ? plan.place.sheet : null;
  const fill = sheet === null ? null : columnsToFill(live, sheet);
  return html`<section class="stack-small" aria-labelledby="columns">
    <h3 id="columns">${say`Columns`}</h3>
    ${
      fill && fill.planning.length > 0
        ? html`<p class="quiet small">
            ${say`Planning columns (${listed(fill.planning.map(({ title }) => title))}) are worked out from the book, so nothing can be brought into them.`}
          </p>`
        : nothing
    }
    <ul class="columns">
      ${plan.columns.map((column) => columnView(run, column, fill?.targets ?? null))}
    </ul>
  </section>`;
}

const listed = (titles: readonly string[]): string =>
  titles.length > 4 ? say`${titles.slice(0, 3).join(', ')} and ${titles.length - 3} more` : titles.join(', ');

function columnView(
  run: ImportRun,
  column: ColumnPlan,
  targets: readonly { readonly id: string; readonly title: string }[] | null,
): TemplateResult {
  const { index, heading, target, reading } = column;
  const isOut = target.to === 'leave out';
  const chosen = target.to === 'column' ? `=${target.column}` : target.to;
  return html`<li class="column ${isOut ? 'out' : target.to === 'new' ? 'own' : ''}">
    <div class="stack-small">
      <h4 id=${`heading-${index}`}>${heading}</h4>
      <p class="quiet small samples">${samples(run, index)}</p>
    </div>
    <div class="stack-small">
      <label for=${`to-${index}`}>${say`Goes into`}<span class="unseen">${say`, from ${heading}`}</span></label>
      <select
        id=${`to-${index}`}
        @change=${(event: Event) => void run.setTarget(index, targetOf(value(event), heading))}
      >
        ${(targets ?? []).map(
          ({ id, title }) =>
            html`<option value=${`=${id}`} .selected=${chosen === `=${id}`}>${title}</option>`,
        )}
        <option value="new" .selected=${chosen === 'new'}>
          ${targets ? say`A new column of your own` : say`A column of the new sheet`}
        </option>
        <option value="leave out" .selected=${isOut}>${say`Nowhere: leave it out`}</option>
      </select>
      ${
        target.to === 'new'
          ? html`<input
              aria-label=${say`Title of the column for ${heading}`}
              maxlength="190"
              .value=${target.title}
              @input=${(event: Event) => run.setColumnTitle(index, value(event))}
            />`
          : nothing
      }
    </div>
    <div class="stack-small">${isOut ? nothing : readAs(run, column, reading)}</div>
  </li>`;
}

const targetOf = (chosen: string, title: string): Target =>
  chosen.startsWith('=')
    ? { to: 'column', column: chosen.slice(1) }
    : chosen === 'new'
      ? { to: 'new', title }
      : { to: 'leave out' };

function readAs(run: ImportRun, { index, heading, target }: ColumnPlan, reading: Reading): TemplateResult {
  const change = (part: Partial<Reading>): void => void run.setReading(index, part);
  const typed =
    target.to === 'new'
      ? html`<label for=${`as-${index}`}>${say`Holds`}<span class="unseen">, ${heading}</span></label>
          <select id=${`as-${index}`} @change=${(event: Event) => change({ type: value(event) as ReadType })}>
            ${TYPES.map(([id, label]) => html`<option value=${id} .selected=${id === reading.type}>${spoken(label)}</option>`)}
          </select>`
      : html`<p class="small">${say`Read as ${READ_AS[reading.type]}`}</p>`;
  const { type } = reading;
  return html`${typed}
    ${
      type === 'date' && hasText(run, index)
        ? html`<label for=${`order-${index}`}>${say`Written`}<span class="unseen">${say`, the dates of ${heading}`}</span></label>
            <select
              id=${`order-${index}`}
              @change=${(event: Event) => change({ dateOrder: value(event) as Reading['dateOrder'] })}
            >
              <option value="day first" .selected=${reading.dateOrder === 'day first'}>${say`4/5 is 4 May`}</option>
              <option value="month first" .selected=${reading.dateOrder === 'month first'}>${say`4/5 is 5 April`}</option>
            </select>`
        : nothing
    }
    ${
      type === 'number' && hasText(run, index)
        ? html`<label for=${`comma-${index}`}>${say`Written`}<span class="unseen">${say`, the numbers of ${heading}`}</span></label>
            <select id=${`comma-${index}`} @change=${(event: Event) => change({ decimalComma: value(event) === 'comma' })}>
              <option value="point" .selected=${!reading.decimalComma}>1,234.5</option>
              <option value="comma" .selected=${reading.decimalComma}>1.234,5</option>
            </select>`
        : nothing
    }`;
}

const body = (run: ImportRun) => (run.table?.rows ?? []).slice(run.plan?.header ? 1 : 0);

/** The first few filled cells, to know the column by. */
function samples(run: ImportRun, index: number): string {
  const found: string[] = [];
  for (const { cells } of body(run).slice(0, 200)) {
    const cell = cells[index];
    if (isBlank(cell)) continue;
    found.push(asText(cell).slice(0, 60));
    if (found.length === 3) break;
  }
  return found.length === 0 ? say`blank in the first rows` : found.join(' · ');
}

/** Workbooks hold numbers and dates as such: how they are written is no question there. */
const hasText = (run: ImportRun, index: number): boolean =>
  body(run)
    .slice(0, 500)
    .some(({ cells }) => typeof cells[index] === 'string');
