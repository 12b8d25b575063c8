import {
  type BookState,
  type ColumnDeclaration,
  type ColumnType,
  choicesListed,
  declaredIn,
  entryTypeIn,
  type Layout,
  type Marking,
  markingsOf,
  type Summary,
  summaryOf,
  type TakenColumn,
  takenIn,
  titleOfColumn,
  toShown,
} from '../book/index.js';
import { turnedUnit } from '../units/index.js';
import { phrase, spoken } from '../words/index.js';

/** A column as it is shown: what the kind declares, with what the person changed. */
export interface ColumnView {
  readonly id: string;
  readonly title: string;
  readonly role: 'kept' | 'planning' | 'own';
  readonly type: ColumnType;
  readonly unit: string | undefined;
  readonly help: string;
  readonly hidden: boolean;
  readonly pinned: boolean;
  readonly width: number | undefined;
  readonly decimals: number | undefined;
  /** Low and high columns of a figure with a range. */
  readonly range: readonly [string, string] | undefined;
  /** Name by which formulas call the whole column. */
  readonly name: string;
  /** Of an own column: the formula that fills blank cells, as shown. */
  readonly formula: string | undefined;
  readonly declaration: ColumnDeclaration | undefined;
  /** Of an own column of numbers: id of the unit or container in which they are meant. */
  readonly measure: string | undefined;
  /** Of an own column of choices: those that the person listed. */
  readonly listed: readonly string[];
  /** The person's note on the column. */
  readonly note: string | undefined;
  /** What stands under the column. */
  readonly summary: Summary | undefined;
  /** Rules by which its cells take a colour. */
  readonly markings: readonly Marking[];
  /** The planning column of a kind that this column of an own sheet shows; it can be taken off again. */
  readonly taken: TakenColumn | undefined;
}

const decimalsOf = (said: unknown): number | undefined =>
  typeof said === 'number' && said >= 0 && said <= 6 ? Math.round(said) : undefined;

/** The unit of a column in the measures written now. */
export const unitShown = (unit: string | undefined): string | undefined =>
  unit === undefined ? undefined : (turnedUnit(unit)?.unit ?? unit);

/** The columns of a sheet in the book's order, hidden ones too. */
export function columnViews(state: BookState, layout: Layout, sheetId: string): ColumnView[] {
  const sheet = state.sheets.get(sheetId);
  if (!sheet) return [];
  return sheet.columnOrder.ids.map((id) => {
    const column = sheet.columns.get(id) ?? {};
    const taken = takenIn(sheet, id);
    const declaration = declaredIn(sheet, id);
    return {
      id,
      title: titleOfColumn(sheet, id),
      role: declaration?.role ?? 'own',
      type: entryTypeIn(sheet, id),
      unit: unitShown(declaration?.unit),
      help: spoken(declaration?.help ?? phrase('A column of your own: text, numbers, dates or formulas.')),
      hidden: column.hidden ?? declaration?.hidden ?? false,
      pinned: column.pinned ?? false,
      width: column.width ?? declaration?.width,
      decimals: declaration?.decimals ?? (declaration ? undefined : decimalsOf(column.decimals)),
      // The ends of a figure's range stand on the sheet of its kind.
      range: taken ? undefined : declaration?.range,
      name: layout.nameOf(sheetId, id) ?? id,
      formula:
        declaration || column.formula === undefined ? undefined : toShown(column.formula, sheetId, layout),
      declaration,
      measure: declaration || typeof column.measure !== 'string' ? undefined : column.measure,
      listed: declaration ? [] : choicesListed(column),
      note: typeof column.note === 'string' ? column.note : undefined,
      summary: summaryOf(column),
      markings: markingsOf(column),
      taken,
    };
  });
}
