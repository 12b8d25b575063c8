import { convertOpenFormula } from '../../units/index.js';
import { declareFunction } from '../declare.js';
import { told, toldValue } from '../tell.js';

export const CONVERT = declareFunction({
  name: 'CONVERT',
  group: 'Measures',
  summary: 'Turns a number from one unit into another, by the codes of the OpenFormula standard.',
  arguments: [
    { name: 'number', kind: 'number', help: 'how many of the first unit', unit: '{from}', blank: 0 },
    { name: 'from', kind: 'text', help: 'code of its unit, as in "lbm" or "qt"; capitals matter' },
    { name: 'to', kind: 'text', help: 'code of the unit wanted; capitals matter' },
  ],
  gives: 'the unit asked for',
  unit: '{to}',
  details: [
    'For people used to other spreadsheets. MEASURE takes plain names, containers and the weight of a food.',
    'Codes take prefixes, as in "kg" and "ml". Both must be of one kind: volume, mass, length…',
  ],
  example: { formula: '=CONVERT(3, "gal", "qt")', gives: '12' },
  source: 'OpenDocument 1.3, part 4 (OpenFormula), table of units',
  steps: ([number, from, to], { answer }) => [`${told(number)} ${from} = ${toldValue(answer.value)} ${to}`],
  run: ([number, from, to]) => convertOpenFormula(number, from, to),
});
