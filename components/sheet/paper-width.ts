/** A wide table on paper: as small as the paper is narrow. */
import type { CSSResult, ReactiveController, ReactiveControllerHost } from 'lit';
import { measureInFrame } from '../look/print-frame.js';

/** What one can count on of a page, A4 or Letter, held upright or sideways: CSS pixels, of which 96 are an inch. */
const UPRIGHT = 690;
const SIDEWAYS = 950;

interface Host extends ReactiveControllerHost, HTMLElement {
  /** Whether it is drawn as it goes onto paper. */
  readonly paper: boolean;
}

/** Makes the table of an element with these styles no wider than paper, for as long as it is drawn for paper. */
export class FitsPaper implements ReactiveController {
  readonly #host: Host;
  readonly #styles: string;
  #sheet: CSSStyleSheet | null = null;

  constructor(host: Host, styles: readonly (CSSResult | readonly CSSResult[])[]) {
    this.#host = host;
    this.#styles = styles
      .flat()
      .map(({ cssText }) => cssText)
      .join('\n');
    host.addController(this);
  }

  hostUpdated(): void {
    const { paper, shadowRoot: root } = this.#host;
    if (!root || paper === (this.#sheet !== null)) return;
    const others = root.adoptedStyleSheets.filter((each) => each !== this.#sheet);
    const table = paper ? root.querySelector('table') : null;
    this.#sheet = table && new CSSStyleSheet();
    if (table) this.#sheet?.replaceSync(narrowerOnPaper(table, this.#styles));
    root.adoptedStyleSheets = this.#sheet ? [...others, this.#sheet] : others;
  }
}

/**
 * Rules by which a table is no wider than paper. Browsers shrink a page for what goes beyond its right edge, but cut
 * off what goes beyond the left one where the page is read from right to left. `styles` are those of the table.
 */
function narrowerOnPaper(table: HTMLTableElement, styles: string): string {
  const onPaper = styles.replaceAll('@media print', '@media all');
  const font = getComputedStyle(table).fontFamily;
  const width = measureInFrame(`body { margin: 0; font-family: ${font}; } ${onPaper}`, (body) => {
    const copy = body.ownerDocument.importNode(widestOf(table), true);
    body.append(copy);
    return copy.offsetWidth;
  });
  if (!width) return '';
  const rule = (orientation: string, room: number): string =>
    width <= room
      ? ''
      : `@media print and (orientation: ${orientation}) { table { zoom: ${(room / width).toFixed(3)}; } }`;
  return `${rule('portrait', UPRIGHT)} ${rule('landscape', SIDEWAYS)}`;
}

/** A copy with its head, and of its rows those that have the longest text or word of a column. */
function widestOf(table: HTMLTableElement): HTMLTableElement {
  const longest = new Map<string, readonly [length: number, row: HTMLTableRowElement]>();
  const heed = (key: string, length: number, row: HTMLTableRowElement): void => {
    if (length > (longest.get(key)?.[0] ?? -1)) longest.set(key, [length, row]);
  };
  for (const body of table.tBodies) {
    for (const row of body.rows) {
      for (const [i, cell] of [...row.cells].entries()) {
        const text = cell.textContent.trim();
        heed(`${row.className} ${i} text`, text.length, row);
        heed(`${row.className} ${i} word`, Math.max(...text.split(/\s+/).map(({ length }) => length)), row);
      }
    }
  }
  const copy = table.cloneNode() as HTMLTableElement;
  const rows = document.createElement('tbody');
  for (const row of new Set([...longest.values()].map(([, each]) => each))) rows.append(row.cloneNode(true));
  copy.append(...[table.tHead, table.tFoot].flatMap((part) => part?.cloneNode(true) ?? []), rows);
  return copy;
}
