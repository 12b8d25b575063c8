import { sourceText } from '../../facts/index.js';
import { flourFrom } from '../../planning/animals.js';
import { HERE } from '../../words/here.js';
import { phrase, say } from '../../words/index.js';
import { POUNDS } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explained } from '../explained.js';
import { toldOf } from '../tell.js';
import { scaled } from '../tell-figure.js';

export const FLOUR_FROM = declareExplained({
  name: 'FLOUR_FROM',
  group: 'Animals and staples',
  summary: 'How much flour so much grain gives.',
  arguments: [
    {
      name: 'grain',
      kind: 'text',
      help: '"wheat" for white flour, "whole wheat" for whole-wheat flour',
      values: [phrase('wheat'), phrase('whole wheat')],
    },
    { ...POUNDS, help: 'pounds of grain' },
  ],
  gives: 'pounds of flour',
  unit: 'pounds',
  example: { formula: '=FLOUR_FROM("wheat", 60)', gives: '42' },
  source: sourceText('ks-wheat'),
  steps: ([grain, pounds], { answer }) =>
    scaled(
      say`${toldOf(pounds, 'pounds')} of ${grain}${HERE}`,
      pounds,
      phrase('pounds of flour a pound of grain'),
      'multiply',
      'pounds',
      answer,
    ),
  explain: ([grain, pounds]) => explained(flourFrom(grain, pounds), 'usual'),
});
