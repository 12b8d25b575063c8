import { ok, type Problem, type Result, refuse } from '../problem.js';
import { say } from '../words/index.js';
import type { Performed, Workbench } from './bench.js';
import { declaredIn } from './column-in.js';
import { type Command, MAX_ROWS } from './commands.js';
import { mendedRanges } from './formula/mend-ranges.js';
import { sameJson } from './plain-json.js';
import { columnsHeld } from './row-columns.js';
import type { BookState, SheetState } from './state.js';
import { type Coming, readStored, type StoredEdit } from './stored-edit.js';
import type { Change, ColumnDoc, Json, RowDoc } from './types.js';

/**
 * Whole sheets first, then columns, then rows, so that what lies below them finds its place; columns that go
 * last, when nothing stands in them any more.
 */
function rank({ path, to }: StoredEdit): number {
  if (path[0] !== 'sheets' || path.length === 2) return 0;
  if (path[2] === 'columns') return path.length === 4 && to === undefined ? 4 : 1;
  return path.length === 4 ? 2 : 3;
}

const keyOf = (path: readonly string[]): string => JSON.stringify(path);

/**
 * Takes over values as another state of the book stores them: an earlier version, or another copy. Formulas
 * come with their references by id, rows with their place and what was allotted. Only what differs is
 * changed; planning columns, and what the book has no place for, are left out with a note.
 */
export function takenOver(
  command: Extract<Command, { do: 'take over' }>,
  bench: Workbench,
): Result<Performed> {
  const { state } = bench;
  const notes: Problem[] = [];
  const changes: Change[] = [];
  const brought = new Set<string>();
  const seen = new Set<string>();
  const coming: Coming = {
    isThere: (path) => brought.has(keyOf(path)),
    column: (sheet, column) => columnAfter(sheet, column, changes),
    whole: command.whole === true,
  };
  for (const edit of [...command.edits].sort((a, b) => rank(a) - rank(b))) {
    const key = keyOf(edit.path);
    if (seen.has(key)) continue;
    seen.add(key);
    const was = state.at(edit.path);
    if (sameJson(was, edit.to)) continue;
    const read = readStored(edit, state, coming);
    if (!read.ok) {
      notes.push({ ...read.problem, where: placeOf(edit.path) });
      continue;
    }
    const left = leftOut(edit, read.value, state);
    if (left) notes.push({ ...left, where: placeOf(edit.path) });
    if (edit.to !== undefined) brought.add(keyOf(edit.path.slice(0, 4)));
    if (!sameJson(was, read.value)) changes.push({ path: edit.path, to: read.value, was });
  }
  const crowded = tooManyRows(changes, bench);
  if (crowded) return crowded;
  const titled = changes.map((each) => withFreeTitle(each, changes, bench));
  const written = new Set(titled.map(({ path }) => keyOf(path)));
  const mended = rangesToMend(titled, bench).filter(({ path }) => !written.has(keyOf(path)));
  if (titled.length === 0 && notes[0]) return { ok: false, problem: notes[0] };
  return ok({ changes: [...mended, ...titled], notes: grouped(notes) });
}

/** A column as these changes make it: those of columns come before what stands in them. */
function columnAfter(sheet: SheetState, column: string, changes: readonly Change[]): ColumnDoc | undefined {
  let after = sheet.columns.get(column);
  for (const { path, to } of changes) {
    const [, id, part, item, field] = path;
    if (part !== 'columns') {
      if (part === 'rows') break;
      continue;
    }
    if (id !== sheet.id || item !== column) continue;
    after = field === undefined ? (to as ColumnDoc | undefined) : { ...after, [field]: to };
  }
  return after;
}

/** What a row that comes back had in columns that are gone now. */
function leftOut({ path, to }: StoredEdit, came: Json | undefined, state: BookState): Problem | undefined {
  const [, sheet, part, , field] = path;
  if (part !== 'rows' || field !== undefined || to === undefined || came === undefined) return undefined;
  const kind = state.sheets.get(sheet!);
  const [was, is] = [to, came].map((row) => columnsHeld(row as unknown as RowDoc));
  const gone = [...was!].filter((each) => !is!.has(each) && kind && !declaredIn(kind, each)).length;
  if (gone === 0) return undefined;
  return {
    code: 'columns-gone',
    message:
      gone === 1
        ? say`One entry of a row stood in columns that this sheet does not have now; it was left out.`
        : say`${gone} entries of a row stood in columns that this sheet does not have now; they were left out.`,
    mend: say`Bring back the whole sheet to get its columns too.`,
  };
}

