import { TextEditor } from 'handsontable/editors/textEditor';
import type { ColumnView } from '../../../src/live/columns.js';
import { todayHere } from '../../../src/live/household.js';
import { withShownDays } from '../../../src/live/shown.js';
import { say } from '../../../src/words/index.js';
import { typedText } from '../../look/typed-text.js';
import { atCaret, closed } from './caret.js';
import { contextOf, type GridContext } from './context.js';
import { DateButton } from './date-button.js';
import { BAND } from './groups.js';
import type { Line } from './line.js';
import { namedDay } from './named-day.js';
import { bookRow } from './places.js';
import { fitting, hintFor, literalsFor, namesFor, type Suggestion } from './suggestions.js';

/** The cell being edited, by ids: rows may come and go meanwhile. */
interface Editing {
  readonly context: GridContext;
  readonly line: Line;
  readonly column: ColumnView;
  /** What the field held at first when it began with what was entered before; null when typing replaces it. */
  readonly before: string | null;
}

/**
 * The editor of every cell: text, with known values or function names to choose from under it, and a date
 * picker beside it where the column holds dates. What is typed goes to the book as it stands.
 */
export class CellEditor extends TextEditor {
  static override get EDITOR_TYPE(): string {
    return 'croft';
  }

  #editing: Editing | null = null;
  #dates: DateButton | null = null;
  /** Closed by Escape: stays so until something is typed. */
  #dismissed = false;
  /** True until something is typed: the whole list is offered then, not what fits the old value. */
  #untouched = true;

