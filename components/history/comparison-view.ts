import { html, nothing, type TemplateResult } from 'lit';
import type { BringBack } from '../../src/live/doings/bring-back.js';
import type {
  BookComparison,
  EntryDifference,
  RowDifference,
  SheetDifference,
} from '../../src/live/doings/compare-books.js';
import { HERE } from '../../src/words/here.js';
import { phrase, say, spoken } from '../../src/words/index.js';
import { icons } from '../look/icons.js';
import { figurePair, valueWords } from './shown-difference.js';

/** Rows of one sheet that are listed at first. */
const MOST = 40;

export interface ComparisonHost {
  /** Figures that are worked out are listed too. */
  readonly figures: boolean;
  /** The sheet that is listed; all, when null. */
  readonly sheet: string | null;
  /** Sheets of which every row is listed. */
  readonly unfolded: ReadonlySet<string>;
  /** Absent where nothing can be brought back (two versions are compared). */
  readonly bringBack?: (what: BringBack, called: string) => void;
  readonly unfold: (sheet: string) => void;
}

const arrow = (): TemplateResult =>
  html`<span class="turns" aria-hidden="true"> → </span><span class="unseen"> ${say`then`} </span>`;
const pair = (was: string, is: string): TemplateResult =>
  html`<span class="was">${was}</span>${arrow()}<span class="is">${is}</span>`;

/** What differs between two books: settings, then sheet by sheet and row by row. */
export function comparisonView(found: BookComparison, host: ComparisonHost): TemplateResult {
  const sheets = found.sheets.filter(
    (each) =>
      (host.sheet === null || each.sheet === host.sheet) &&
      rowsOf(each, host).length + each.columns.length > 0,
  );
  const settings = host.sheet === null ? found.settings : [];
  const title = host.sheet === null ? found.title : null;
  if (sheets.length + settings.length === 0 && !title)
    return html`<p role="status">${host.sheet === null && host.figures ? say`Nothing differs.` : say`Nothing differs in what is chosen above.`}</p>`;
  return html`
    ${title ? html`<p>${say`Title of the book: `}${pair(title.was, title.is)}</p>` : nothing}
    ${
      settings.length === 0
        ? nothing
        : html`<section class="sheet-part" aria-label=${say`Settings`}>
            <h3>${say`Settings`}</h3>
            <dl class="pairs">
              ${settings.map(
                (each) =>
                  html`<div>
                    <dt>${spoken(each.title)}</dt>
                    <dd><span>${pair(valueWords(each.was), valueWords(each.is))} ${spoken(each.unit ?? '')}</span></dd>
                  </div>`,
              )}
            </dl>
          </section>`
    }
    ${sheets.map((each) => sheetView(each, host))}
  `;
}

const rowsOf = ({ rows }: SheetDifference, { figures }: ComparisonHost): readonly RowDifference[] =>
  figures ? rows : rows.filter(hasEntries);

/** Where only figures differ there is nothing to bring back: they follow from entries elsewhere. */
const hasEntries = ({ what, entries }: RowDifference): boolean => what !== 'changed' || entries.length > 0;

const WORDS = {
  added: phrase('added since'),
  removed: phrase('removed since'),
  changed: phrase('changed'),
};

function sheetView(found: SheetDifference, host: ComparisonHost): TemplateResult {
  const { sheet, title, what, columns } = found;
  const rows = rowsOf(found, host);
  const listed = host.unfolded.has(sheet) ? rows : rows.slice(0, MOST);
  const back = host.bringBack;
  return html`<section class="sheet-part" aria-label=${title}>
    <div class="sheet-head">
      <h3>${title} <span class="quiet small">${rows.length === 1 ? say`1 row` : say`${rows.length} rows`}</span></h3>
      ${
        back && what !== 'added' && (columns.length > 0 || found.rows.some(hasEntries))
          ? html`<button class="button" type="button" @click=${() => back({ part: 'sheet', sheet }, say`sheet “${title}”`)}>
              ${icons.undo}${say`Bring back this sheet…`}
            </button>`
          : nothing
      }
    </div>
    ${
      columns.length === 0
        ? nothing
        : html`<ul class="small">
            ${columns.map((each) => html`<li><strong>${each.title}</strong>: ${each.words}</li>`)}
          </ul>`
    }
    <div class="rows-part">${listed.map((row) => rowView(sheet, title, row, host))}</div>
    ${
      listed.length < rows.length
        ? html`<button class="button" type="button" @click=${() => host.unfold(sheet)}>
            ${say`Show all ${rows.length} rows`}
          </button>
          <p class="on-paper">${say`The first ${listed.length} of ${rows.length} rows.`}</p>`
        : nothing
    }
  </section>`;
}

function rowView(sheet: string, title: string, found: RowDifference, host: ComparisonHost): TemplateResult {
  const { row, called, what, entries, figures } = found;
  const back = host.bringBack;
  return html`<article class="row-part" aria-label=${called}>
    <header>
      <strong>${called}</strong>
      <span class="row">
        ${what === 'changed' ? nothing : html`<span class="mark ${what}">${spoken(WORDS[what])}</span>`}
        ${
          back && hasEntries(found)
            ? html`<button
                class="button plain small"
                type="button"
                aria-label=${what === 'added' ? say`Take out ${called}` : say`Bring back row ${called}`}
                @click=${() => back({ part: 'row', sheet, row }, say`row “${called}” of ${title}`)}
              >
                ${icons.undo}${what === 'added' ? say`Take out…${HERE}` : say`Bring back row…`}
              </button>`
            : nothing
        }
      </span>
    </header>
    ${
      entries.length === 0 && (figures.length === 0 || !host.figures)
        ? nothing
        : html`<dl class="pairs">
            ${entries.map((entry) => entryView(sheet, row, called, what, entry, host))}
            ${
              host.figures
                ? figures.map((figure) => {
                    const [was, is] = figurePair(figure);
                    return html`<div>
                      <dt><span class="planned">${figure.column.title}</span></dt>
                      <dd class="figures"><span>${pair(was, is)}</span></dd>
                    </div>`;
                  })
                : nothing
            }
          </dl>`
    }
  </article>`;
}

function entryView(
  sheet: string,
  row: string,
  called: string,
  what: RowDifference['what'],
  { column, about, was, is }: EntryDifference,
  { bringBack }: ComparisonHost,
): TemplateResult {
  const name = about ? `${column.title} (${spoken(about)})` : column.title;
  // A note is no entry of the column.
  const of = about ? undefined : column;
  const words =
    what === 'added'
      ? html`<span class="is">${valueWords(is, of)}</span>`
      : what === 'removed'
        ? html`<span class="was">${valueWords(was, of)}</span>`
        : pair(valueWords(was, of), valueWords(is, of));
  return html`<div>
    <dt>${name}</dt>
    <dd>
      <span>${words}</span>
      ${
        bringBack && what === 'changed'
          ? html`<button
              class="link small"
              type="button"
              aria-label=${say`Bring back ${name} of ${called}`}
              @click=${() => bringBack({ part: 'cell', sheet, row, column: column.id }, say`“${name}” of ${called}`)}
            >
              ${say`Bring back…`}
            </button>`
          : nothing
      }
    </dd>
  </div>`;
}
