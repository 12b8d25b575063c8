import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Command, KINDS } from '../../src/book/index.js';
import { type LiveBook, openBook, parseBook } from '../../src/core.js';
import { shownCell } from '../../src/live/shown.js';
import { say, speak, spoken } from '../../src/words/index.js';
import { textsOfWorking, withoutTheirs } from '../support/said-in-german.js';

/** Words of which hardly an English sentence lacks all, and no German one has any. */
const ENGLISH =
  /\b(?:pounds|eggs|the|of|and|with|is|are|for|from|to|has|have|this|that|which|where|by|or|not|no|it|its|each|than|more|there|only|your|row|rows|sheet|column|columns|cells?)\b/i;

/** What people of the demo wrote is theirs, and sources keep their titles: taken out of a text before it is looked at. */
const BOOK: unknown = JSON.parse(readFileSync('demo/data/tamarack-bench.json', 'utf8'));
const stringsIn = (value: unknown): string[] =>
  typeof value === 'string'
    ? [value]
    : typeof value === 'object' && value !== null
      ? Object.values(value).flatMap(stringsIn)
      : [];
const bare = withoutTheirs(
  [...stringsIn(BOOK), 'Code of Federal Regulations'].filter((text) => ENGLISH.test(text)),
);

const isEnglish = (text: string): boolean => ENGLISH.test(text) && ENGLISH.test(bare(text));

let live: LiveBook;
beforeAll(async () => {
  await speak('de');
  const found = parseBook(JSON.stringify(BOOK));
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  live = openBook(found.book);
  // On a busy machine German takes its time to load.
}, 60_000);
afterAll(async () => {
  live.close();
  await speak('en');
});

/** Rows of a sheet that are looked at: enough for each sort of answer. */
const ROWS = 4;

function textsOfSheet({ id: sheet, kind }: { readonly id: string; readonly kind: string }): string[] {
  const declared = KINDS[kind as keyof typeof KINDS];
  const about = declared ? [declared.title, declared.help, declared.empty, declared.row].map(spoken) : [];
  const rows = live.rowIds(sheet);
  return [
    ...about,
    ...live.columns(sheet).flatMap((column) => [
      column.title,
      spoken(column.declaration?.help ?? ''),
      ...rows.slice(0, ROWS * 8).flatMap((row) => {
        const problem = live.problem(sheet, row, column.id);
        return problem ? [problem.message, problem.mend] : [];
      }),
      ...rows.slice(0, ROWS).flatMap((row) => {
        const shown = shownCell(live, sheet, row, column, false);
        const working = live.working(sheet, row, column.id);
        return [column.role === 'planning' ? shown.text : '', shown.unit, ...textsOfWorking(working)];
      }),
    ]),
  ];
}

it('all that the sheets of a book say in German is German', () => {
  const said = new Set(live.sheets().flatMap(textsOfSheet));
  expect(said.size).toBeGreaterThan(800);
  expect([...said].filter(isEnglish)).toEqual([]);
}, 30_000);

it('what can be undone is called in German', () => {
  const [first, second] = live.rowIds('shelf') as [string, string];
  const row = 'new';
  const commands: Command[] = [
    { do: 'set cells', sheet: 'shelf', cells: [{ row: first, column: 'place', typed: 'Keller' }] },
    {
      do: 'set cells',
      sheet: 'shelf',
      cells: [first, second].map((each) => ({ row: each, column: 'place', typed: 'Keller' })),
    },
    { do: 'insert rows', sheet: 'shelf', before: null, rows: [{ id: row, cells: { food: 'Quitten' } }] },
    { do: 'move rows', sheet: 'shelf', rows: [row], before: first },
    { do: 'remove rows', sheet: 'shelf', rows: [row] },
    { do: 'add column', sheet: 'shelf', column: 'mine', title: 'Meine', before: null },
    { do: 'describe column', sheet: 'shelf', column: 'mine', as: { title: 'Unsere' } },
    { do: 'remove columns', sheet: 'shelf', columns: ['mine'] },
    { do: 'mark cells', sheet: 'shelf', cells: [{ row: first, column: 'food' }], colour: 'plum' },
    { do: 'group rows', sheet: 'shelf', by: 'way' },
    { do: 'set setting', setting: 'measures', typed: 'metric' },
    { do: 'add sheet', sheet: 'ours', title: 'Unseres', columns: [], rows: [] },
    { do: 'rename sheet', sheet: 'ours', title: 'Meins' },
    { do: 'move sheet', sheet: 'ours', before: null },
    { do: 'remove sheet', sheet: 'ours' },
    { do: 'rename book', title: 'Haus' },
  ];
  const labels = commands.map((command) => {
    const done = live.apply(command);
    return done.ok ? say`Undo: ${live.undoLabel ?? ''} (Ctrl+Z)` : `${command.do}: ${done.problem.message}`;
  });
  expect(labels.filter((label) => !label.startsWith('Rückgängig: '))).toEqual([]);
  expect(labels.filter(isEnglish)).toEqual([]);
}, 30_000);