  get #field(): HTMLTextAreaElement {
    return this.TEXTAREA as HTMLTextAreaElement;
  }

  override createElements(): void {
    super.createElements('textarea');
    // Called by the library's constructor, before this class's own fields are there.
    const field = this.TEXTAREA as HTMLTextAreaElement;
    for (const [name, value] of Object.entries({
      autocomplete: 'off',
      autocapitalize: 'off',
      spellcheck: 'false',
    }))
      field.setAttribute(name, value);
    field.addEventListener('keydown', (event) => this.#onKey(event));
    field.addEventListener('input', () => {
      this.#dismissed = false;
      this.#untouched = false;
      this.#suggest();
    });
    for (const type of ['keyup', 'click'])
      field.addEventListener(type, (event) => {
        const moved = !(event instanceof KeyboardEvent) || /^(Arrow(Left|Right)|Home|End)$/.test(event.key);
        if (moved && this.#isFormula) this.#suggest();
      });
  }

  override beginEditing(initial?: unknown, event?: Event): void {
    const context = contextOf(this.hot);
    const line = context?.binding.lines[bookRow(context.hot, this.row ?? 0)];
    const column = context?.binding.columns[this.col ?? -1];
    if (!context || !line || !column) return;
    const before = context.binding.typed(line, column.id);
    const text = this.#labelOf(context, line, column, typedText(before));
    this.#editing = { context, line, column, before: this.isInFullEditMode() ? text : null };
    this.#dismissed = false;
    this.#untouched = true;
    this.originalValue = text;
    const place = line.id === null ? say`new row` : say`row ${bookRow(context.hot, this.row ?? 0) + 1}`;
    this.#field.setAttribute('aria-label', `${column.title}, ${place}`);
    // A phone's number pad where numbers are kept; own columns may want a formula, which it cannot write.
    const pad = column.role === 'kept' && column.type === 'number' && !text.startsWith('=');
    this.#field.inputMode = pad ? 'decimal' : 'text';
    super.beginEditing(initial, event);
    // Below the bands of groups, where the cell's own text stands.
    const bands = context.groups.above(this.row ?? 0).length;
    if (bands > 0) this.#field.style.setProperty('padding-block-start', `${bands * BAND + 6}px`);
    else this.#field.style.removeProperty('padding-block-start');
    if (column.type === 'date')
      this.#dates = DateButton.beside(this.#field, this.TEXTAREA_PARENT, (iso) => this.#take(iso));
    if (this.isInFullEditMode() || typeof initial === 'string') this.#suggest();
  }

  override finishEditing(restore?: boolean, ctrlDown?: boolean, callback?: (result: boolean) => void): void {
    const editing = this.#editing;
    if (this.state !== 'STATE_EDITING' || !editing) {
      super.finishEditing(restore, ctrlDown, callback);
      return;
    }
    const text = String(this.getValue());
    const places = ctrlDown ? this.hot.getSelectedRangeActive() : undefined;
    // Closed first, without the library saving anything: writing may add rows, which moves cells about.
    super.finishEditing(true, false, callback);
    if (restore || (text === editing.before && !ctrlDown)) return;
    const refused = this.#save(editing, text, places ?? null);
    if (refused) this.#reopen(editing, text);
  }

  override close(): void {
    this.#editing?.context.popup.hide();
    this.#dates?.remove();
    this.#dates = null;
    super.close();
    const { context } = this.#editing ?? {};
    this.#editing = null;
    context?.editorClosed();
  }

  override refreshDimensions(force?: boolean): void {
    super.refreshDimensions(force);
    this.#editing?.context.popup.place();
  }

  get #isFormula(): boolean {
    return this.#field.value.startsWith('=');
  }

  #save(
    { context, line, column }: Editing,
    text: string,
    range: { forAll(each: (row: number, column: number) => void): void } | null,
  ): boolean {
    const { edits, binding, hot } = context;
    const typed = text.startsWith('=')
      ? closed(text)
      : column.type === 'date'
        ? namedDay(text, todayHere())
        : this.#valueOf(context, line, column, text);
    if (range) {
      const writes: { at: number; column: string; typed: string }[] = [];
      range.forAll((row, at) => {
        const id = binding.columns[at]?.id;
        if (row >= 0 && id !== undefined) writes.push({ at: bookRow(hot, row), column: id, typed });
      });
      return edits.write(writes) !== null;
    }
    const at = line.id === null ? binding.rowCount : binding.indexOfRow(line.id);
    if (at < 0) return false;
    return edits.write([{ at, column: column.id, typed }]) !== null;
  }

  /** Back into the cell with the text that was refused, so that it can be mended. */
  #reopen({ context, line, column }: Editing, text: string): void {
    const { hot, binding } = context;
    const at = line.id === null ? binding.rowCount : binding.indexOfRow(line.id);
    const row = hot.toVisualRow(at);
    const col = binding.indexOfColumn(column.id);
    if (row === null || col < 0) return;
    // After the key or press that ended the editing has moved the selection.
    setTimeout(() => {
      if (hot.isDestroyed) return;
      hot.selectCell(row, col);
      this.enableFullEditMode();
      this.beginEditing(text);
    });
  }

  #onKey(event: KeyboardEvent): void {
    const editing = this.#editing;
    if (!editing || this.state !== 'STATE_EDITING' || event.isComposing) return;
    const { popup } = editing.context;
    const handled = (): void => {
      event.preventDefault();
      event.stopPropagation();
    };
    if (event.key === 'ArrowDown' && event.altKey) {
      handled();
      if (this.#dates) this.#dates.open();
      else {
        this.#dismissed = false;
        this.#suggest(true);
      }
      return;
    }
    if (popup.isListOpen) {
      if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
        handled();
        popup.move(event.key === 'ArrowDown' ? 1 : -1);
        return;
      }
      if (event.key === 'Escape') {
        handled();
        this.#dismissed = true;
        popup.hide();
        return;
      }
      const { active } = popup;
      if (active && (event.key === 'Enter' || event.key === 'Tab') && !event.shiftKey) {
        if (this.#isFormula) {
          handled();
          this.#pick(active);
          return;
        }
        this.setValue(active.label);
      }
    }
    if (event.key === 'Tab') {
      handled();
      const step = event.shiftKey ? -1 : 1;
      const save = () => this.finishEditing(false);
      editing.context.run.tabFromEditor(this.hot, this.row ?? 0, this.col ?? 0, step, save);
    }
  }

  #suggest(all = false): void {
    const editing = this.#editing;
    if (!editing || this.#dismissed) return;
    const { context, column } = editing;
    const { popup } = context;
    const pick = (item: Suggestion): void => this.#pick(item);
    if (this.#isFormula) {
      const at = atCaret(this.#field.value, this.#field.selectionStart);
      const columns = context.host.live.columns(context.binding.sheet);
      const items = at.literal ? literalsFor(at) : at.word ? namesFor(at.word.text, columns) : [];
      const typed = (at.literal ?? at.word)?.text ?? '';
      // A whole column name, or nothing typed yet, is not to be replaced by the first of the list.
      const ahead = this.#field.value.slice(0, this.#field.selectionStart).toLowerCase();
      const whole = columns.some(
        ({ name, title }) =>
          name.toLowerCase() === typed.toLowerCase() ||
          (title.includes(' ') && ahead.endsWith(title.toLowerCase())),
      );
      const active = items.length > 0 && typed !== '' && !(at.word && whole) ? 0 : -1;
      popup.show(this.#field, { hint: hintFor(at), items, active }, pick);
      return;
    }
    const choices = this.#choices(context, editing.line, column);
    const typed = all || this.#untouched ? '' : this.#field.value;
    if (choices.length === 0 || (typed === '' && !all && !this.isInFullEditMode())) {
      popup.hide();
      return;
    }
    const items = fitting(choices, typed);
    const current = items.findIndex(({ label }) => label === this.#field.value);
    const isOpen = column.declaration?.open === true;
    // In a closed list the first that begins with what is typed is meant; an open one takes what is typed.
    const meant = !isOpen && typed !== '' && items.length > 0 ? 0 : -1;
    popup.show(this.#field, { hint: null, items, active: current >= 0 ? current : meant }, pick);
  }

  #pick({ value, label }: Suggestion): void {
    const editing = this.#editing;
    if (!editing) return;
    if (!this.#isFormula) {
      this.#take(label);
      this.finishEditing(false);
      return;
    }
    const field = this.#field;
    const at = atCaret(field.value, field.selectionStart);
    const from = (at.word ?? at.literal)?.from ?? field.selectionStart;
    const rest = field.value.slice(field.selectionStart);
    const text = value.endsWith('(') && rest.startsWith('(') ? value.slice(0, -1) : value;
    field.setRangeText(text, from, field.selectionStart, 'end');
    this.#suggest();
  }

  /** Puts text into the field as if typed. */
  #take(text: string): void {
    this.setValue(text);
    this.#untouched = false;
    this.#field.focus();
  }

  #choices({ host, binding }: GridContext, line: Line, column: ColumnView) {
    const choices = host.live.choices(binding.sheet, line.id, column.id) ?? [];
    // A lot, a draw or a planting is called by its day: as days are written here.
    return choices.map((each) =>
      each.label === each.value ? each : { ...each, label: withShownDays(each.label) },
    );
  }

  #labelOf(context: GridContext, line: Line, column: ColumnView, value: string): string {
    if (column.type !== 'choice' || value.startsWith('=')) return value;
    return this.#choices(context, line, column).find((choice) => choice.value === value)?.label ?? value;
  }

  #valueOf(context: GridContext, line: Line, column: ColumnView, text: string): string {
    if (column.type !== 'choice') return text;
    const wanted = text.trim().toLowerCase();
    const found = this.#choices(context, line, column).find(({ label }) => label.toLowerCase() === wanted);
    return found?.value ?? text;
  }
}
