import { html, nothing, type TemplateResult } from 'lit';
import { ENCODINGS, type Encoding } from '../../src/tables/encoding.js';
import { SEPARATORS, type Separator } from '../../src/tables/separator.js';
import { say, spoken } from '../../src/words/index.js';
import { icons } from '../look/icons.js';
import type { ImportRun } from './import-run.js';

const ACCEPTED =
  '.csv,.tsv,.tab,.txt,.xlsx,.json,text/csv,text/tab-separated-values,text/plain,application/json,application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

export interface SourceHandlers {
  files(files: readonly File[]): void;
  text(text: string): void;
}

/** Where the table comes from: a file chosen or dropped, or text pasted. */
export function sourceView({ files, text }: SourceHandlers): TemplateResult {
  const over = (event: DragEvent): void => {
    event.preventDefault();
    (event.currentTarget as HTMLElement).classList.add('over');
  };
  const out = (event: DragEvent): void => (event.currentTarget as HTMLElement).classList.remove('over');
  const dropped = (event: DragEvent): void => {
    event.preventDefault();
    out(event);
    files([...(event.dataTransfer?.files ?? [])]);
  };
  return html`<div class="drop" @dragover=${over} @dragleave=${out} @drop=${dropped}>
      <label for="file">${say`A file of separated values (CSV, TSV) or a workbook (.xlsx)`}</label>
      <input
        id="file"
        type="file"
        multiple
        accept=${ACCEPTED}
        @change=${(event: Event) => {
          const input = event.target as HTMLInputElement;
          files([...(input.files ?? [])]);
          input.value = '';
        }}
      />
      <p class="quiet small">
        ${say`Or drop it here. If a file that describes it lies beside it (its name ends in -metadata.json), choose both together.`}
      </p>
    </div>
    <div class="field">
      <label for="pasted">${say`Or paste a table`}</label>
      <textarea id="pasted" spellcheck="false" autocomplete="off"></textarea>
      <div class="row">
        <button
          class="button"
          type="button"
          @click=${(event: Event) => {
            const root = (event.target as HTMLElement).getRootNode() as ShadowRoot;
            text(root.querySelector<HTMLTextAreaElement>('#pasted')!.value);
          }}
        >
          ${say`Look at what is pasted`}
        </button>
      </div>
    </div>
    <p class="quiet small">${say`Nothing is changed until you have seen where everything goes.`}</p>`;
}

/** How the file was read, with what the person can change about it. */
export function readingView(run: ImportRun): TemplateResult {
  const { opened, choices, plan } = run;
  if (!opened) return html``;
  const value = (event: Event): string => (event.target as HTMLSelectElement).value;
  return html`<div class="stack-small">
    <p>
      <strong>${run.name}</strong>
      <button class="link" type="button" @click=${() => run.reset()}>${say`Choose another`}</button>
    </p>
    <div class="fields">
      ${
        opened.form === 'workbook'
          ? html`<div class="field">
              <label for="worksheet">${say`Worksheet`}</label>
              <select id="worksheet" @change=${(event: Event) => void run.readWorksheet(Number(value(event)))}>
                ${opened.workbook.worksheets.map(
                  ({ index, name, hidden }) =>
                    html`<option value=${index} .selected=${index === run.worksheet}>
                      ${name}${hidden ? ` ${say`(hidden there)`}` : ''}
                    </option>`,
                )}
              </select>
            </div>`
          : nothing
      }
      ${
        opened.form === 'text'
          ? html`<div class="field">
              <label for="encoding">${say`Letters are written in`}</label>
              <select id="encoding" @change=${(event: Event) => void run.read({ encoding: value(event) as Encoding })}>
                ${ENCODINGS.map(
                  ({ id, label }) =>
                    html`<option value=${id} .selected=${id === choices?.encoding}>${spoken(label)}</option>`,
                )}
              </select>
              <span class="quiet small">
                ${choices?.encoding === opened.found.encoding ? say`Taken because ${opened.found.how}.` : say`Chosen by you.`}
              </span>
            </div>`
          : nothing
      }
      ${
        choices
          ? html`<div class="field">
              <label for="separator">${say`Fields are separated by`}</label>
              <select
                id="separator"
                @change=${(event: Event) => void run.read({ separator: value(event) as Separator })}
              >
                ${SEPARATORS.map(
                  ({ id, label }) =>
                    html`<option value=${id} .selected=${id === choices.separator}>${spoken(label)}</option>`,
                )}
              </select>
            </div>`
          : nothing
      }
      ${
        plan
          ? html`<label class="tick">
              <input
                type="checkbox"
                .checked=${plan.header}
                @change=${(event: Event) => void run.setHeader((event.target as HTMLInputElement).checked)}
              />
              ${say`The first row gives the titles`}
            </label>`
          : nothing
      }
    </div>
    ${run.described ? html`<p class="quiet small">${icons.check} ${say`Titles and types come from its description.`}</p>` : nothing}
  </div>`;
}
