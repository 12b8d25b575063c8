import { measureSystem } from '../units/index.js';
import { phrase, spoken } from '../words/index.js';
import { columnNames, type Layout } from './formula/layout.js';
import { declarationOf, KINDS } from './kinds/index.js';
import { takenDeclaration } from './own-column.js';
import type { BookState, SheetState } from './state.js';
import type { ColumnDoc } from './types.js';

/** What a column is called now: the person's title, else the kind's; a planning column on an own sheet likewise. */
export function titleOfColumn(sheet: SheetState, columnId: string): string {
  const column: ColumnDoc | undefined = sheet.columns.get(columnId);
  const declared = sheet.kind === 'own' ? takenDeclaration(column) : declarationOf(sheet.kind, columnId);
  const title = column?.title;
  return title !== undefined && title !== declared?.title
    ? title
    : spoken(declared?.title ?? phrase('Column'));
}

/** What a sheet is called now: the person's title, or the kind's in the language spoken. */
export const titleOfSheet = ({ kind, title }: Pick<SheetState, 'kind' | 'title'>): string =>
  kind !== 'own' && title === KINDS[kind].title ? spoken(title) : title;

/** The layout of a book as it stands, with the names of columns remembered until columns change. */
export class StateLayout implements Layout {
  readonly #state: BookState;
  #names = new Map<string, { toName: Map<string, string>; toColumn: Map<string, string> }>();

  #namedIn = measureSystem();

  constructor(state: BookState) {
    this.#state = state;
  }

  /** To be called when columns or their titles have changed. */
  forgetNames(): void {
    this.#names.clear();
  }

  sheetByTitle(title: string): string | undefined {
    const wanted = title.toLowerCase();
    for (const sheet of this.#state.sheets.values())
      if (sheet.title.toLowerCase() === wanted) return sheet.id;
    // Kind titles go on working after a sheet is renamed: other people's formulas use them.
    for (const sheet of this.#state.sheets.values()) {
      if (sheet.kind === 'own') continue;
      const { title: english } = KINDS[sheet.kind];
      if (english.toLowerCase() === wanted || spoken(english).toLowerCase() === wanted) return sheet.id;
    }
    return undefined;
  }

  titleOf(sheet: string): string | undefined {
    const found = this.#state.sheets.get(sheet);
    return found && titleOfSheet(found);
  }

  rowIndex(sheet: string, row: string): number {
    return this.#state.sheets.get(sheet)?.rowOrder.indexOf(row) ?? -1;
  }

  columnIndex(sheet: string, column: string): number {
    return this.#state.sheets.get(sheet)?.columnOrder.indexOf(column) ?? -1;
  }

  rowAt(sheet: string, index: number): string | undefined {
    return this.#state.sheets.get(sheet)?.rowOrder.ids[index];
  }

  columnAt(sheet: string, index: number): string | undefined {
    return this.#state.sheets.get(sheet)?.columnOrder.ids[index];
  }

  columnByName(sheet: string, name: string): string | undefined {
    return this.#namesOf(sheet)?.toColumn.get(name.toLowerCase());
  }

  nameOf(sheet: string, column: string): string | undefined {
    return this.#namesOf(sheet)?.toName.get(column);
  }

  #namesOf(sheetId: string) {
    const sheet = this.#state.sheets.get(sheetId);
    if (!sheet) return undefined;
    // Titles name measures: feet of row are metres elsewhere.
    if (this.#namedIn !== measureSystem()) this.forgetNames();
    this.#namedIn = measureSystem();
    let names = this.#names.get(sheetId);
    if (!names) {
      const toName = columnNames(sheet.columnOrder.ids.map((id) => [id, titleOfColumn(sheet, id)] as const));
      const toColumn = new Map([...toName].map(([id, name]) => [name.toLowerCase(), id] as const));
      // Titles of the kind go on working in English, whatever language they are shown in.
      for (const id of sheet.columnOrder.ids) {
        const english = declarationOf(sheet.kind, id)?.title.toLowerCase();
        if (english === undefined) continue;
        for (const name of [english, english.replaceAll(' ', '_')])
          if (!toColumn.has(name)) toColumn.set(name, id);
      }
      names = { toName, toColumn };
      this.#names.set(sheetId, names);
    }
    return names;
  }
}
