import fc from 'fast-check';
import { describe, it } from 'vitest';
import { readTsv, writeTsv } from '../../components/grid/handsontable/tsv.js';

const field = fc.string({ unit: fc.constantFrom('a', '"', '\t', '\n', ' ', ',', 'é'), maxLength: 6 });

describe('text of the clipboard', () => {
  it('is read as it was written', () => {
    const table = fc
      .integer({ min: 1, max: 4 })
      .chain((width) =>
        fc.array(fc.array(field, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 4 }),
      );
    fc.assert(
      // A last row of one blank field is written as nothing, so another field stands at the end.
      fc.property(table, (rows) => {
        const whole = [...rows, Array(rows[0]!.length).fill('end')];
        return JSON.stringify(readTsv(writeTsv(whole))) === JSON.stringify(whole);
      }),
    );
  });
});
