import { tokenText } from '../look/token-text.js';

/**
 * What the look is made of is said again on `.page`: a rule of the page that reaches the element, `* { --ink: … }`
 * too, goes before the element’s own.
 */
const look = tokenText.replaceAll(':host {', ':host, .page {');

/**
 * The look of an embedded sheet. The page's rules reach the element itself, whatever its own say: so the
 * element only frames, and `.page` inside starts from the browser's own beginning. Sizes are in em of that.
 */
const rules = `
:host {
  display: flow-root !important; contain: inline-size;
  contain-intrinsic-inline-size: min(40em, 80vw); min-inline-size: 0; max-inline-size: 100%;
}
:host([hidden]) { display: none !important; }
.page { all: initial; display: block; color-scheme: inherit; color: var(--ink); background: var(--paper); border-radius: var(--radius); }
.root { font: 400 var(--croft-font-size, 0.9375em)/1.45 var(--font); --pad: 6px; --side: 10px; }
*, ::before, ::after { box-sizing: border-box; }
.frame {
  position: relative; overflow: auto; overscroll-behavior-x: contain;
  max-height: var(--croft-sheet-height, none);
  border: 1px solid var(--line); border-top: 4px solid var(--accent);
  border-radius: var(--radius); background: var(--paper);
}
table { border-collapse: separate; border-spacing: 0; width: 100%; font-size: 0.9333em; line-height: 1.4; }
caption {
  caption-side: top; text-align: start; font: 600 1.125em/1.3 var(--font-title);
  padding: 0.4em var(--side) 0.375em; color: var(--ink);
}
th, td {
  padding: var(--pad) var(--side); text-align: start; vertical-align: top; font-weight: 400;
  border-bottom: 1px solid var(--line); min-width: 4.5em; max-width: 18em; overflow-wrap: break-word;
}
thead th {
  vertical-align: bottom; font-size: 0.9286em; line-height: 1.25; font-weight: 600;
  background: var(--raised); border-bottom-color: var(--quiet); border-top: 1px solid var(--line);
}
thead small { display: block; font-size: 1em; font-weight: 400; color: var(--quiet); }
tr > :first-child {
  position: sticky; inset-inline-start: 0; z-index: 1; background: var(--paper);
  border-inline-end: 1px solid var(--line); font-weight: 600; min-width: 6em; max-width: 12em;
}
thead tr > :first-child { background: var(--raised); }
.number, .date { white-space: nowrap; font-family: var(--font-figures); font-variant-numeric: tabular-nums lining-nums; }
.number { text-align: end; }
.tick { text-align: center; }
.planning { background: var(--plan); }
thead .planning { background: var(--plan); box-shadow: inset 0 3px 0 var(--plan-line); }
td span, th[scope='row'] span { color: var(--quiet); font-size: 0.93em; }
tbody small { display: block; color: var(--quiet); font-size: 0.86em; }
tbody tr:last-child > * { border-bottom: 0; }
tfoot > tr:first-child:not(.unmoved) > *, [data-total] > * { border-top: 1px solid var(--quiet); }
tfoot > tr:last-child > * { border-bottom: 0; }
tfoot .unmoved > td { position: static; max-width: none; font-weight: 400; border-inline-end: 0; padding-block-start: 0; }
.unmoved small { position: sticky; inset-inline-start: var(--side); display: inline-block; max-width: min(28em, 80vw); color: var(--quiet); }
a { color: var(--accent); }
td.open, th.open {
  padding: 0; background: color-mix(in srgb, var(--accent) 7%, var(--paper));
  box-shadow: inset 0 -1px 0 color-mix(in srgb, var(--accent) 55%, transparent);
}
td.ahead, th.ahead { padding: var(--pad) var(--side); white-space: nowrap; }
.open:hover { background: color-mix(in srgb, var(--accent) 13%, var(--paper)); }
.open:focus-within { background: var(--raised); }
input {
  all: initial; color-scheme: inherit; box-sizing: border-box; display: block; width: 100%; min-width: 3em; field-sizing: content;
  font: inherit; font-variant-numeric: inherit; line-height: inherit; color: var(--ink); text-align: inherit;
  padding: var(--pad) var(--side); height: calc(1.4em + 2 * var(--pad)); cursor: text;
}
label { display: flex; justify-content: center; padding: var(--pad) var(--side); cursor: pointer; }
input[type='checkbox'] {
  appearance: auto; width: 1.2em; min-width: 0; height: 1.2em; margin: 0.1em 0; padding: 0; accent-color: var(--accent); cursor: pointer;
}
input[aria-invalid='true'] { color: var(--problem); background: var(--problem-paper); }
:focus-visible { outline: 2px solid var(--focus); outline-offset: -2px; }
.changed { animation: follow 1.2s ease-out; }
@keyframes follow { from { box-shadow: inset 0 0 0 99px color-mix(in srgb, var(--accent) 22%, transparent); } }
.bar {
  display: flex; flex-wrap: wrap; align-items: center; gap: 0.25em 0.75em;
  min-height: 2.25em; padding: 0.375em var(--side); font-size: 0.8667em; line-height: 1.4; color: var(--quiet);
}
.bar p { margin: 0; }
.bar p:empty { display: none; }
.bar .paper { display: none; color: var(--ink); }
.bar .words { flex: 1 1 13em; color: var(--ink); }
.bar .words.problem { color: var(--problem); }
.tools { display: flex; flex-wrap: wrap; gap: 0.375em; }
.tools:empty { display: none; }
button {
  all: initial; color-scheme: inherit; box-sizing: border-box; font: inherit; color: var(--ink); cursor: pointer; white-space: nowrap;
  min-height: 2em; padding: 0.2em 0.7em; border: 1px solid var(--line); border-radius: var(--radius);
  background: var(--raised);
}
button:hover { border-color: var(--accent); color: var(--accent); }
button:focus-visible { outline: 2px solid var(--focus); outline-offset: 2px; }
button[aria-busy='true'] { color: var(--quiet); cursor: progress; }
.problem { overflow-wrap: anywhere; }
.opening, .empty { margin: 0; padding: 0.75em var(--side); color: var(--quiet); }
.empty { border: 1px solid var(--line); border-top: 4px solid var(--accent); border-radius: var(--radius); color: var(--ink); }
.empty a { font-weight: 600; }
[data-cautions] {
  padding: 0.5em 0.75em; font-size: 0.8667em; border-inline-start: 3px solid var(--plan-line);
  background: var(--raised); color: var(--ink);
}
ul { margin: 0; padding-block: 0; padding-inline: 1.1em 0; list-style: disc; }
li { display: list-item; margin: 0.125em 0; }
summary { cursor: pointer; width: fit-content; margin-block-start: 0.25em; text-decoration: underline; text-underline-offset: 2px; }
.grid { position: relative; }
.grid.waiting { position: absolute; inset: 0; visibility: hidden; overflow: hidden; }
.unseen { position: absolute; width: 1px; height: 1px; margin: -1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
@media (max-width: 40em) {
  .root { --side: 8px; }
  tr > :first-child { max-width: 8.5em; min-width: 5.5em; }
}
@media (prefers-reduced-motion: reduce) { .changed { animation: none; } }
@media (pointer: coarse) {
  .root { --pad: 11px; }
  button { min-height: 2.75rem; }
  input[type='checkbox'] { width: 1.6em; height: 1.6em; }
}
@media (forced-colors: active) {
  td.open, th.open { outline: 1px dashed CanvasText; outline-offset: -1px; }
  thead .planning { border-top: 4px double CanvasText; }
}
@media print {
  .page { color-scheme: light; }
  .frame { overflow: visible; max-height: none; border: 0; border-top: 2pt solid #000; }
  table { font-size: 8.5pt; }
  .planning { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  td, th { min-width: 0; }
  tr > :first-child { position: static; }
  thead { display: table-header-group; }
  tr { break-inside: avoid; }
  td.open, th.open { background: none; box-shadow: none; }
  .tools, .bar .words { display: none; }
  .bar .paper:not(:empty) { display: block; }
}
`;

const sheets = new WeakMap<Document, CSSStyleSheet>();

/** One constructed sheet for all elements of a document: no security policy of the page stands in its way. */
export function embedStyles(of: Document): CSSStyleSheet {
  let made = sheets.get(of);
  if (!made) {
    made = new (of.defaultView ?? window).CSSStyleSheet();
    made.replaceSync(look + rules);
    sheets.set(of, made);
  }
  return made;
}
