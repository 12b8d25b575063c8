import { COLOURS, type Command, colourField, noteField, type SheetState } from '../../book/index.js';

type Ids = ReadonlyMap<string, string>;

/** Commands that give the cells of a copy the colours and notes of those copied. */
export function copiedMarks(from: SheetState, to: string, columnIds: Ids, rowIds: Ids): Command[] {
  const coloured = new Map<string, { row: string; column: string }[]>();
  const noted: Command[] = [];
  for (const [row, rowTo] of rowIds) {
    const doc = from.rows.get(row)!;
    for (const [column, columnTo] of columnIds) {
      const cell = { row: rowTo, column: columnTo };
      const colour = doc[colourField(column)];
      const note = doc[noteField(column)];
      if (typeof colour === 'string') coloured.set(colour, [...(coloured.get(colour) ?? []), cell]);
      if (typeof note === 'string' && note !== '')
        noted.push({ do: 'mark cells', sheet: to, cells: [cell], note });
    }
  }
  const colours = COLOURS.flatMap((colour): Command[] => {
    const cells = coloured.get(colour);
    return cells ? [{ do: 'mark cells', sheet: to, cells, colour }] : [];
  });
  return [...colours, ...noted];
}
