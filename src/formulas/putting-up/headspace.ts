import { figureSource, headspace, noteInWords, sourceText } from '../../facts/index.js';
import { ok } from '../../problem.js';
import { say } from '../../words/index.js';
import { declareExplained } from '../declare.js';
import { lookedUp } from '../tell-figure.js';
import { CANNING_CAUTION } from './arguments.js';

export const HEADSPACE = declareExplained({
  name: 'HEADSPACE',
  group: 'Putting up',
  summary: 'How much room to leave at the top of a jar, by class of food.',
  arguments: [
    {
      name: 'class',
      kind: 'text',
      help: '"low-acid" (vegetables and meats), "fruit" (fruits, tomatoes, pickles) or "jam" (jams, jellies, juices)',
      values: ['low-acid', 'fruit', 'jam'],
    },
  ],
  gives: 'inches',
  unit: 'inches',
  details: ['Some foods want more: the tested process of the food goes before its class.'],
  example: { formula: '=HEADSPACE("fruit")', gives: '0.5' },
  source: sourceText('aib539'),
  caution: CANNING_CAUTION,
  steps: ([of], { answer }) => lookedUp(say`headspace, class “${of}”`, answer),
  explain: ([of]) => {
    const found = headspace(of);
    if (!found.ok) return found;
    const { usual, note } = found.value;
    const notes = note === undefined ? [] : [noteInWords(note)];
    return ok({
      value: usual,
      unit: 'inches',
      source: figureSource(found.value),
      origin: 'published',
      notes,
    });
  },
});
