import Handsontable from 'handsontable/base';
import { registerCellType, TextCellType } from 'handsontable/cellTypes';
import 'handsontable/styles/handsontable.min.css';
import 'handsontable/styles/ht-theme-main.min.css';
import demo from '../../../demo/data/tamarack-bench.json';

registerCellType(TextCellType);
const COLUMNS = ['food', 'way', 'container', 'count', 'put_up_on', 'place', 'note', 'still_counting'];

export function mountBare(into: HTMLElement): void {
  const lots = Object.values(demo.sheets.shelf.rows) as { cells: Record<string, unknown> }[];
  const data = Array.from({ length: 200 }, (_, i) =>
    COLUMNS.map((column) => lots[i % lots.length]!.cells[column] ?? null),
  );
  new Handsontable(into, {
    data,
    licenseKey: 'non-commercial-and-evaluation',
    colHeaders: COLUMNS,
    rowHeaders: true,
    width: '100%',
    height: '100%',
    themeName: 'ht-theme-main',
    colWidths: 110,
  } as Handsontable.GridSettings);
}
