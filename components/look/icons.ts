import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit';

/** Our own drawings, on a square of 20. Each stands beside words, so none is read out. */
const icon = (paths: SVGTemplateResult): TemplateResult =>
  html`<svg class="icon" viewBox="0 0 20 20" aria-hidden="true" focusable="false">${paths}</svg>`;

export const icons = {
  undo: icon(svg`<path d="M7.5 4 4 7.5 7.5 11"/><path d="M4.5 7.5h6.75a4.25 4.25 0 0 1 0 8.5H8"/>`),
  redo: icon(svg`<path d="M12.5 4 16 7.5 12.5 11"/><path d="M15.5 7.500H8.750a4.25 4.25 0 0 0 0 8.500H12"/>`),
  addRow: icon(svg`<path d="M3.5 4.500h13M3.5 9h13"/><path d="M10 12.500v5M7.5 15h5"/>`),
  addColumn: icon(svg`<path d="M4.5 3.500v13M9 3.500v13"/><path d="M12.5 10h5M15 7.500v5"/>`),
  columns: icon(svg`<rect x="3.5" y="4" width="13" height="12" rx="1.5"/><path d="M8 4v12M12.25 4v12"/>`),
  grid: icon(
    svg`<rect x="3.5" y="4" width="13" height="12" rx="1.5"/><path d="M3.5 8.250h13M3.5 12.250h13M9 8.250V16"/>`,
  ),
  web: icon(
    svg`<rect x="3" y="4" width="14" height="12" rx="1.5"/><path d="M3 7.5h14M8 10l-2 1.75L8 13.5M12 10l2 1.75-2 1.75"/>`,
  ),
  page: icon(svg`<path d="M5 3.500h7l3.5 3.500v9.500H5z"/><path d="M7.5 9.500h5M7.5 12.500h5"/>`),
  lesson: icon(
    svg`<path d="M4 4.500h12v11H4z"/><path d="M7 8h2.500M8.250 6.750v2.500M11.500 8H14M7 12h2.500M11.500 11.250H14M11.500 13H14"/>`,
  ),
  jar: icon(
    svg`<path d="M6.5 3.500h7v2.500h-7z"/><path d="M7 6c-1.5 1-2 2-2 3.500v5A2 2 0 0 0 7 16.500h6a2 2 0 0 0 2-2v-5C15 8 14.5 7 13 6"/><path d="M5 11h10"/>`,
  ),
  working: icon(svg`<path d="M4 5.500h12M4 10h7M4 14.500h9"/><circle cx="15" cy="11" r="1.7"/>`),
  close: icon(svg`<path d="m5.5 5.5 9 9M14.5 5.500l-9 9"/>`),
  care: icon(svg`<path d="M10 3.25 17.25 16H2.750z"/><path d="M10 8.250v3.500M10 13.900v.05"/>`),
  check: icon(svg`<path d="m4.5 10.5 3.75 3.750L15.5 6.5"/>`),
  copy: icon(svg`<rect x="7" y="7" width="9" height="9.5" rx="1.2"/><path d="M13 7V3.500H4.500V13H7"/>`),
  save: icon(svg`<path d="M10 3.500v9M6.5 9.25 10 12.750l3.5-3.5"/><path d="M4 13.500v3h12v-3"/>`),
  open: icon(svg`<path d="M3.5 16V5h4.500l1.5 2h7v2"/><path d="M3.5 16 6 9.500h11.500L15.5 16z"/>`),
  home: icon(
    svg`<path d="m3.5 9.5 6.5-6 6.5 6"/><path d="M5.25 8.500V16.500h9.500V8.5"/><path d="M8.5 16.500v-4.500h3v4.5"/>`,
  ),
  ground: icon(
    svg`<path d="M3.5 15.500h13M3.5 12.500h13"/><path d="M10 12V7M10 8.500C10 6 8 4.500 5.500 4.500 5.500 7 7.500 8.500 10 8.500zM10 7.500c0-2 1.750-3.250 4-3.250 0 2-1.750 3.250-4 3.250z"/>`,
  ),
  calendar: icon(
    svg`<rect x="3.5" y="4.5" width="13" height="12" rx="1.5"/><path d="M3.5 8.500h13M7 3v3M13 3v3"/><path d="M7 11.500h2M7 14h2M11.500 11.500h2"/>`,
  ),
  year: icon(
    svg`<path d="M16 10a6 6 0 1 1-2-4.500"/><path d="M14.500 2.750v3h-3"/><path d="M10 7v3.250L12 12"/>`,
  ),
  print: icon(
    svg`<path d="M6 7.500v-4h8v4"/><rect x="3.500" y="7.500" width="13" height="6" rx="1"/><path d="M6 11.500h8v5H6z"/>`,
  ),
  usedUp: icon(
    svg`<path d="M6.500 4h7M7 4v2.500L6 8.500V16h8V8.500l-1-2V4"/><path d="m3.500 16.500 13-13"/>`,
  ),
  formulas: icon(
    svg`<path d="M4 6.500h6M4 10h6"/><path d="m12.5 4 4 8M16.500 4l-4 8"/><path d="M4 15.500h12.500"/>`,
  ),
  functions: icon(
    svg`<path d="M11.500 4.500c-2.250-1-3.250.25-3.500 2.500L7 13.500c-.25 2-1.250 3-3 2.250"/><path d="M5.500 9h5.250"/><path d="m12 9.500 4.500 5.500M16.500 9.500 12 15"/>`,
  ),
  colour: icon(
    svg`<path d="M10 3.250c2.500 3 4.500 5.250 4.500 8a4.500 4.500 0 0 1-9 0c0-2.750 2-5 4.500-8z"/><path d="M10 13.500a2.250 2.250 0 0 0 2.250-2.250"/>`,
  ),
  note: icon(
    svg`<path d="M4 4h12v8.500L12.500 16H4z"/><path d="M16 12.500h-3.500V16"/><path d="M6.750 7.500h6.500M6.750 10h4"/>`,
  ),
  bringIn: icon(
    svg`<path d="M10 3v8M6.75 8 10 11.250 13.250 8"/><path d="M3.500 10v6.500h13V10"/><path d="M6.500 14h7"/>`,
  ),
  takeOut: icon(
    svg`<path d="M10 11.500v-8M6.750 6.750 10 3.500l3.250 3.250"/><path d="M3.500 10v6.500h13V10"/><path d="M6.500 14h7"/>`,
  ),
  versions: icon(
    svg`<path d="M4 10a6 6 0 1 0 2-4.500"/><path d="M5.5 2.750v3h3"/><path d="M10 6.750V10l2.250 1.750"/>`,
  ),
  merge: icon(
    svg`<path d="M5 3.500v3c0 3 5 3.500 5 7v3M15 3.500v3c0 3-5 3.500-5 7"/><path d="m7.750 14.250 2.250 2.250 2.250-2.250"/>`,
  ),
  takeColumn: icon(
    svg`<rect x="3.5" y="3.5" width="5" height="13" rx="1"/><path d="M5 7h2M5 10h2M5 13h2"/><path d="M11 10h6M14.250 7.250 17 10l-2.750 2.750"/>`,
  ),
  newSheet: icon(
    svg`<path d="M16 10V4H4v12h6"/><path d="M4 8h12M8.5 4v12"/><path d="M14.500 12.500v5M12 15h5"/>`,
  ),
  whatIf: icon(
    svg`<path d="M4 6.500h7.500M15 6.500h1M4 13.500h1M8.500 13.500h7.5"/><circle cx="13.25" cy="6.5" r="1.75"/><circle cx="6.75" cy="13.5" r="1.75"/>`,
  ),
  search: icon(svg`<circle cx="9" cy="9" r="4.75"/><path d="m12.5 12.5 4 4"/>`),
} as const;
