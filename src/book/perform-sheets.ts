import { ok, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import { change, gone, type Performed, type Workbench } from './bench.js';
import { type Command, json, type Typed } from './commands.js';
import { dateOrder } from './date-order.js';
import { readEntry } from './entry.js';
import { rememberedNames } from './formula/gone.js';
import { standardOneValue } from './formula/one-value.js';
import { isUsableId } from './ids.js';
import { formulaTurnings, pathOfFormula, pathOfUnturned } from './measured-formulas.js';
import { measuresOf, turnings } from './measures.js';
import { placing } from './order.js';
import { OrderedIds } from './ordered-ids.js';
import { textTooLong, titleTooLong } from './perform-cells.js';
import { settingOf } from './settings.js';
import type { BookState } from './state.js';
import { titleOfSheet } from './state-layout.js';
import type { Change, Raw } from './types.js';

type SheetCommand = Extract<
  Command,
  { do: 'set setting' | 'add sheet' | 'rename sheet' | 'move sheet' | 'remove sheet' | 'rename book' }
>;

/** Where the household goes over to other measures, what is written in the old ones is turned in the same step. */
function writtenAnew({ state, takesOne = standardOneValue }: Workbench, to: Raw | undefined): Change[] {
  const measures = measuresOf({ settings: { measures: to ?? null } as BookState['settings'] });
  const formulas = formulaTurnings(state, measures, takesOne).map(({ place, was, to }) => {
    if (to !== null) return { path: pathOfFormula(place), to };
    // Back in the measures that it was written for, it means again what it meant.
    const path = pathOfUnturned(place);
    return { path, to: state.at(path) === was ? undefined : was };
  });
  return [...turnings(state, measures), ...formulas].flatMap((each) => change(state, each.path, each.to));
}

/** A setting in per cent is told as the number of them: `10 %` is 10. */
const inItsUnit = (typed: Typed, unit: string | undefined): Typed =>
  unit === '%' && typeof typed === 'string' ? typed.replace(/\s*%\s*$/, '') : typed;

export function sheetChanges(command: SheetCommand, bench: Workbench): Result<Performed> {
  const { state } = bench;
  switch (command.do) {
    case 'rename book': {
      const title = command.title.trim() || say`My book`;
      return titleTooLong(title) ?? ok({ changes: change(state, ['title'], title), notes: [] });
    }
    case 'set setting': {
      const setting = settingOf(command.setting);
      if (!setting)
        return refuse(
          'no-such-setting',
          say`The household has no setting “${command.setting}”.`,
          say`See the list of settings in the help.`,
        );
      const long = textTooLong(command.typed);
      if (long) return long;
      const to = readEntry(inItsUnit(command.typed, setting.unit), setting.type, dateOrder(bench));
      const changes = change(state, ['settings', setting.id], to);
      return ok({
        changes: setting.id === 'measures' ? [...changes, ...writtenAnew(bench, to)] : changes,
        notes: [],
      });
    }
    case 'add sheet': {
      const title = command.title.trim() || say`Own sheet`;
      const problem = titleTaken(title, null);
      if (!isUsableId(command.sheet) || state.sheets.has(command.sheet)) {
        return refuse(
          'bad-sheet-id',
          say`“${command.sheet}” cannot be the id of a new sheet.`,
          say`Use letters and digits, a letter first, and no id that the book has already.`,
        );
      }
      if (problem) return problem;
      const ordered = new OrderedIds([...state.sheets.values()].map((s) => [s.id, s.order] as const));
      const sheet = { kind: 'own', title, order: placing(ordered, null, 1).keys[0]!, columns: {}, rows: {} };
      return ok({
        changes: [{ path: ['sheets', command.sheet], to: json(sheet), was: undefined }],
        notes: [],
      });
    }
    case 'rename sheet': {
      if (!state.sheets.has(command.sheet)) return gone('sheet', { sheet: command.sheet });
      const title = command.title.trim();
      const problem = titleTaken(title, command.sheet);
      return problem ?? ok({ changes: change(state, ['sheets', command.sheet, 'title'], title), notes: [] });
    }
    case 'move sheet': {
      const { before } = command;
      if (!state.sheets.has(command.sheet)) return gone('sheet', { sheet: command.sheet });
      if (before !== null && !state.sheets.has(before)) return gone('sheet', { sheet: before });
      if (before === command.sheet) return ok({ changes: [], notes: [] });
      const ordered = new OrderedIds([...state.sheets.values()].map((s) => [s.id, s.order] as const));
      const { keys, others } = placing(ordered, before, 1, new Set([command.sheet]));
      return ok({
        changes: [...others, [command.sheet, keys[0]!] as const].flatMap(([id, key]) =>
          change(state, ['sheets', id, 'order'], key),
        ),
        notes: [],
      });
    }
    case 'remove sheet': {
      const sheet = state.sheets.get(command.sheet);
      if (!sheet) return gone('sheet', { sheet: command.sheet });
      if (sheet.kind !== 'own') {
        return refuse(
          'kind-sheet',
          say`“${titleOfSheet(sheet)}” belongs to every book: the plan is worked out from it.`,
          say`Leave it; sheets of your own can be removed.`,
          { sheet: sheet.id },
        );
      }
      return ok({
        changes: [
          ...rememberedNames({ part: 'sheet', sheet: sheet.id }, bench),
          { path: ['sheets', sheet.id], to: undefined, was: state.at(['sheets', sheet.id]) },
        ],
        notes: [],
      });
    }
  }

  function titleTaken(title: string, except: string | null) {
    if (title === '' || title.length > 60 || /[[\]*?:/\\]/.test(title)) {
      return refuse(
        'bad-sheet-title',
        say`A sheet’s title has 1 to 60 characters, and none of [ ] * ? : / \\.`,
        say`Choose another title.`,
      );
    }
    const taken = [...state.sheets.values()].find(
      (s) => s.id !== except && s.title.toLowerCase() === title.toLowerCase(),
    );
    return (
      taken &&
      refuse(
        'sheet-title-taken',
        say`There is a sheet called “${titleOfSheet(taken)}” already.`,
        say`Choose another title.`,
        { sheet: taken.id },
      )
    );
  }
}
