export { asItStands } from './as-it-stands.js';
export { inverse } from './bench.js';
export { blankBook } from './blank.js';
export { declaredIn, entryTypeIn, takenIn } from './column-in.js';
export { MAX_CHOICES, MAX_MARKINGS } from './column-look.js';
export type { ColumnLook, Command, NewColumn, NewRow, Typed, TypedCell } from './commands.js';
export { describe } from './commands.js';
export { differences } from './differences.js';
export { isCode, losesDigits, readEntry, readNumber, readTypedNumber } from './entry.js';
export { fixedChoices } from './fixed-choices.js';
export { explained } from './formula/explain.js';
export { columnLetters, type Layout } from './formula/layout.js';
export { standardOneValue, type TakesOneValue } from './formula/one-value.js';
export {
  isFormula,
  referencesOf,
  sheetInEngine,
  shifted,
  toEngine,
  toShown,
  toStored,
} from './formula/references.js';
export { type Use, usesOf } from './formula/stored.js';
export { History } from './history.js';
export { isUsableId, newId } from './ids.js';
export {
  type ChoiceSource,
  type ColumnDeclaration,
  type ColumnType,
  declarationOf,
  KINDS,
  type KindDeclaration,
} from './kinds/index.js';
export { type FormulaTurning, formulaTurnings, isUnturned } from './measured-formulas.js';
export { keptUnit, measuresOf } from './measures.js';
export * from './own-column.js';
export { type Parsed, parseBook } from './parse.js';
export { perform, put } from './perform.js';
export { computed } from './perform-cells.js';
export { sameJson } from './plain-json.js';
export { SETTINGS, type SettingDeclaration, settingOf } from './settings.js';
export { BookState, type SheetState } from './state.js';
export { StateLayout, titleOfColumn, titleOfSheet } from './state-layout.js';
export type { StoredEdit } from './stored-edit.js';
export { isNamedKind, NAMED_KINDS, type NamedKind, takeableColumns } from './takeable.js';
export * from './types.js';
