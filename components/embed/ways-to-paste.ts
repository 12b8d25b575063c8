import { css, html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { type Embed, toPaste } from '../../src/live/embed/index.js';
import { numberFormat, say } from '../../src/words/index.js';
import { icons } from '../look/icons.js';

/** Where the script lies when the package's folder is on the site under this name, as README and guide have it. */
export const SCRIPT_AT = '/croftsheet/croftsheet-embed.js';

/** From so many bytes on, what is to be pasted is more than most editors of pages take well. */
const LONG = 100_000;

export const waysStyles = css`
  .way {
    display: grid;
    gap: 0.5rem;
    padding-block-start: 0.75rem;
    border-top: 1px solid var(--line);
  }
  .way h3,
  .way p {
    margin: 0;
  }
  .way h3 span {
    font-weight: 400;
    color: var(--quiet);
  }
  textarea {
    height: 7rem;
    font: 0.75rem/1.45 ui-monospace, monospace;
    white-space: pre;
    overflow: auto;
    resize: vertical;
  }
  textarea.short {
    height: 5.75rem;
  }
`;

export interface Ways {
  readonly scriptAt: string;
  readonly fileAt: string;
  /** The person named another address; empty for the usual one. */
  moved(which: 'script' | 'file', to: string): void;
  copy(from: HTMLTextAreaElement): void;
  save(): void;
}

/** The two ways onto a page, the better one first: all of it in the page, or a few lines and a file. */
export function waysToPaste(embed: Embed, ways: Ways): TemplateResult {
  const all = toPaste(embed.html, ways.scriptAt);
  const isLong = bytesOf(all) > LONG;
  const [file, page] = [asFile(embed, ways, isLong), inPage(all, ways, isLong)];
  return html`
    ${address(say`Where the script lies on your site`, ways.scriptAt, (to) => ways.moved('script', to))}
    ${isLong ? [file, page] : [page, file]}
    ${
      embed.html.includes(' keep-as="')
        ? html`<p class="small quiet">
            ${say`A reader’s own numbers are kept under the name in keep-as: each post needs another.`}
          </p>`
        : nothing
    }
  `;
}

function inPage(text: string, { copy }: Ways, isLong: boolean): TemplateResult {
  return html`<section class="way" aria-labelledby="in-page">
    <h3 id="in-page">${say`All of it in the page`} <span>${size(text)}</span></h3>
    <label class="field">
      ${say`To paste into your page`}
      <textarea readonly spellcheck="false" .value=${text}></textarea>
    </label>
    <p class="small quiet">
      ${isLong ? say`Long for one page: editors may refuse it.` : nothing} ${say`Without script, the plain table shows.`}
    </p>
    <div class="row">${copying(say`Copy`, !isLong, copy)}</div>
  </section>`;
}

function asFile(
  embed: Embed,
  { scriptAt, fileAt, moved, copy, save }: Ways,
  isFirst: boolean,
): TemplateResult {
  return html`<section class="way" aria-labelledby="as-file">
    <h3 id="as-file">${say`As a file, and a few lines in the page`} <span>${size(embed.json)}</span></h3>
    ${address(say`Where the file will lie on your site`, fileAt, (to) => moved('file', to))}
    <label class="field">
      ${say`Lines to paste into your page`}
      <textarea class="short" readonly spellcheck="false" .value=${toPaste(embed.htmlFor(fileAt), scriptAt)}></textarea>
    </label>
    <p class="small quiet">${say`The file must lie on the same site as the page. Without script, nothing shows.`}</p>
    <div class="row">
      <button class="button ${isFirst ? 'first' : ''}" type="button" @click=${save}>
        ${icons.save}${say`Save as a file`}
      </button>
      ${copying(say`Copy these lines`, false, copy)}
    </div>
  </section>`;
}

/** An address, followed as it is written; one that is emptied goes back to the usual one once it is left. */
function address(label: string, value: string, moved: (to: string) => void): TemplateResult {
  const written = ({ type, target }: Event): void => {
    const to = (target as HTMLInputElement).value.trim();
    if (to !== '' || type === 'change') moved(to);
  };
  return html`<label class="field">
    ${label}
    <input spellcheck="false" autocapitalize="off" .value=${live(value)} @input=${written} @change=${written} />
  </label>`;
}

function copying(label: string, isFirst: boolean, copy: Ways['copy']): TemplateResult {
  const chosen = ({ currentTarget }: Event): void => {
    const from = (currentTarget as HTMLElement).closest('section')?.querySelector('textarea');
    if (from) copy(from);
  };
  return html`<button class="button ${isFirst ? 'first' : ''}" type="button" @click=${chosen}>
    ${icons.copy}${label}
  </button>`;
}

const bytesOf = (text: string): number => new TextEncoder().encode(text).length;

/** `about 460 kB`, as files are sized: in thousands of bytes, to two digits. */
const size = (text: string): string => {
  const kilobytes = Math.max(1, Math.round(bytesOf(text) / 1000));
  return say`about ${numberFormat({ maximumSignificantDigits: 2 }).format(kilobytes)} kB`;
};
