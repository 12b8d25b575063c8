import { ok, type Result, refuse } from '../../problem.js';
import { say } from '../../words/index.js';
import { atBasis } from '../guide.js';
import { bushelsFor } from '../putting-up.js';
import type { Basis, CropShare } from '../types.js';
import { isAmount } from '../words.js';
import type { BatchCrop, LineToPutUp } from './batch-types.js';
import type { OwnFigures } from './own-figures.js';
import type { BatchRow } from './types.js';
import { cropKey } from './words.js';

/** The crops of a batch: those weighed in, else those that Foods names, else the food itself. */
function cropsIn(row: BatchRow, line: LineToPutUp | null): readonly CropShare[] {
  if (row.crops.length > 0) return row.crops;
  if (line && line.crops.length > 0) return line.crops.map(({ crop }) => ({ crop, pounds: null }));
  return row.food === null ? [] : [{ crop: row.food, pounds: null }];
}

/** Pounds of each crop in one container of the batch: as Foods says, else the figure in use for a single crop. */
export function batchCrops(
  row: BatchRow,
  line: LineToPutUp | null,
  basis: Basis,
  figures: OwnFigures,
): { crops: readonly BatchCrop[]; problem: Result<unknown> | null } {
  const shares = cropsIn(row, line);
  let problem: Result<unknown> | null = null;
  const crops = shares.map(({ crop: name, pounds }): BatchCrop => {
    const crop = cropKey(name) ?? name;
    const weighed = isAmount(pounds) ? pounds : null;
    const said = line?.crops.find((one) => cropKey(one.crop) === crop)?.pounds ?? null;
    // What Foods says is for its counted-in container; of another size nothing is said.
    if (said !== null && isAmount(said) && line?.countedIn === row.container) {
      return { crop, pounds: weighed, per: said, figure: null, typed: true };
    }
    if (shares.length > 1 || row.container === null || row.way === null) {
      if (shares.length > 1 && row.container !== null) {
        problem ??= refuse(
          'pounds-missing',
          say`With several crops in a container, the pounds of ${crop} are not published.`,
          say`Write them in Foods under “Crops in it”, as “${crop} 3”, for the same container.`,
        );
      }
      return { crop, pounds: weighed, per: null, figure: null, typed: false };
    }
    const found = figures.inUse({
      of: crop,
      what: 'pounds per container',
      container: row.container,
      way: row.way,
    });
    if (!found.ok) problem ??= found;
    const figure = found.ok ? found.value : null;
    return {
      crop,
      pounds: weighed,
      per: figure ? atBasis(figure, basis, 'high') : null,
      figure,
      typed: false,
    };
  });
  return { crops, problem };
}

/** Containers that the pounds weighed in will fill, not rounded: as many as the crop that runs out first allows. */
export function containersFrom(crops: readonly BatchCrop[]): number | null {
  const each = crops.flatMap(({ pounds, per }) =>
    pounds !== null && per !== null && per > 0 ? [pounds / per] : [],
  );
  return each.length > 0 ? Math.min(...each) : null;
}

/** The crop with the most pounds in a container: the one that is bought or picked by the bushel. */
export const mainCrop = (crops: readonly BatchCrop[]): BatchCrop | null =>
  crops.reduce<BatchCrop | null>(
    (most, one) => (!most || (one.per ?? 0) > (most.per ?? 0) ? one : most),
    null,
  );

/**
 * Bushels of the main crop for so many containers: by the jars printed for a bushel where the published figures
 * stand alone, else by pounds and the bushel weight. Not rounded.
 */
export function batchBushels(
  row: BatchRow,
  crops: readonly BatchCrop[],
  jars: number,
  basis: Basis,
  figures: OwnFigures,
): Result<{ readonly bushels: number; readonly source: string }> {
  const main = mainCrop(crops);
  if (!main)
    return refuse(
      'missing',
      say`The batch names no crop.`,
      say`Write the food, or the pounds in of each crop.`,
    );
  const weight = figures.inUse({ of: main.crop, what: 'bushel weight' });
  const ownWeight = weight.ok && weight.value.own !== null;
  const plain = main.figure !== null && main.figure.own === null && main.figure.learned === null;
  if (main.pounds === null && plain && !ownWeight && row.way === 'canned' && row.container !== null) {
    const printed = bushelsFor(main.crop, jars, row.container);
    if (printed.ok) return ok({ bushels: printed.value[basis], source: printed.value.source });
  }
  if (!weight.ok) return weight;
  const pounds = main.pounds ?? (main.per === null ? null : main.per * jars);
  if (pounds === null || !(weight.value.usual > 0)) {
    return refuse(
      'pounds-missing',
      say`The pounds of ${main.crop} for this batch are not known.`,
      say`Weigh what goes in, or write the pounds of a container in Foods.`,
    );
  }
  return ok({ bushels: pounds / weight.value.usual, source: weight.value.source });
}
