import { css, html, nothing, type TemplateResult } from 'lit';
import type { VersionEntry } from '../../src/storage/index.js';
import { HERE } from '../../src/words/here.js';
import { dayOfMoment, say, spoken, timeOfMoment } from '../../src/words/index.js';
import { BEFORE_MERGING } from '../book/book-past.js';
import { icons } from '../look/icons.js';

export const versionsListStyles = css`
  .versions {
    display: grid;
    gap: 0.375rem;
  }
  .versions > li {
    display: grid;
    grid-template-columns: 1fr auto;
    gap: 0.25rem 0.75rem;
    align-items: center;
    padding: 0.5rem 0.625rem;
    border: 1px solid var(--line);
    border-radius: var(--radius);
    background: var(--raised);
  }
  .versions .named {
    border-inline-start: 4px solid var(--accent);
  }
  .versions .row {
    justify-content: flex-end;
  }
  .versions strong {
    overflow-wrap: anywhere;
  }
  .naming {
    grid-column: 1 / -1;
    display: flex;
    gap: 0.5rem;
    flex-wrap: wrap;
  }
  .naming input {
    flex: 1 1 12rem;
    width: auto;
  }
  @media (max-width: 34rem) {
    .versions > li {
      grid-template-columns: 1fr;
    }
    .versions .row {
      justify-content: flex-start;
    }
    /* Beside what it removes: after two buttons it would stand on a line of its own. */
    .versions > li {
      position: relative;
    }
    .versions > li > :first-child {
      padding-inline-end: 2.5rem;
    }
    .versions .remove {
      position: absolute;
      inset-block-start: 0.25rem;
      inset-inline-end: 0.25rem;
    }
  }
  @media print {
    .versions {
      display: block;
    }
    .versions > li {
      break-inside: avoid;
      margin-block-end: 4pt;
    }
    .naming {
      display: none;
    }
  }
`;

/** When a version was kept, on this device's clock. */
export const versionDay = (at: number): string => `${dayOfMoment(at)}, ${timeOfMoment(at)}`;

/** A version in words, for headings and 'Undo …'. */
export const versionCalled = ({ name, at }: Pick<VersionEntry, 'name' | 'at'>): string =>
  name === BEFORE_MERGING ? spoken(name) : (name ?? versionDay(at));

export interface VersionsListHost {
  /** The version that is being given a name; null while none is. */
  readonly naming: number | null;
  readonly title: string;
  compare(entry: VersionEntry): void;
  startNaming(entry: VersionEntry): void;
  rename(entry: VersionEntry, event: SubmitEvent): void;
  remove(entry: VersionEntry): void;
}

export const versionsList = (entries: readonly VersionEntry[], host: VersionsListHost): TemplateResult =>
  html`<ul class="versions" aria-label=${say`Versions, newest first`}>
    ${entries.map((entry) => versionView(entry, host))}
  </ul>`;

function versionView(entry: VersionEntry, host: VersionsListHost): TemplateResult {
  const { id, name, at, title } = entry;
  const called = versionCalled(entry);
  return html`<li class=${name === undefined ? '' : 'named'}>
    <div>
      <strong>${called}</strong>
      <div class="quiet small">
        ${name === undefined ? say`kept by itself` : html`<time datetime=${new Date(at).toISOString()}>${versionDay(at)}</time>`}
        ${title === host.title ? nothing : html`${say`· the book was called “${title}”`}`}
      </div>
    </div>
    <div class="row">
      <button class="button" type="button" aria-label=${say`Compare ${called}`} @click=${() => host.compare(entry)}>
        ${say`Compare…`}
      </button>
      <button
        class="button plain"
        type="button"
        aria-label=${name === undefined ? say`Name ${called}` : say`Rename ${called}`}
        aria-expanded=${host.naming === id}
        @click=${() => host.startNaming(entry)}
      >
        ${name === undefined ? say`Name${HERE}` : say`Rename`}
      </button>
      <button class="button plain remove" type="button" aria-label=${say`Remove ${called}`} @click=${() => host.remove(entry)}>
        ${icons.close}
      </button>
    </div>
    ${
      host.naming === id
        ? html`<form class="naming" @submit=${(event: SubmitEvent) => host.rename(entry, event)}>
            <input name="name" aria-label=${say`Name of ${called}`} maxlength="80" autocomplete="off" .value=${name ?? ''} />
            <button class="button first">${say`Keep this name`}</button>
          </form>`
        : nothing
    }
  </li>`;
}