const placeOf = ([head, sheet, part, id, field, column]: readonly string[]): NonNullable<Problem['where']> =>
  head !== 'sheets'
    ? { path: `${head}${sheet === undefined ? '' : `.${sheet}`}` }
    : {
        sheet: sheet!,
        ...(part === 'rows' && id !== undefined && { row: id }),
        ...(part === 'columns' && id !== undefined && { column: id }),
        ...(field === 'cells' && column !== undefined && { column }),
      };

/** Each reason once. */
const grouped = (notes: readonly Problem[]): Problem[] => [
  ...new Map(notes.map((note) => [`${note.code} ${note.message}`, note])).values(),
];

function tooManyRows(changes: readonly Change[], { state }: Workbench) {
  const more = new Map<string, number>();
  for (const { path, to, was } of changes)
    if (path.length === 4 && path[2] === 'rows')
      more.set(path[1]!, (more.get(path[1]!) ?? 0) + Number(to !== undefined) - Number(was !== undefined));
  for (const [sheet, count] of more)
    if (count > 0 && (state.sheets.get(sheet)?.rows.size ?? 0) + count > MAX_ROWS)
      return refuse(
        'too-many-rows',
        say`A sheet holds ${MAX_ROWS} rows.`,
        say`Remove rows that are done with first, or bring back single rows.`,
        { sheet },
      );
  return undefined;
}

/** A sheet that takes a title which another sheet has now is told from it. */
function withFreeTitle(each: Change, all: readonly Change[], { state }: Workbench): Change {
  const [head, id, part] = each.path;
  if (head !== 'sheets' || each.to === undefined || (part !== undefined && part !== 'title')) return each;
  const wanted = part === 'title' ? String(each.to) : String((each.to as { title?: Json }).title);
  const taken = new Set<string>();
  for (const sheet of state.sheets.values()) {
    if (sheet.id === id) continue;
    const change = all.find(({ path }) => path[1] === sheet.id && (path.length === 2 || path[2] === 'title'));
    if (change && change.to === undefined) continue;
    const title = change?.path[2] === 'title' ? String(change.to) : sheet.title;
    taken.add(title.toLowerCase());
  }
  let title = wanted;
  for (let i = 2; taken.has(title.toLowerCase()); i++) title = `${wanted.slice(0, 50)} (${i})`;
  if (title === wanted) return each;
  return { ...each, to: part === 'title' ? title : { ...(each.to as object), title } };
}

/** Formulas elsewhere whose ranges end on rows or columns that go. */
function rangesToMend(changes: readonly Change[], bench: Workbench): Change[] {
  const going = new Map<string, { sheet: SheetState; row: string[]; column: string[] }>();
  for (const { path, to } of changes) {
    const sheet = bench.state.sheets.get(path[1] ?? '');
    if (path.length !== 4 || to !== undefined || !sheet) continue;
    const of = going.get(sheet.id) ?? { sheet, row: [], column: [] };
    going.set(sheet.id, of);
    if (path[2] === 'rows') of.row.push(path[3]!);
    else if (path[2] === 'columns' && !declaredIn(sheet, path[3]!)) of.column.push(path[3]!);
  }
  const removed = new Set(changes.filter(({ to }) => to === undefined).map(({ path }) => keyOf(path)));
  const mended = new Map<string, Change>();
  for (const { sheet, row, column } of going.values())
    for (const [part, ids] of [
      ['row', row],
      ['column', column],
    ] as const)
      if (ids.length > 0)
        for (const each of mendedRanges(sheet.id, part, ids, bench)) mended.set(keyOf(each.path), each);
  return [...mended.values()].filter(
    ({ path }) => !removed.has(keyOf(path.slice(0, 4))) && !removed.has(keyOf(path.slice(0, 2))),
  );
}
