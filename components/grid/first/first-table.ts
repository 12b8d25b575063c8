/** A column of the table whose place a grid takes, as far as its header says. */
export interface FirstColumn {
  readonly id: string;
  readonly title: string;
  /** The word for its unit; '' for none. */
  readonly unit: string;
  /** What it holds: `number`, `date`, `tick`, or nothing. */
  readonly type: string | undefined;
  readonly planning: boolean;
}

/** A table that stands in the page and whose place a grid takes: what the first grid shows is all from here. */
export interface FirstTable {
  readonly label: string;
  readonly columns: readonly FirstColumn[];
  /** Ids of its rows. */
  readonly rows: readonly string[];
  /** Text of a cell as the table shows it, its unit and range included. */
  text(row: string, column: string): string;
  /** What editing a cell begins with. */
  typed(row: string, column: string): string;
}

/** Something written into the first grid; row null: into the blank line under the others. */
export interface FirstWrite {
  readonly row: string | null;
  readonly column: string;
  readonly text: string;
}

/** Rough widths, in pixels: of a character, of what stands around a text, and the least and most of a column. */
const CHARACTER = 7.2;
const AROUND = 22;
const LEAST = 84;
const MOST = 260;
const ROWS_LOOKED_AT = 60;
/** A title may be broken once. */
const TITLE_LINES = 2;

/** How much wider columns get to fill what room there is. */
const MOST_STRETCHED = 1.4;

/** Widths of columns, in pixels, that give the texts in sight room and fill `room` where that is little more. */
export function firstWidths({ columns, rows, text }: FirstTable, room: number): ReadonlyMap<string, number> {
  const looked = rows.slice(0, ROWS_LOOKED_AT);
  const fitting = columns.map(({ id, title }) => {
    const longest = looked.reduce(
      (most, row) => Math.max(most, text(row, id).length),
      title.length / TITLE_LINES,
    );
    return Math.min(MOST, Math.max(LEAST, longest * CHARACTER + AROUND));
  });
  const sum = fitting.reduce((all, width) => all + width, 0);
  const stretched = Math.min(MOST_STRETCHED, Math.max(1, room / sum));
  return new Map(columns.map(({ id }, i) => [id, Math.floor(fitting[i]! * stretched)]));
}
