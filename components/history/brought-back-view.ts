import { html, nothing, type TemplateResult } from 'lit';
import type { Raw, StoredEdit } from '../../src/book/index.js';
import type { ColumnView } from '../../src/live/columns.js';
import type { BroughtBack } from '../../src/live/doings/bring-back.js';
import { placeInWords } from '../../src/live/doings/describe-merge.js';
import type { LiveBook } from '../../src/live/live-book.js';
import { rowName } from '../../src/live/row-name.js';
import { counted, say, spoken } from '../../src/words/index.js';
import { valueWords } from './shown-difference.js';

/** Edits listed one by one; beyond them only their number is said. */
const MOST = 30;

/** What bringing something back will change, before it is done. */
export function broughtBackView(
  live: LiveBook,
  called: string,
  version: string,
  { command, counts }: BroughtBack,
): TemplateResult {
  const edits = command.do === 'take over' ? command.edits : [];
  const { rowsBack, rowsGone, cells, rest } = counts;
  const parts = [
    rowsBack > 0 ? counted(rowsBack, String(rowsBack), 'row comes back', 'rows come back') : '',
    rowsGone > 0
      ? counted(rowsGone, String(rowsGone), 'row that was added since goes', 'rows that were added since go')
      : '',
    cells > 0
      ? counted(cells, String(cells), 'entry becomes what it was', 'entries become what they were')
      : '',
    rest > 0
      ? counted(
          rest,
          String(rest),
          'other thing (a place, a title, a setting)',
          'other things (places, titles, settings)',
        )
      : '',
  ].filter((part) => part !== '');
  return html`
    <p>${say`Bring back`} <strong>${called}</strong> ${say`from “${version}”: ${parts.join('; ')}.`}</p>
    <p class="small quiet">
      ${say`Planning figures follow from what is entered. It is one step, and undo takes it back.`}
    </p>
    <div class="scroll">
      <table>
        <caption>${say`What changes`}</caption>
        <thead>
          <tr><th scope="col">${say`Where`}</th><th scope="col">${say`Is now`}</th><th scope="col">${say`Will be`}</th></tr>
        </thead>
        <tbody>
          ${edits.slice(0, MOST).map((edit) => editView(live, edit))}
        </tbody>
      </table>
    </div>
    ${edits.length > MOST ? html`<p class="small">${say`And ${edits.length - MOST} more.`}</p>` : nothing}
  `;
}

function editView(live: LiveBook, { path, to }: StoredEdit): TemplateResult {
  const [head, sheet, part, id, field, column] = path;
  const title = live.sheets().find((each) => each.id === sheet)?.title ?? sheet ?? '';
  if (head !== 'sheets') {
    const now = head === 'title' ? live.title : head === 'settings' ? live.setting(sheet!) : undefined;
    return line(placeInWords(live, path), valueWords(now), plain(to));
  }
  if (part === 'rows' && id !== undefined) {
    const there = live.rowIds(sheet!).includes(id);
    const name = there ? rowName(live, sheet!, id) : cellsOf(to, (column) => live.column(sheet!, column));
    if (field === undefined)
      return line(
        `${title}: ${name}`,
        there ? say`there` : say`not there`,
        to === undefined ? say`goes` : say`comes back`,
      );
    if (field === 'cells') {
      const view = live.column(sheet!, column!);
      const now = there ? live.typed(sheet!, id, column!) : null;
      return line(`${title}: ${name}, ${view?.title ?? column!}`, valueWords(now, view), plain(to, view));
    }
    return line(
      `${title}: ${name}`,
      '',
      field === 'order' ? say`its place as it was` : `${fieldWords(field)}: ${plain(to)}`,
    );
  }
  if (part === 'columns')
    return line(
      say`${title}: column ${live.column(sheet!, id!)?.title ?? ''}`,
      '',
      to === undefined ? say`goes` : say`as it was`,
    );
  return line(
    title,
    '',
    part === undefined
      ? to === undefined
        ? say`the sheet goes`
        : say`the sheet comes back`
      : `${spoken(part)}: ${plain(to)}`,
  );
}

/** A field of a row that stands for something of one of its cells: a note, a colour. */
function fieldWords(field: string): string {
  const [about, column] = field.split(':');
  if (about === 'note' && column !== undefined) return say`note on ${column}`;
  if (about === 'colour' && column !== undefined) return say`colour on ${column}`;
  return field.replace(':', ' on ');
}

const line = (where: string, now: string, then: string): TemplateResult =>
  html`<tr><th scope="row">${where}</th><td>${now}</td><td>${then}</td></tr>`;

const plain = (to: StoredEdit['to'], column?: ColumnView): string =>
  typeof to === 'object' && to !== null
    ? say`as it was`
    : typeof to === 'string' && to.startsWith('=')
      ? say`its formula`
      : valueWords(to ?? null, column);

/** A row that is not there, by its first entries. */
function cellsOf(to: StoredEdit['to'], columnOf: (id: string) => ColumnView | undefined): string {
  const cells =
    typeof to === 'object' && to !== null && 'cells' in to ? Object.entries(to.cells as object) : [];
  return (
    cells
      .filter(([, cell]) => typeof cell !== 'boolean')
      .slice(0, 4)
      .map(([id, cell]) => valueWords(cell as Raw, columnOf(id)))
      .join(', ') || say`a row`
  );
}
