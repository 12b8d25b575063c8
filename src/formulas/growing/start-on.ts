import { germanMeant } from '../../facts/index.js';
import { HOW_STARTED, isHowStarted, startOn } from '../../planning/growing-dates.js';
import { refuse } from '../../problem.js';
import { say } from '../../words/index.js';
import { CROP } from '../arguments.js';
import { declareExplained } from '../declare.js';
import { explainedDay } from '../explained.js';
import { isoOf } from '../tell.js';
import { countedOut } from '../tell-figure.js';
import { FROST_IS_A_CHANCE, GROWING_SOURCE, LAST_FROST } from './arguments.js';

export const START_ON = declareExplained({
  name: 'START_ON',
  group: 'Growing',
  summary: 'The day on which to sow a crop.',
  arguments: [
    CROP,
    LAST_FROST,
    {
      name: 'how',
      kind: 'text',
      optional: true,
      otherwise: 'indoors where the crop is started so, else straight into the ground',
      help: '"indoors", or "direct" for straight into the ground',
      values: HOW_STARTED,
    },
  ],
  gives: 'date',
  unit: 'date',
  details: [
    'Indoors: the usual weeks of growing indoors before the day of setting out (SET_OUT_ON). Direct: the first day of the published weeks about the last frost.',
    FROST_IS_A_CHANCE,
  ],
  example: { formula: '=START_ON("tomato", "2026-06-01")', gives: '2026-04-13' },
  source: GROWING_SOURCE,
  steps: ([crop, lastFrost], { answer }) =>
    countedOut(say`the last frost, ${isoOf(lastFrost)}, for ${crop}`, lastFrost, answer),
  explain: ([crop, lastFrost, how]) => {
    const written = how?.trim().toLowerCase();
    const way = written && (germanMeant('words', HOW_STARTED, written) ?? written);
    if (way !== undefined && !isHowStarted(way)) {
      return refuse(
        'bad-argument',
        say`“how” takes "indoors" or "direct", not “${how}”.`,
        say`Write one of these, or leave it out.`,
      );
    }
    return explainedDay(startOn(crop, lastFrost, way));
  },
});
