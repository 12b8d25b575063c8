import { caution } from '../../facts/index.js';
import { phrase, say } from '../../words/index.js';
import { measureName } from '../measure.js';
import { measuredIn } from '../measured.js';
import type { WorkingInput } from '../types.js';
import { type Explained, input } from '../working/parts.js';
import type { BatchReckoning } from './batch-types.js';
import { figureInputs } from './explain-yield.js';
import type { OwnFigures } from './own-figures.js';
import { freezerFigure, QUART_EQUIVALENTS, roomOf } from './room-measures.js';
import type { GardenHousehold } from './types.js';

export const container = ({ row }: BatchReckoning): string => row.container ?? 'container';

export const jarsInput = (at: BatchReckoning): WorkingInput =>
  input(phrase('Containers'), at.jars, measureName(container(at)), at.done ? 'entered' : 'computed');

export function room(
  at: BatchReckoning,
  storey: 'shelf' | 'freezer',
  household: GardenHousehold,
  figures: OwnFigures,
): Explained {
  const { row } = at;
  const each =
    row.food === null || row.way === null || row.container === null
      ? null
      : roomOf(row.food, row.way, row.container, figures);
  const unit = storey === 'shelf' ? 'quart jars' : 'cubic feet';
  const all = storey === 'shelf' ? household.shelfRoom : household.freezerRoom;
  const perFoot = storey === 'freezer' ? freezerFigure(figures) : null;
  return {
    rule:
      storey === 'shelf'
        ? say`Room on the shelves, less what stands there, less the batches up to this one by date. Jars are counted as quarts ${QUART_EQUIVALENTS}`
        : say`Room in the freezer, less what lies there, less the batches up to this one by date. Pounds ÷ pounds to a cubic foot; the published figures disagree, so your own is better.`,
    inputs: [
      input(storey === 'shelf' ? phrase('Shelf room') : phrase('Freezer room'), all, unit, 'entered'),
      jarsInput(at),
      ...(each?.ok && each.value.storey === storey
        ? [input(phrase('Room of one'), each.value.each, unit, 'computed')]
        : []),
      ...(perFoot?.ok ? figureInputs(phrase('Pounds to a cubic foot'), perFoot.value) : []),
    ],
    steps: [
      ...(perFoot?.ok ? perFoot.value.notes : []),
      each?.ok ? each.value.note : null,
      at.posted ? say`this batch stands on the Shelf already` : null,
    ],
    missing:
      all === null
        ? say`Write the ${storey} room among the household’s settings.`
        : each && !each.ok
          ? `${each.problem.message} ${each.problem.mend}`
          : storey === 'shelf'
            ? say`It does not stand on a shelf in jars.`
            : say`It does not go into the freezer.`,
    ...(storey === 'freezer' ? { cautions: [caution('freezer-load').text] } : {}),
  };
}

export function reached(at: BatchReckoning, against: boolean): Explained {
  const { row } = at;
  return {
    rule: against
      ? say`Pounds per container reached, as a percentage of the published usual figure.`
      : say`Pounds in ÷ containers filled. Kept on Facts when the year is turned, it teaches your own figure.`,
    inputs: [
      ...at.crops.flatMap(({ crop, pounds }) =>
        pounds === null ? [] : [input(say`Pounds in of ${crop}`, pounds, phrase('pounds'), 'entered')],
      ),
      input(phrase('Filled'), row.filled, measureName(container(at)), 'entered'),
      ...(against && at.crops[0]?.figure?.published
        ? [
            input(
              phrase('Published'),
              at.crops[0].figure.published.usual,
              at.crops[0].figure.published.unit,
              at.crops[0].figure.published.origin,
              at.crops[0].figure.published.source,
            ),
          ]
        : []),
    ],
    steps: [at.reached === null ? null : say`${measuredIn(at.reached, 'pound')} a ${container(at)}`],
    missing: !at.done
      ? say`Write how many were filled, once they are.`
      : at.reached === null
        ? say`Write the pounds in of each crop.`
        : say`Nothing is published for this crop and container.`,
  };
}
