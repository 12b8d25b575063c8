import { type Command, declaredIn, isFormula } from '../../src/book/index.js';
import type { BookState } from '../../src/book/state.js';
import type { Difference } from './flat.js';

/** Whether a command may change what stands at a path. Whatever it changes elsewhere is somebody's lost entry. */
export type MayTouch = (difference: Difference) => boolean;

const MENDED = /^sheets\/[^/]+\/(rows\/[^/]+\/cells\/[^/]+|columns\/[^/]+\/formula)$/;

/** A formula whose range ended at what was removed is written anew; nothing but a formula is. */
const mended: MayTouch = ({ path, was, to }) =>
  MENDED.test(path) && isFormula(was as never) && isFormula(to as never);

/** What a sheet remembers of columns, rows and sheets that its formulas refer to and that are gone. */
const remembered: MayTouch = ({ path }) => /^sheets\/[^/]+\/gone$/.test(path);

const anyOf =
  (...all: readonly MayTouch[]): MayTouch =>
  (difference) =>
    all.some((may) => may(difference));

const under = (...starts: readonly string[]): MayTouch => {
  const folders = starts.map((start) => `${start}/`);
  return ({ path }) => starts.includes(path) || folders.some((folder) => path.startsWith(folder));
};

const exactly = (paths: Iterable<string>): MayTouch => {
  const set = new Set(paths);
  return ({ path }) => set.has(path);
};

/** Order keys of a list: others of it may be given new ones to make room. */
const orders = (list: string): MayTouch => {
  const pattern = new RegExp(`^${list}/[^/]+/order$`);
  return ({ path, was, to }) => pattern.test(path) && to !== undefined && was !== undefined;
};

/** A column of the kind has an entry only as long as something is said about it. */
const columnOrders = (sheet: string): MayTouch => {
  const pattern = new RegExp(`^sheets/${sheet}/columns/[^/]+(/order)?$`);
  return ({ path, was }) => pattern.test(path) && (path.endsWith('/order') || was === undefined);
};

/** What was said of a column that nothing is said of any more, and the other way round: its entry comes or goes. */
const reopened = (edits: readonly { readonly path: readonly string[] }[]): MayTouch =>
  exactly(edits.filter(({ path }) => path[2] === 'columns').map(({ path }) => path.slice(0, 4).join('/')));

/** What a command may touch in the book as it stood before. `state` is looked at only for planning columns. */
export function footprint(command: Command, state: BookState): MayTouch {
  const at = 'sheet' in command ? `sheets/${command.sheet}` : '';
  switch (command.do) {
    case 'set cells': {
      const sheet = state.sheets.get(command.sheet);
      const written = command.cells.filter(
        ({ column }) => !sheet || declaredIn(sheet, column)?.role !== 'planning',
      );
      return exactly(
        written.flatMap(({ row, column }) => [
          `${at}/rows/${row}/cells/${column}`,
          ...(sheet?.kind === 'draws' ? [`${at}/rows/${row}/allotted`] : []),
        ]),
      );
    }
    case 'insert rows':
      return anyOf(under(...command.rows.map(({ id }) => `${at}/rows/${id}`)), orders(`${at}/rows`));
    case 'remove rows':
      return anyOf(under(...command.rows.map((row) => `${at}/rows/${row}`)), mended, remembered);
    case 'move rows':
      return orders(`${at}/rows`);
    case 'add column':
      return anyOf(under(`${at}/columns/${command.column}`), columnOrders(command.sheet));
    case 'move columns':
      return columnOrders(command.sheet);
    case 'remove columns': {
      const gone = new Set(command.columns);
      return anyOf(
        under(...command.columns.map((column) => `${at}/columns/${column}`)),
        ({ path }) => {
          const [, sheet, part, , field, column] = path.split('/');
          if (sheet !== command.sheet || part !== 'rows' || field === undefined) return false;
          return gone.has(field === 'cells' ? column! : field.replace(/^(note|colour):/, ''));
        },
        mended,
        remembered,
      );
    }
    case 'describe column': {
      const said = exactly([
        `${at}/columns/${command.column}`,
        ...Object.keys(command.as).map((field) => `${at}/columns/${command.column}/${field}`),
      ]);
      // With another type, entries are read anew; none may go.
      const readAnew: MayTouch = ({ path, was, to }) =>
        path.startsWith(`${at}/rows/`) &&
        path.endsWith(`/cells/${command.column}`) &&
        was !== undefined &&
        to !== undefined &&
        to !== '';
      return command.as.type ? anyOf(said, readAnew) : said;
    }
    case 'mark cells':
      return exactly(
        command.cells.flatMap(({ row, column }) => [
          ...(command.note === undefined ? [] : [`${at}/rows/${row}/note:${column}`]),
          ...(command.colour === undefined ? [] : [`${at}/rows/${row}/colour:${column}`]),
        ]),
      );
    case 'group rows':
      return exactly([`${at}/group`]);
    case 'move sheet':
      return orders('sheets');
    case 'set setting':
      return exactly([`settings/${command.setting}`]);
    case 'add sheet':
      return under(at);
    case 'remove sheet':
      return anyOf(under(at), mended, remembered);
    case 'rename sheet':
      return exactly([`${at}/title`]);
    case 'rename book':
      return exactly(['title']);
    case 'take over':
      return anyOf(
        under(...command.edits.map(({ path }) => path.join('/'))),
        mended,
        remembered,
        reopened(command.edits),
      );
    case 'all':
      return anyOf(...command.of.map((part) => footprint(part, state)));
    default:
      return () => false;
  }
}
