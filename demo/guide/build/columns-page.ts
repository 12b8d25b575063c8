import { originInWords } from '../../../components/working/working-view.js';
import { type ColumnDeclaration, KINDS, parseBook, SETTINGS } from '../../../src/book/index.js';
import { type LiveBook, openBook } from '../../../src/live/live-book.js';
import { shownNumber, unitWord, withShownDays } from '../../../src/live/shown.js';
import type { PlanValue, Working } from '../../../src/planning/types.js';
import bench from '../../data/tamarack-bench.json?raw';
import { contents } from './frame.js';
import { html, type Markup, table } from './markup.js';

type Kind = keyof typeof KINDS;

const parsed = parseBook(bench);
if (!parsed.ok) throw new Error('The household’s book of the demo cannot be read.');
const live: LiveBook = openBook(parsed.book);

const planned = (kind: Kind): readonly ColumnDeclaration[] =>
  KINDS[kind].columns.filter(({ role }) => role === 'planning');

/**
 * A column’s working in the demo’s household: of the first row that has a figure and steps; else of any row, so
 * that its rule is told.
 */
export function workingIn(kind: Kind, column: string): Working | undefined {
  const sheet = live.sheetOfKind(kind as never);
  if (!sheet) return undefined;
  let any: Working | undefined;
  for (const row of live.rowIds(sheet)) {
    const value = live.value(sheet, row, column);
    if (value === null && any) continue;
    const working = live.working(sheet, row, column);
    if (!working) continue;
    if (working.value !== null && working.steps.length > 0) return working;
    any ??= working;
  }
  return any;
}

/** A value of a working with its unit, as people read it. */
const shown = (value: PlanValue, unit: string): string =>
  value === null
    ? 'blank'
    : typeof value === 'number'
      ? `${shownNumber(value)} ${unitWord(unit, value)}`.trim()
      : withShownDays(value);

const unitOf = ({ unit, type }: ColumnDeclaration): string => unit ?? (type === 'number' ? '' : type);

function workedOut(kind: Kind, column: ColumnDeclaration): Markup {
  const working = workingIn(kind, column.id);
  const { title, id, help, hidden } = column;
  const unit = unitOf(column);
  return html`<article class="column">
<h4 id="${kind}-${id}">${title} <code>${id}</code>${unit && html` <span class="quiet">${unit}</span>`}${
    hidden && html` <span class="quiet">hidden at first</span>`
  }</h4>
<p>${help}</p>
${
  working &&
  html`<p><strong>How:</strong> ${working.rule}</p>
${
  working.value !== null &&
  working.steps.length > 0 &&
  html`<details><summary>In the demo’s household, for one: ${shown(working.value, working.unit)}</summary>
${
  working.inputs.length > 0 &&
  html`<ul>${working.inputs.map(
    ({ name, value, unit: of, origin, source }) =>
      html`<li>${name}: ${shown(value, of)} <span class="quiet">(${originInWords(origin, source)})</span></li>`,
  )}</ul>`
}
<ol class="steps">${working.steps.map(({ text }) => html`<li>${withShownDays(text)}</li>`)}</ol>
${
  working.cautions &&
  working.cautions.length > 0 &&
  html`<ul class="caution">${working.cautions.map((text) => html`<li>${text}</li>`)}</ul>`
}</details>`
}`
}
</article>
`;
}

function sheet(kind: Kind): Markup {
  const { title, help, columns } = KINDS[kind];
  const kept = columns.filter(({ role }) => role === 'kept');
  const figures = planned(kind);
  return html`<section aria-labelledby="${kind}">
<h2 id="${kind}">${title} <code>${kind}</code></h2>
<p>${help}</p>
${
  kept.length > 0 &&
  html`<h3>What you write</h3>
${table(
  `Columns of ${title} to write in`,
  ['Column', 'Id', 'Holds', 'Meaning'],
  kept.map((column) => [
    column.title,
    html`<code>${column.id}</code>`,
    column.unit ?? column.type,
    column.help,
  ]),
)}`
}
${figures.length > 0 && html`<h3>What is worked out</h3>${figures.map((column) => workedOut(kind, column))}`}
</section>
`;
}

export const KINDS_SHOWN = (Object.keys(KINDS) as Kind[]).filter((kind) => KINDS[kind].columns.length > 0);

export const columnsPage =
  (): Markup => html`<p>Nothing that is worked out is stored, so no edit can break it. Examples
are from the <a href="../index.html">household of the demo</a>, where choosing a figure shows its working in full, with
the cell or source of each number.</p>
${contents('Sheets', [
  ...KINDS_SHOWN.map((kind): [string, string] => [kind, KINDS[kind].title]),
  ['settings', 'Settings'],
])}
${KINDS_SHOWN.map(sheet)}
<h2 id="settings">Settings of the household</h2>
${table(
  'Settings',
  ['Setting', 'Id', 'Holds', 'Meaning'],
  SETTINGS.map(({ title, id, type, unit, options, usual, help }) => [
    title,
    html`<code>${id}</code>`,
    options ? options.join(', ') : (unit ?? type),
    `${help}${usual === undefined ? '' : ` Unless you say otherwise: ${usual}.`}`,
  ]),
)}`;
