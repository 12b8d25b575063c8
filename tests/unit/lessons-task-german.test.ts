import { afterAll, beforeAll, expect, it } from 'vitest';
import { HyperFormulaEngine } from '../../src/engine/hyperformula-engine.js';
import { openCheckCopy } from '../../src/lessons/check-copy.js';
import { FormulaCheck } from '../../src/lessons/formula-task.js';
import { hintsFor } from '../../src/lessons/formula-task-rows.js';
import { formulaTaskWith } from '../../src/lessons/formula-tasks.js';
import { openBook } from '../../src/live/live-book.js';
import { speak } from '../../src/words/index.js';
import { demoBook } from '../support/lesson-books.js';

beforeAll(async () => {
  await speak('de');
});
afterAll(async () => {
  await speak('en');
});

it('takes a formula with German titles and a decimal comma, and says in German what is not right', async () => {
  const book = demoBook('school-garden');
  const task = formulaTaskWith('beds/expected_pounds')!;
  const { asOf, basis } = book.household;
  const { copy } = openCheckCopy(book, task, (doc) =>
    openBook(doc, { engine: new HyperFormulaEngine({ asOf, basis }), today: () => asOf }),
  );
  const check = new FormulaCheck(copy, task);
  const kind = async (typed: string): Promise<string> => (await check.check(typed)).kind;
  expect(await kind('=Geplante Pflanzen * Ertrag je Pflanze')).toBe('right');
  expect(await kind('=0,5*2*[Geplante Pflanzen]*[Ertrag je Pflanze]')).toBe('right');
  expect(await kind('=0,5*[Geplante Pflanzen]*[Ertrag je Pflanze]')).toBe('wrong');
  const found = await check.check('3,5');
  expect('message' in found && found.message).toMatch(
    /^Noch nicht: Bei Geplante Pflanzen 12 .* ergibt die eigene Formel 3,5, der Plan 86 lb/,
  );
  expect(hintsFor(copy, check.at!).at(-1)).toBe('Also hat jede Zeile =Geplante_Pflanzen*Ertrag_je_Pflanze');
  check.close();
});
